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
    const replace = flag(call, 'force');
    const path = requireFree(call.positionals[0]!, replace);
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const report = await store.backup(path, { replace });
      around.out(`The backup is in ${path}`);
      sayReport(report, around);
    });
  },
};
