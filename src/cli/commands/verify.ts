import { type Command, Failed, flag } from '../command.js';
import { miscounted, sayReport } from './say-report.js';
import { storeOptions, withStore } from './store-options.js';

export const verify: Command = {
  usage: 'wristpin verify [--json] [options]',
  options: { json: { type: 'boolean', help: 'print the report as JSON' }, ...storeOptions },
  examples: ['wristpin verify', 'wristpin verify --store shop-backup.db --json'],
  takes: { least: 0, most: 0 },
  run: async (call, around) => {
    await withStore(call, around, 'must-exist', async ({ store, name }) => {
      const report = await store.verify();
      if (!flag(call, 'json')) return sayReport(report, around);
      around.out(JSON.stringify({ store: name, ...report }, null, 2));
      if (!report.ok) throw new Failed(`${name} is not whole: see the problems in the report.`);
      if (report.miscounted) throw miscounted(report.miscounted);
    });
  },
};
