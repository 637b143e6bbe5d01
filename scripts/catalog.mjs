// Compiles src/catalog/packs/*.yaml into src/catalog/built-in.gen.ts, so that the core reads no files: the texts,
// and beside them what they say as JSON, which a page reads in a few milliseconds.
// Writes only when the content changes: cheap enough to run before every type check, build and test.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parse } from 'yaml';

const room = join(dirname(fileURLToPath(import.meta.url)), '..', 'src', 'catalog');
const target = join(room, 'built-in.gen.ts');
const head = '// Made by scripts/catalog.mjs from packs/*.yaml. Not kept in the repository.\n';

function packs() {
  const files = readdirSync(join(room, 'packs')).filter((name) => name.endsWith('.yaml'));
  return files.sort().map((file) => {
    const text = readFileSync(join(room, 'packs', file), 'utf8').replaceAll('\r\n', '\n');
    return { file, text };
  });
}

/** The texts stand first, so that an unchanged file is recognized without reading any YAML. */
function textsOf(all) {
  const list = all.map(
    ({ file, text }) => `  { file: ${JSON.stringify(file)}, text: ${JSON.stringify(text)} },\n`,
  );
  const type = 'readonly { readonly file: string; readonly text: string }[]';
  return `${head}export const builtInPacks: ${type} = [\n${list.join('')}];\n`;
}

function dataOf(all) {
  const read = all.map(({ file, text }) => ({ file, content: parse(text) }));
  return `export const builtInData: string =\n  ${JSON.stringify(JSON.stringify(read))};\n`;
}

function current() {
  try {
    return readFileSync(target, 'utf8');
  } catch (error) {
    if (error.code === 'ENOENT') return '';
    throw error;
  }
}

/** True when the file had to be written. */
export function compileCatalog() {
  const all = packs();
  const texts = textsOf(all);
  if (current().startsWith(`${texts}export const builtInData`)) return false;
  writeFileSync(target, texts + dataOf(all));
  return true;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  console.log(compileCatalog() ? 'catalog: packs compiled' : 'catalog: packs unchanged');
}
