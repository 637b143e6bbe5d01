import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type RecordFonts, readFonts } from '../record/index.js';
import { unpackedFont } from './woff.js';

let read: Promise<RecordFonts> | undefined;

/** The faces of the printed record: read once, then kept. `shipped` is the folder that the build fills. */
export function recordFonts(shipped: string): Promise<RecordFonts> {
  read ??= readFonts(async (file) => unpackedFont(await readFile(find(file, shipped))));
  return read;
}

/** The build's copies first; run from the source, they lie in the packages that they came from. */
function find(file: string, shipped: string): string {
  const folders = [shipped, packageFolder('pdfmake', 'fonts', 'Roboto')];
  const own = packageFolder('@fontsource/atkinson-hyperlegible-next', 'files');
  const places = [...folders, own].filter((place) => place !== undefined).map((place) => join(place, file));
  const found = places.find((place) => existsSync(place));
  if (!found) throw new Error(`the type face ${file} is not here; run “npm run build”`);
  return found;
}

function packageFolder(name: string, ...inside: string[]): string | undefined {
  try {
    const file = createRequire(import.meta.url).resolve(`${name}/package.json`);
    return join(dirname(file), ...inside);
  } catch {
    return undefined;
  }
}
