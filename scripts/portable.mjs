// One folder with all that runs, the runtime too, and an archive of it: for a machine that has nothing.
import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { launchers } from './launchers.mjs';
import { at, root } from './lib.mjs';
import { isRead, runTimeLibraries } from './run-time.mjs';

const isWindows = process.platform === 'win32';

/** What of the program itself is read while it runs. The rooms as a library for others stay behind. */
const program = [
  'bin',
  'dist/cli',
  'dist/web',
  'dist/fonts',
  'demo/jobs',
  'demo/pictures',
  'demo/sounds',
  'LICENSE',
  'CHANGELOG.md',
];

const described = () => JSON.parse(readFileSync(at('package.json'), 'utf8'));

/**
 * Makes the folder at `folder`, in place of what was there: the built program, its libraries, this Node, and what opens
 * them. @throws where this Node is no whole program by itself, or what was made does not run
 */
export function makeFolder(folder) {
  rmSync(folder, { recursive: true, force: true });
  copyProgram(join(folder, 'program'));
  copyRuntime(join(folder, 'runtime'));
  for (const { name, text, runs } of launchers(process.platform, described().version)) {
    writeFileSync(join(folder, name), text);
    if (runs) chmodSync(join(folder, name), 0o755);
  }
}

function copyProgram(folder) {
  for (const path of program) cpSync(at(path), join(folder, path), { recursive: true });
  const { name, version, license, type, bin } = described();
  writeFileSync(
    join(folder, 'package.json'),
    `${JSON.stringify({ name, version, license, type, bin }, null, 2)}\n`,
  );
  for (const library of runTimeLibraries()) {
    const to = join(folder, library.slice(root.length));
    cpSync(library, to, {
      recursive: true,
      dereference: true,
      filter: (path) => path === library || isRead(library, path),
    });
  }
}

/** This Node, smaller by the names that only a debugger reads; on macOS it is left as it was signed. */
function copyRuntime(folder) {
  if (process.config.variables.node_shared)
    throw new Error('This Node is in several pieces. Package with one that is whole, as its makers give it.');
  const to = join(folder, isWindows ? 'node.exe' : 'node');
  mkdirSync(folder, { recursive: true });
  copyFileSync(process.execPath, to);
  if (process.platform === 'linux') strip(to);
  const license = nodeLicense();
  if (license) copyFileSync(license, join(folder, 'LICENSE'));
  else
    writeFileSync(join(folder, 'LICENSE'), `Node.js ${process.version}, under the licenses it comes with.\n`);
  const said = execFileSync(to, ['--version'], { encoding: 'utf8', env: {} }).trim();
  if (said !== process.version) throw new Error(`The copied runtime says “${said}”.`);
}

/** Where there is no `strip`, the runtime is larger and runs as well. */
const strip = (file) => spawnSync('strip', [file], { stdio: 'ignore' });

/** Beside the program in an archive of Node, with the documents in a package of the system. */
function nodeLicense() {
  const prefix = dirname(process.execPath);
  const places = [
    join(prefix, 'LICENSE'),
    join(prefix, '..', 'LICENSE'),
    join(prefix, '..', 'share', 'doc', 'nodejs', 'LICENSE'),
    join(prefix, '..', 'share', 'doc', 'nodejs', 'copyright'),
  ];
  return places.find((place) => existsSync(place));
}

/** The folder's name and the system it is for: Wristpin-0.1.0-linux-x64.tar.gz, .zip on Windows. */
export function archiveName(folder) {
  const ending = isWindows ? 'zip' : 'tar.gz';
  return `${basename(folder)}-${described().version}-${process.platform}-${process.arch}.${ending}`;
}

/** An archive of the folder as the system's own programs unpack it. */
export function makeArchive(folder, file) {
  rmSync(file, { force: true });
  const form = isWindows ? '-a' : '-z';
  execFileSync('tar', [form, '-c', '-f', file, '-C', dirname(folder), basename(folder)]);
}
