// Shared by the scripts. Node's own modules only: these run before anything is installed.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
export const at = (...parts) => join(root, ...parts);

/** Runs a program with its output shown; rejects with its exit code when it fails. */
export function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, stdio: 'inherit', ...options });
    child.on('error', reject);
    child.on('exit', (code, signal) =>
      code === 0
        ? resolve()
        : reject(
            Object.assign(new Error(`${command} ${args.join(' ')} ended with ${code ?? signal}`), { code }),
          ),
    );
  });
}

/** Runs a Node program of node_modules (or of this repo) by its file, so that no shell stands between. */
export const node = (file, ...args) => run(process.execPath, [file, ...args]);

/** Runs npm itself, without what the surrounding npm put into the environment. */
export function npm(...args) {
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([k]) => !/^npm_(config|package|lifecycle)_/i.test(k)),
  );
  const cli = process.env.npm_execpath;
  if (cli) return run(process.execPath, [cli, ...args], { env });
  return run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, {
    env,
    shell: process.platform === 'win32',
  });
}

/** All files below the given paths, as repo-relative names with forward slashes, sorted. */
export function filesBelow(paths, skip = () => false) {
  const found = [];
  const walk = (path) => {
    if (skip(path) || !existsSync(path)) return;
    if (statSync(path).isDirectory()) for (const name of readdirSync(path)) walk(join(path, name));
    else found.push(path);
  };
  for (const p of paths) walk(at(p));
  return found.sort();
}

/** SHA-256 over names and contents. Contents beat times: a fresh clone gives every file the same time. */
export function hashOf(files, extra = '') {
  const hash = createHash('sha256').update(extra);
  for (const file of files)
    hash
      .update(relative(root, file).split(sep).join('/'))
      .update('\0')
      .update(readFileSync(file))
      .update('\0');
  return hash.digest('hex');
}

export function readStamp(file) {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

export function writeStamp(file, value) {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, value);
}

export function fail(error) {
  console.error(`\n${error.message}`);
  process.exitCode = 1;
}
