import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { type RecordFonts, readFonts } from '../../src/record/index.js';

const folder = (name: string) => fileURLToPath(new URL(`../../node_modules/${name}/`, import.meta.url));
const folders = {
  woff: folder('@fontsource/atkinson-hyperlegible-next/files'),
  ttf: folder('pdfmake/fonts/Roboto'),
};

/** The faces as the build ships them, read from the packages they come from. */
export function shippedFonts(): Promise<RecordFonts> {
  return readFonts((file) => readFile((file.endsWith('.woff') ? folders.woff : folders.ttf) + file));
}
