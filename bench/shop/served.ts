import { fork } from 'node:child_process';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { serve } from '../../src/server/index.js';
import { packaged } from '../../src/shopkeep/index.js';
import { openPostgres, openSqlite } from '../../src/store/index.js';

/** A server in a process of its own, and what asking it costs. */
export interface Served {
  readonly url: string;
  readonly startMs: number;
  readonly startCpuMs: number;
  ask(path: string, body?: unknown): Promise<{ ms: number; cpuMs: number; bytes: number; status: number }>;
  cpuMs(): Promise<number>;
  /** of the server's thread since it was opened */
  longestHold(): Promise<number>;
  stop(): Promise<void>;
}

interface Told {
  readonly url: string;
  readonly cpuMs: number;
  readonly longestHold: number;
}

/** The other side: what the forked process does. */
export async function serveHere(address: string): Promise<void> {
  const clock = { now: () => new Date().toISOString() };
  const postgres = address.startsWith('postgres');
  const store = await (postgres ? openPostgres(address, clock) : openSqlite(address, clock));
  const { web: webRoot, demo, fonts, version, reader } = packaged();
  const storeKind = postgres ? 'postgres' : 'sqlite';
  const log = (line: string) => console.error(line);
  const folders = { webRoot, demo, fonts, reader: () => reader };
  const parts = {
    store,
    storeKind,
    place: address,
    ...folders,
    version,
    clock: () => new Date(),
    log,
  } as const;
  const running = await serve(parts, 0);
  const holds = monitorEventLoopDelay({ resolution: 1 });
  holds.enable();
  const tell = () => {
    const { user, system } = process.cpuUsage();
    process.send!({
      url: running.url,
      cpuMs: (user + system) / 1000,
      longestHold: holds.max / 1e6,
    } satisfies Told);
  };
  process.on('message', tell);
  process.on('disconnect', () => void running.stop().then(() => store.close()));
  tell();
}

export async function servedIn(address: string): Promise<Served> {
  const begun = performance.now();
  const child = fork(fileURLToPath(import.meta.url), ['--serve', address]);
  const told = () => new Promise<Told>((resolve) => child.once('message', (now) => resolve(now as Told)));
  const first = await told();
  const asked = () => {
    const answer = told();
    child.send('now');
    return answer;
  };
  const { url } = first;
  await (await fetch(`${url}/api/health`)).arrayBuffer();
  const cpuMs = async () => (await asked()).cpuMs;
  return {
    url,
    startMs: performance.now() - begun,
    startCpuMs: first.cpuMs,
    cpuMs,
    longestHold: async () => (await asked()).longestHold,
    async ask(path, body) {
      const before = await cpuMs();
      const at = performance.now();
      const init = body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) };
      const response = await fetch(url + path, init);
      const { byteLength } = await response.arrayBuffer();
      const ms = performance.now() - at;
      if (!response.ok) throw new Error(`${path} was answered with ${response.status}`);
      return { ms, cpuMs: (await cpuMs()) - before, bytes: byteLength, status: response.status };
    },
    async stop() {
      const ended = new Promise((resolve) => child.once('exit', resolve));
      child.disconnect();
      await ended;
    },
  };
}
