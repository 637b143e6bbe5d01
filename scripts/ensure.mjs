// Makes sure that what is needed is installed and built, and does nothing when it already is.
import { existsSync } from 'node:fs';
import { at, filesBelow, hashOf, npm, readStamp, writeStamp } from './lib.mjs';

const installStamp = at('node_modules', '.wristpin-installed');
const buildStamp = at('dist', '.wristpin-built');

/** The lock file decides, with the Node line and the machine kind: the SQLite addon is built for one of each. */
const installKey = () =>
  hashOf([at('package-lock.json')], `${process.versions.modules} ${process.platform} ${process.arch}`);

export async function ensureInstalled() {
  const key = installKey();
  if (readStamp(installStamp) === key) return;
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

export async function ensureBuilt() {
  const key = buildKey();
  if (readStamp(buildStamp) === key && existsSync(at('dist', 'cli', 'main.js'))) return;
  console.log('Building …');
  const started = Date.now();
  const { build } = await import('./build.mjs');
  await build();
  writeStamp(buildStamp, key);
  console.log(`Built in ${Math.round((Date.now() - started) / 1000)} s.`);
}
