// Makes sure that what is needed is installed and built, and does nothing when it already is.
import { existsSync, readFileSync } from 'node:fs';
import { at, filesBelow, hashOf, npm, readStamp, writeStamp } from './lib.mjs';
import { oneAtATime } from './one-at-a-time.mjs';

const installStamp = at('node_modules', '.wristpin-installed');
const buildStamp = at('dist', '.wristpin-built');

/** The lock file decides, with the Node line and the machine kind: the SQLite addon is built for one of each. */
const installKey = () =>
  hashOf([at('package-lock.json')], `${process.versions.modules} ${process.platform} ${process.arch}`);

const packagesOf = (...path) => JSON.parse(readFileSync(at(...path), 'utf8')).packages;

/** What npm says it has installed is what the lock file asks for; what only another machine needs may be missing. */
export const isAsLocked = (locked, installed) =>
  Object.entries(locked).every(
    ([path, { version, optional, devOptional }]) =>
      path === '' || (path in installed ? installed[path].version === version : optional || devOptional),
  );

function installedByHand() {
  const list = ['node_modules', '.package-lock.json'];
  return existsSync(at(...list)) && isAsLocked(packagesOf('package-lock.json'), packagesOf(...list));
}

/** Built for this line of Node and this kind of machine: another’s refuses to be loaded. */
async function databaseOpens() {
  try {
    const { default: Database } = await import('better-sqlite3');
    new Database(':memory:').close();
    return true;
  } catch {
    return false;
  }
}

export async function ensureInstalled() {
  const key = installKey();
  if (readStamp(installStamp) !== key) await oneAtATime(() => install(key));
}

async function install(key) {
  if (readStamp(installStamp) === key) return; // by whom this one waited for
  // installed by hand, with “npm install”: nothing is thrown away to be fetched again
  if (installedByHand() && (await databaseOpens())) return writeStamp(installStamp, key);
  console.log(
    'Installing libraries (about a minute the first time; the database is compiled for this machine) …',
  );
  const started = Date.now();
  await npm('ci', '--no-audit', '--no-fund', '--loglevel=error', '--foreground-scripts=false');
  writeStamp(installStamp, key);
  console.log(`Installed in ${Math.round((Date.now() - started) / 1000)} s.`);
}

const buildSources = [
  'src',
  'demo',
  'scripts',
  'package.json',
  'tsconfig.json',
  'tsconfig.build.json',
  'vite.config.ts',
];

/** A hash over everything that goes into dist/. */
export const buildKey = () =>
  hashOf(
    filesBelow(buildSources, (p) => p.endsWith('.gen.ts')),
    process.version,
  );

const isBuilt = (key) => readStamp(buildStamp) === key && existsSync(at('dist', 'cli', 'main.js'));

export async function ensureBuilt() {
  const key = buildKey();
  if (!isBuilt(key)) await oneAtATime(() => buildAs(key));
}

async function buildAs(key) {
  if (isBuilt(key)) return; // by whom this one waited for
  console.log('Building …');
  const started = Date.now();
  const { build } = await import('./build.mjs');
  await build();
  writeStamp(buildStamp, key);
  console.log(`Built in ${Math.round((Date.now() - started) / 1000)} s.`);
}
