import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Command, Failed } from '../command.js';
import { sayReport } from './say-report.js';
import { storeOptions, withStore } from './store-options.js';

export const restore: Command = {
  usage: 'wristpin restore FILE [options]',
  options: storeOptions,
  examples: ['wristpin restore shop-backup.db --store new-shop.db'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const from = resolve(call.positionals[0]!);
    // looked at first, so that a mistyped name does not leave a new, empty store behind
    if (!existsSync(from)) throw new Failed(`There is no backup ${from}.`);
    await withStore(call, around, 'may-begin', async ({ store, name }) => {
      const report = await store.restore(from);
      around.out(`${from} is restored into ${name}`);
      sayReport(report, around);
    });
  },
};
