import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { bundleCli } from '../../scripts/cli.mjs';

const root = resolve(import.meta.dirname, '../..');

/** The command as it runs for a person: bundled from the present source, started as a process of its own. */
export interface BuiltCli {
  readonly run: (args: readonly string[], options?: RunOptions) => Promise<Ran>;
  readonly start: (args: readonly string[], options?: RunOptions) => ChildProcess;
  readonly remove: () => void;
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
export async function buildCli(): Promise<BuiltCli> {
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
