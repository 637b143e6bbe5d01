/**
 * A shop of many years: 1,000 jobs and 313,000 lines (`--full`: 10,000 and 3,130,000) in a store of each kind, filled
 * here, and a server over it in a process of its own. Printed: how long each thing takes that a person waits for, and
 * how long the server's thread was held at most. `--sqlite` and `--postgres` leave out the other;
 * `--find` measures the search alone, at 10,000 jobs.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { foundIn } from '../src/shopkeep/find.js';
import { openPostgres, openSqlite, type Store } from '../src/store/index.js';
import { startPostgres } from '../test/support/postgres.js';
import { devicesTogether } from './shop/devices.js';
import { fill, fillFindable } from './shop/fill.js';
import { type Served, servedIn, serveHere } from './shop/served.js';
import { jobOf, lineFor } from './shop/years.js';

const clock = { now: () => '2026-03-02T09:00:00.000Z' };
const given = process.argv.slice(2);
const minute = 60_000;
const jobs = given.includes('--full') || given.includes('--find') ? 10_000 : 1_000;

if (given[0] === '--serve') await serveHere(given[1]!);
else await bench();

async function bench(): Promise<void> {
  if (!given.includes('--postgres')) {
    const folder = mkdtempSync(join(tmpdir(), 'wristpin-bench-'));
    await on('SQLite', join(folder, 'shop.db'));
    rmSync(folder, { recursive: true, force: true });
  }
  const postgres = given.includes('--sqlite') ? undefined : await startPostgres();
  if (postgres === undefined || 'reason' in postgres) return;
  await on('PostgreSQL', await postgres.newDatabase());
  await postgres.stop();
}

async function on(name: string, address: string): Promise<void> {
  const begun = performance.now();
  const store = await (address.startsWith('postgres')
    ? openPostgres(address, clock)
    : openSqlite(address, clock));
  if (given.includes('--find')) return onlyFind(name, store);
  const lines = await fill(store, jobs);
  await store.close();
  const took = Math.round((performance.now() - begun) / 1000);
  console.log(`\n${name}: ${jobs} jobs, ${lines} lines, filled in ${took} s`);
  const served = await servedIn(address);
  show('start, until it answers', served.startMs, served.startCpuMs);
  await askedOnce(served);
  if (!given.includes('--quick')) await devicesTogether(served, 20, minute);
  console.log(`  the server's thread was held at most ${(await served.longestHold()).toFixed(0)} ms`);
  await served.stop();
}

async function onlyFind(name: string, store: Store): Promise<void> {
  const lines = await fillFindable(store, jobs);
  console.log(`\n${name}: ${jobs} jobs, the words of ${lines} lines`);
  await typed(async (words) => {
    const begun = performance.now();
    const before = process.cpuUsage();
    await foundIn(store, words, 12);
    const { user, system } = process.cpuUsage(before);
    return { ms: performance.now() - begun, cpuMs: (user + system) / 1000 };
  });
  await store.close();
}

async function askedOnce(served: Served): Promise<void> {
  const ask = async (what: string, path: string, body?: unknown) => {
    for (const how of ['first', 'again']) {
      const { ms, cpuMs, bytes } = await served.ask(path, body);
      show(`${what}, ${how}`, ms, cpuMs, bytes);
    }
  };
  await ask('Bench list', '/api/jobs?state=open');
  await ask('search by words', '/api/find?words=carburetor+owner+77');
  await typed((words) => served.ask(`/api/find?words=${encodeURIComponent(words)}`));
  await ask('search by tag', `/api/jobs?tag=${jobs - 1}`);
  await ask('counts', '/api/jobs/counts');
  await ask('what the shop learned', '/api/past');
  await ask('a job of 500 lines', `/api/jobs/${jobOf(0)}/entries`);
  const times: number[] = [];
  for (let i = 0; i < 50; i += 1)
    times.push((await served.ask('/api/entries', { entries: [lineFor(jobOf(1), i)] })).ms);
  times.sort((a, b) => a - b);
  show('a line appended, median of 50', times[25]!);
  show('a line appended, 48th of 50', times[47]!);
}

/** As one types: each beginning of what a person might look for, one after the other. */
async function typed(find: (words: string) => Promise<{ ms: number; cpuMs: number }>): Promise<void> {
  const whole = [
    `owner ${jobs - 2}`,
    'varnish in the bowl',
    'OX-195-32',
    'bag 3',
    '190 in-lb',
    'Mar 16 2026',
  ];
  const asked = [...whole, `#${jobs - 1}`].flatMap((w) => Array.from(w, (_, i) => w.slice(0, i + 1)));
  const times: { ms: number; cpuMs: number }[] = [];
  for (let round = 0; round < 3; round += 1) for (const words of asked) times.push(await find(words));
  const inOrder = (of: 'ms' | 'cpuMs') => times.map((each) => each[of]).sort((x, y) => x - y);
  const [ms, cpuMs] = [inOrder('ms'), inOrder('cpuMs')];
  for (const [name, share] of [
    ['median', 0.5],
    ['95 of 100 within', 0.95],
    ['the longest', 1],
  ] as const) {
    const at = Math.floor(share * (times.length - 1));
    show(`a letter more, ${name}`, ms[at]!, cpuMs[at]!);
  }
}

function show(what: string, ms: number, cpuMs?: number, bytes?: number): void {
  const cpu = cpuMs === undefined ? '' : `${cpuMs.toFixed(0)} ms of processor time`;
  const size = bytes === undefined ? '' : `${(bytes / 1000).toFixed(0)} kB`;
  console.log(`  ${what.padEnd(34)}${ms.toFixed(0).padStart(6)} ms  ${cpu.padEnd(30)}${size}`);
}
