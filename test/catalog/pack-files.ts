import { readdirSync, readFileSync } from 'node:fs';
import type { Pack } from '../../src/catalog/index.js';

const folder = new URL('../../src/catalog/packs/', import.meta.url);

/** The program's own packs as they stand in their files. */
export const builtInPacks: readonly Pack[] = readdirSync(folder)
  .sort()
  .map((file) => ({ file, text: readFileSync(new URL(file, folder), 'utf8') }));
