// The libraries that the built program reads while it runs: found from package.json, as Node itself would find them.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { bundled } from './bundled.mjs';
import { root } from './lib.mjs';

/** Fetches or compiles at install, and is never asked afterward. */
const installs = new Set(['prebuild-install']);

/**
 * What lies in these for other uses: sources of what was compiled, builds for browsers, another language's model. A path
 * within the library, with forward slashes.
 */
const unused = {
  '@wasm-audio-decoders/opus-ml': ['dist'],
  'better-sqlite3': [
    'deps',
    'src',
    'build/Release/obj',
    'build/Release/obj.target',
    'build/Release/sqlite3.a',
  ],
  'ogg-opus-decoder': ['dist'],
  pdfkit: ['.yarn', 'js/pdfkit.standalone.js'],
  pdfmake: ['build'],
  soundswallower: ['model/fr-fr'],
};

/** Types, maps and readmes; what a library is licensed by stays. */
const isBeside = (name) =>
  /\.(map|d\.[cm]?ts|md|markdown)$/.test(name) && !/^(licen[cs]e|copying|notice)/i.test(name);

const described = (folder) => JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));

/** The folder of a library as one in `from` would find it: the nearest node_modules upward; undefined where there is none. */
function found(name, from) {
  for (let folder = from; ; folder = dirname(folder)) {
    const here = join(folder, 'node_modules', name);
    if (existsSync(join(here, 'package.json'))) return here;
    if (folder === root) return undefined;
  }
}

/**
 * Folders of the libraries that the command asks for and, through them, of all others. What only another system needs
 * is not installed here and is left out; what is missing otherwise is an error.
 */
export function runTimeLibraries() {
  const folders = new Set();
  const add = (name, from, optional) => {
    const folder = found(name, from);
    if (!folder && !optional) throw new Error(`${name} is not installed; it is asked for by ${from}.`);
    if (!folder || folders.has(folder) || installs.has(name)) return;
    folders.add(folder);
    const { dependencies = {}, optionalDependencies = {} } = described(folder);
    for (const each of Object.keys(dependencies)) add(each, folder, each in optionalDependencies);
    for (const each of Object.keys(optionalDependencies)) add(each, folder, true);
  };
  for (const name of Object.keys(described(root).dependencies))
    if (!bundled.includes(name)) add(name, root, false);
  return [...folders];
}

/** Whether a file or folder of a library is read while the program runs. The library's own libraries are listed apart. */
export function isRead(library, path) {
  const within = relative(library, path).split(sep).join('/');
  if (within === 'node_modules' || isBeside(within.split('/').at(-1))) return false;
  return !(unused[described(library).name] ?? []).includes(within);
}
