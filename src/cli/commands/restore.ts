import { existsSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { VerifyReport } from '../../store/index.js';
import { type Call, type Command, Failed, type Surroundings } from '../command.js';
import { sayReport } from './say-report.js';
import { makeFolder, openStore, placeOf, storeOptions } from './store-options.js';

export const restore: Command = {
  usage: 'wristpin restore FILE [options]',
  options: storeOptions,
  examples: ['wristpin restore shop-backup.db --store new-shop.db'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const from = resolve(call.positionals[0]!);
    // looked at first, so that a mistyped name does not leave a new, empty store behind
    if (!existsSync(from)) throw new Failed(`There is no backup ${from}.`);
    const { name, report } = await restored(call, around, from);
    around.out(`${from} is restored into ${name}`);
    sayReport(report, around);
  },
};

/** A file that is not there yet is built whole before it gets its name; what is there already must be empty. */
async function restored(
  call: Call,
  around: Surroundings,
  from: string,
): Promise<{ name: string; report: VerifyReport }> {
  const place = placeOf(call, around);
  if ('file' in place && !existsSync(place.file)) {
    const { restoreInto } = await import('../open-store.js');
    makeFolder(dirname(place.file));
    return {
      name: place.file,
      report: await restoreInto(place.file, from, () => around.now().toISOString()),
    };
  }
  const { store, name } = await openStore(call, around, 'may-begin');
  try {
    return { name, report: await store.restore(from) };
  } finally {
    await store.close();
  }
}
