import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Script {
  readonly path: string;
  remove(): void;
}

/**
 * A TypeScript program of this repository as one file that Node can run; libraries stay where they are. `lean` leaves
 * out modules of which nothing is used: a program that is started sixty times should load only what it needs.
 */
export async function bundle(entry: string, { lean = false } = {}): Promise<Script> {
  // inside node_modules, so that the file's bare imports are found
  const outDir = join(root, 'node_modules', '.cache', `wristpin-${randomUUID().slice(0, 8)}`);
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    build: {
      ssr: join(root, entry),
      outDir,
      emptyOutDir: true,
      minify: false,
      rollupOptions: {
        output: { entryFileNames: 'child.mjs' },
        ...(lean ? { treeshake: { moduleSideEffects: false } } : {}),
      },
    },
  });
  return { path: join(outDir, 'child.mjs'), remove: () => rmSync(outDir, { recursive: true, force: true }) };
}

export interface Ended {
  /** every whole line the program printed, also those that were still in the pipe when it died */
  readonly lines: readonly string[];
  readonly complaints: string;
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
}

export interface Child {
  /** the first line that begins so; rejects when the program ends without it */
  line(start: string): Promise<string>;
  /** SIGKILL: no handler runs, nothing is flushed or closed. Gives what it had printed by then. */
  kill(): Promise<Ended>;
  readonly ended: Promise<Ended>;
}

interface How {
  readonly args?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
}

export function startChild(script: string, how: How = {}): Child {
  const child = spawn(process.execPath, [script, ...(how.args ?? [])], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...how.env },
  });
  const lines: string[] = [];
  const waiting = new Set<() => void>();
  createInterface({ input: child.stdout! }).on('line', (line) => {
    lines.push(line);
    for (const look of waiting) look();
  });
  const ended = endOf(child, lines);
  return {
    ended,
    line: (start) => firstLine(lines, waiting, ended, start),
    kill: () => {
      child.kill('SIGKILL');
      return ended;
    },
  };
}

/** 'close', not 'exit': the pipe may still hold lines when the process is gone. */
function endOf(child: ChildProcess, lines: readonly string[]): Promise<Ended> {
  let complaints = '';
  child.stderr!.on('data', (data) => {
    complaints += data;
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code, signal) => setImmediate(() => resolve({ lines, complaints, code, signal })));
  });
}

function firstLine(
  lines: readonly string[],
  waiting: Set<() => void>,
  ended: Promise<Ended>,
  start: string,
): Promise<string> {
  return new Promise((resolve, reject) => {
    const look = () => {
      const found = lines.find((line) => line.startsWith(start));
      if (found === undefined) return;
      waiting.delete(look);
      resolve(found);
    };
    waiting.add(look);
    look();
    ended.then(({ complaints, code, signal }) => {
      if (waiting.delete(look))
        reject(new Error(`ended (${code ?? signal}) without a line "${start}": ${complaints}`));
    }, reject);
  });
}
