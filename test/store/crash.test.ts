import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSqlite, type Store } from '../../src/store/index.js';
import { campaign } from '../support/campaign.js';
import { bundle, type Ended, type Script, startChild } from '../support/child.js';
import { now, random } from './samples.js';

const kills = campaign(16, 60);
const killsAtTheBeginning = campaign(4, 10);
const folder = mkdtempSync(join(tmpdir(), 'wristpin-crash-'));
let writer: Script;

beforeAll(async () => {
  writer = await bundle('test/store/crash-writer.ts', { lean: true });
});
afterAll(() => {
  writer.remove();
  rmSync(folder, { recursive: true, force: true });
});

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** Lets the writer run until `from` is said and `afterMs` more, and kills it. */
async function killed(file: string, name: string, from: string, afterMs: number): Promise<Ended> {
  const child = startChild(writer.path, { args: [file, name] });
  await child.line(from);
  await wait(afterMs);
  return child.kill();
}

const said = (run: Ended, start: string) =>
  run.lines.filter((line) => line.startsWith(start)).map((line) => line.slice(start.length));

// sixty starts of a program take a while on a machine that has other work
describe('a log whose writer is killed with SIGKILL', { timeout: campaign(180_000, 900_000) }, () => {
  it(`keeps all that was said to be saved, and is whole, after ${kills} kills in the middle of writing`, async () => {
    const file = join(folder, 'killed.wristpin');
    const next = random(20260302);
    const runs: Ended[] = [];
    for (let k = 0; k < kills; k++) {
      // every tenth falls while the log is opened, and what the last kill left is being recovered; the others after
      // so many batches, so that a slow machine is killed as deep in its work as a quick one
      const after = k % 10 === 9 ? 'opening' : `done batch run${k}.${Math.floor(next() * 8)}`;
      runs.push(await killed(file, `run${k}`, after, next() * 6));
    }

    expect(runs.map((run) => run.signal)).toEqual(runs.map(() => 'SIGKILL'));
    expect(runs.map((run) => run.complaints)).toEqual(runs.map(() => ''));
    const inTheMiddle = runs.filter((run) => run.lines.at(-1)?.startsWith('begin'));
    const counts = runs.map((run) => said(run, 'done').length);
    console.info(
      `acknowledged before each kill: ${counts.join(' ')}; ${inTheMiddle.length} fell within a write`,
    );
    expect(inTheMiddle.length).toBeGreaterThan(kills / 2);
    expect(new Set(counts).size).toBeGreaterThan(3);

    const store = await openSqlite(file, { now });
    await expectAllKept(store, runs);
    await store.close();
  });

  it(`is no log or a whole one after ${killsAtTheBeginning} kills while it was begun`, async () => {
    const next = random(5);
    let begun = 0;
    for (let k = 0; k < killsAtTheBeginning; k++) {
      const file = join(folder, `begun${k}.wristpin`);
      const run = await killed(file, 'run0', 'opening', next() * 100);
      expect(run.signal).toBe('SIGKILL');
      begun += existsSync(file) ? 1 : 0;
      const store = await openSqlite(file, { now });
      await expectAllKept(store, [run]);
      await store.close();
    }
    const unfinished = readdirSync(folder).filter((name) => name.includes('.part')).length;
    console.info(
      `${begun} of ${killsAtTheBeginning} logs had their name when the kill came; ${unfinished} parts are left`,
    );
  });

  it('takes the writing of two processes at once, each entry once', async () => {
    const file = join(folder, 'two.wristpin');
    const names = ['run1', 'run2'];
    const both = names.map((name) => startChild(writer.path, { args: [file, name, '60'] }).ended);
    const runs = await Promise.all(both);
    expect(runs.map((run) => [run.code, run.complaints, run.lines.at(-1)])).toEqual(
      names.map(() => [0, '', 'closed']),
    );
    const store = await openSqlite(file, { now });
    await expectAllKept(store, runs);
    expect((await store.entries('bench')).length).toBe(1 + 2 * 3 * 54);
    await store.close();
  });
});

async function expectAllKept(store: Store, runs: readonly Ended[]): Promise<void> {
  const kept = new Set((await store.since(0)).map((entry) => entry.id));
  const parts = (batch: string) => [1, 2, 3].map((k) => `${batch}.${k}`);
  const saved = runs.flatMap((run) => said(run, 'done batch ')).flatMap(parts);
  expect(saved.filter((id) => !kept.has(id))).toEqual([]);
  const begun = runs.flatMap((run) => said(run, 'begin batch '));
  const torn = begun.filter((batch) => new Set(parts(batch).map((id) => kept.has(id))).size > 1);
  expect(torn).toEqual([]);
  for (const sha256 of runs.flatMap((run) => said(run, 'done picture '))) {
    expect(await store.hasPicture(sha256)).toBe(true);
  }
  expect((await store.verify()).problems).toEqual([]);
}
