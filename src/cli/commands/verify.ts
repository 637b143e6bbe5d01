import { existsSync } from 'node:fs';
import type { VerifyReport } from '../../store/index.js';
import { type Call, type Command, Failed, flag, type Surroundings } from '../command.js';
import { miscounted, sayReport } from './say-report.js';
import { noStore, placeOf, storeOptions } from './store-options.js';

export const verify: Command = {
  usage: 'wristpin verify [--json] [options]',
  options: { json: { type: 'boolean', help: 'print the report as JSON' }, ...storeOptions },
  examples: ['wristpin verify', 'wristpin verify --store shop-backup.db --json'],
  takes: { least: 0, most: 0 },
  run: async (call, around) => {
    const { name, report } = await verified(call, around);
    if (!flag(call, 'json')) return sayReport(report, around);
    around.out(JSON.stringify({ store: name, ...report }, null, 2));
    if (!report.ok) throw new Failed(`${name} is not whole: see the problems in the report.`);
    if (report.miscounted) throw miscounted(report.miscounted);
  },
};

/** The store is opened for reading only: it may lie on a medium that cannot be written, and nothing in it changes. */
async function verified(call: Call, around: Surroundings): Promise<{ name: string; report: VerifyReport }> {
  const place = placeOf(call, around);
  const { verifyFile, verifyPostgres } = await import('../open-store.js');
  if ('url' in place) return { name: place.name, report: await verifyPostgres(place.url) };
  if (!existsSync(place.file)) throw noStore(place.file);
  return { name: place.file, report: await verifyFile(place.file) };
}
