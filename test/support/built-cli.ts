import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { bundleCli } from '../../scripts/cli.mjs';

const root = resolve(import.meta.dirname, '../..');

/** The command as it runs for a person: bundled from the present source, started as a process of its own. */
export interface BuiltCli {
  readonly run: (args: readonly string[], options?: RunOptions) => Promise<Ran>;
  readonly start: (args: readonly string[], options?: RunOptions) => ChildProcess;
}

export interface RunOptions {
  readonly env?: Readonly<Record<string, string>>;
  readonly cwd?: string;
}

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Built anew for each test file, so that no stale build is ever tested; it takes about a second. */
async function buildCli(): Promise<BuiltCli & { readonly remove: () => void }> {
  const cache = join(root, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  // below node_modules, so that the bundle finds the libraries, and the package's files by walking up
  const folder = mkdtempSync(join(cache, 'wristpin-cli-'));
  await bundleCli(folder);
  const program = join(folder, 'main.js');
  const start = (args: readonly string[], { env = {}, cwd = folder }: RunOptions = {}) =>
    spawn(process.execPath, [program, ...args], {
      cwd,
      env: { PATH: process.env.PATH, HOME: folder, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  return {
    start,
    run: (args, options) => finished(start(args, options)),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/**
 * The command for the tests of one file, and a folder that is empty for each test (or for the file, where its tests build
 * on each other): `inFolder('shop.db')` is a path in it. Both are removed afterward.
 */
export function cliWithFolder(emptyFor: 'each test' | 'the file' = 'each test') {
  let built: Awaited<ReturnType<typeof buildCli>>;
  let folder: string;
  const [before, after] = emptyFor === 'each test' ? [beforeEach, afterEach] : [beforeAll, afterAll];
  beforeAll(async () => {
    built = await buildCli();
  });
  afterAll(() => built.remove());
  before(() => {
    folder = mkdtempSync(join(tmpdir(), 'wristpin-cli-'));
  });
  after(() => rmSync(folder, { recursive: true, force: true }));
  const cli: BuiltCli = {
    run: (...given) => built.run(...given),
    start: (...given) => built.start(...given),
  };
  const inFolder = (...path: string[]) => join(folder, ...path);
  return {
    cli,
    inFolder,
    /** Runs a command that takes a problem in a file: the problem as JSON, or the file's text as it stands. */
    solve: (command: string, problem: unknown, ...args: string[]) => {
      const file = inFolder('problem.json');
      writeFileSync(file, typeof problem === 'string' ? problem : JSON.stringify(problem));
      return cli.run([command, file, ...args]);
    },
  };
}

function finished(child: ChildProcess): Promise<Ran> {
  let out = '';
  let err = '';
  child.stdout?.on('data', (chunk) => (out += chunk));
  child.stderr?.on('data', (chunk) => (err += chunk));
  return new Promise((done, failed) => {
    child.on('error', failed);
    child.on('close', (code) => done({ code, out, err }));
  });
}

/** Waits for a line on the child's output that fits; rejects with all it said when it ends before. */
export function lineOf(child: ChildProcess, wanted: RegExp): Promise<RegExpExecArray> {
  return new Promise((found, failed) => {
    let said = '';
    const look = (chunk: Buffer) => {
      said += chunk;
      const match = wanted.exec(said);
      if (match) found(match);
    };
    child.stdout?.on('data', look);
    child.stderr?.on('data', look);
    child.on('error', failed);
    child.on('close', (code) => failed(new Error(`ended with ${code} before ${wanted}: ${said}`)));
  });
}

/** Starts `wristpin serve` on a free port and waits until it is open. */
export async function startServe(
  cli: BuiltCli,
  args: readonly string[],
  options?: RunOptions,
): Promise<{ readonly child: ChildProcess; readonly url: string }> {
  const child = cli.start(['serve', '--port', '0', ...args], options);
  const [, url] = await lineOf(child, /Wristpin is open at (\S+)/);
  return { child, url: url! };
}

export function ended(child: ChildProcess): Promise<{ code: number | null; signal: NodeJS.Signals | null }> {
  if (child.exitCode !== null || child.signalCode !== null) {
    return Promise.resolve({ code: child.exitCode, signal: child.signalCode });
  }
  return new Promise((done) => child.once('exit', (code, signal) => done({ code, signal })));
}
