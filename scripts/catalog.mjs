// Compiles src/catalog/packs/*.yaml into src/catalog/built-in.gen.ts, so that the core reads no files.
// Writes only when the content changes: cheap enough to run before every type check, build and test.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const room = join(dirname(fileURLToPath(import.meta.url)), '..', 'src', 'catalog');
const target = join(room, 'built-in.gen.ts');

export function compilePacks() {
  const files = readdirSync(join(room, 'packs')).filter((name) => name.endsWith('.yaml')).sort();
  const packs = files.map((file) => {
    const text = readFileSync(join(room, 'packs', file), 'utf8').replaceAll('\r\n', '\n');
    return `  { file: ${JSON.stringify(file)}, text: ${JSON.stringify(text)} },\n`;
  });
  const head = '// Made by scripts/catalog.mjs from packs/*.yaml. Not kept in the repository.\n';
  const type = 'readonly { readonly file: string; readonly text: string }[]';
  return `${head}export const builtInPacks: ${type} = [\n${packs.join('')}];\n`;
}

function current() {
  try {
    return readFileSync(target, 'utf8');
  } catch (error) {
    if (error.code === 'ENOENT') return undefined;
    throw error;
  }
}

/** True when the file had to be written. */
export function writePacks() {
  const text = compilePacks();
  if (current() === text) return false;
  writeFileSync(target, text);
  return true;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  console.log(writePacks() ? 'catalog: packs compiled' : 'catalog: packs unchanged');
}
