// `npm run package`: one folder with the program and its runtime, and an archive of it, for a machine of this kind that
// has nothing. Both lie in packaged/.
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { at, fail, filesBelow } from './lib.mjs';

/** What a person fetches over a slow line. */
const most = 100e6;

const sizeOf = (path) => filesBelow([path]).reduce((sum, file) => sum + statSync(file).size, 0);
const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;

try {
  await ensureInstalled();
  await ensureBuilt();
  const { archiveName, makeArchive, makeFolder } = await import('./portable.mjs');
  const folder = at('packaged', 'Wristpin');
  const archive = at('packaged', archiveName(folder));
  makeFolder(folder);
  makeArchive(folder, archive);
  const { size } = statSync(archive);
  for (const part of ['runtime', 'program'])
    console.log(`${part}: ${megabytes(sizeOf(join('packaged', 'Wristpin', part)))}`);
  console.log(`${archive}: ${megabytes(size)}, at most ${megabytes(most)}`);
  if (size > most) throw new Error(`The archive is larger than ${megabytes(most)}.`);
} catch (error) {
  fail(error);
}
