// Reads and checks src/catalog/packs/*.yaml with the loader itself and keeps what they say in src/catalog/built-in.gen.ts,
// so that neither the core nor a page reads a file, parses YAML or checks a schema for the program's own packs.
// Works only when a pack or the loader has changed: cheap enough to run before every type check, build and test.
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const room = join(root, 'src', 'catalog');
const target = join(room, 'built-in.gen.ts');

/** The packs in the order of their names, lines ended the same everywhere. */
export function packFiles() {
  const files = readdirSync(join(room, 'packs')).filter((name) => name.endsWith('.yaml'));
  return files.sort().map((file) => {
    const text = readFileSync(join(room, 'packs', file), 'utf8').replaceAll('\r\n', '\n');
    return { file, text };
  });
}

/** Says whether what was made before is still true: of the packs, and of the code that read them. */
function stateOf(packs) {
  const hash = createHash('sha256').update(readFileSync(fileURLToPath(import.meta.url)));
  for (const { file, text } of packs) hash.update(`${file}\0${text}\0`);
  for (const folder of ['schema', 'loader'])
    for (const file of readdirSync(join(room, folder), { recursive: true }).toSorted())
      if (file.endsWith('.ts')) hash.update(readFileSync(join(room, folder, file)));
  return hash.digest('hex').slice(0, 32);
}

/** The loader as Node can run it. It must not reach for built-in.gen.ts, which it is here to make. */
async function loader(state) {
  const { build } = await import('vite'); // asked for here: this file is read before anything is installed
  const made = await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: { ssr: join(room, 'loader', 'compile.ts'), write: false, target: 'node20' },
  });
  const folder = join(root, 'node_modules', '.cache', 'catalog');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `loader-${state}.mjs`);
  writeFileSync(file, made.output[0].code);
  return import(pathToFileURL(file).href);
}

function current() {
  try {
    return readFileSync(target, 'utf8');
  } catch (error) {
    if (error.code === 'ENOENT') return '';
    throw error;
  }
}

const quoted = (text) => `'${text.replace(/[\\']/g, '\\$&').replace(/[\u2028\u2029]/g, ' ')}'`;

/** True when the file had to be written. Rejects with the loader's own words, file and line, when a pack is refused. */
export async function compileCatalog() {
  const packs = packFiles();
  const state = stateOf(packs);
  const head = `// Made by scripts/catalog.mjs from packs/*.yaml. Not kept in the repository. ${state}\n`;
  if (current().startsWith(head)) return false;
  const { compile } = await loader(state);
  const data = quoted(JSON.stringify(compile(packs)));
  writeFileSync(
    target,
    `${head}export const builtInState: string = '${state}';\nexport const builtInData: string =\n  ${data};\n`,
  );
  return true;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    console.log((await compileCatalog()) ? 'catalog: packs compiled' : 'catalog: packs unchanged');
  } catch (error) {
    console.error(`catalog: ${error.name === 'CatalogError' ? `refused\n${error.message}` : error.stack}`);
    process.exitCode = 1;
  }
}
