import { renameSync, rmSync } from 'node:fs';
import { type Command, flag } from '../command.js';
import { forceOption, requireFree } from './out-file.js';
import { sayReport } from './say-report.js';
import { storeOptions, withStore } from './store-options.js';

export const backup: Command = {
  usage: 'wristpin backup FILE [options]',
  options: { force: forceOption, ...storeOptions },
  examples: ['wristpin backup shop-backup.db'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const force = flag(call, 'force');
    const path = requireFree(call.positionals[0]!, force);
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const part = force ? `${path}.new-${process.pid}` : path;
      try {
        const report = await store.backup(part);
        // the earlier backup goes only when the new one is whole and on the disk
        if (force) renameSync(part, path);
        around.out(`The backup is in ${path}`);
        sayReport(report, around);
      } catch (error) {
        if (force) rmSync(part, { force: true });
        throw error;
      }
    });
  },
};
