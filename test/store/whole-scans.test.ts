import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, expect, test } from 'vitest';
import { foundIn } from '../../src/shopkeep/find.js';
import { JobNotes } from '../../src/shopkeep/index.js';
import { openSqlite, type Store } from '../../src/store/index.js';
import { entry, opening } from './samples.js';

const proto = Database.prototype;
const { prepare } = proto;
afterEach(() => {
  proto.prepare = prepare;
});

/** Every statement that the database is given while this runs, once. */
async function statementsOf(act: () => Promise<unknown>): Promise<string[]> {
  const given = new Set<string>();
  proto.prepare = function told(this: Database.Database, statement: string) {
    given.add(statement);
    return prepare.call(this, statement);
  } as typeof prepare;
  await act();
  proto.prepare = prepare;
  return [...given].filter((statement) => /^\s*(select|update|delete)/i.test(statement));
}

/** What SQLite itself says of how it will go about a statement (EXPLAIN QUERY PLAN), a line a step. */
function planOf(db: Database.Database, statement: string): string[] {
  const values = Array.from(statement.matchAll(/\?/g), () => 1);
  const steps = db.prepare(`explain query plan ${statement}`).all(...values) as { detail: string }[];
  return steps.map(({ detail }) => detail);
}

/**
 * Through the log from end to end, by its table or by an index of it; or through the notes, each with a page of text. The
 * index of those that are behind holds no others.
 */
const goesThroughAll = (step: string) =>
  /^SCAN entries\b/.test(step) ||
  (/^SCAN job_notes\b/.test(step) && !/USING (COVERING INDEX|INDEX job_notes_behind)/.test(step));

async function servedFor(store: Store, from: number): Promise<void> {
  const notes = new JobNotes(store);
  await store.append([entry('more', 'j3')]);
  await store.changedSince(from);
  await notes.bringUp();
  await notes.list({ most: 20, order: 'newest first', open: true });
  await notes.list({ most: 20, order: 'newest first', tag: 3 });
  await notes.counts();
  await store.notesState();
  await foundIn(store, 'carb', 12);
  await store.entries('j3');
  await store.since(from);
}

test('nothing that a shop asks all day goes through the whole log, or through the text of every note', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-plans-'));
  const file = join(folder, 'shop.db');
  const store = await openSqlite(file, { now: () => '2026-03-02T09:00:00.000Z' });
  const jobs = Array.from({ length: 40 }, (_, n) => `j${n}`);
  await store.append(jobs.map((job) => opening(job)));
  for (let n = 0; n < 30; n += 1) await store.append(jobs.map((job) => entry(`${job}-${n}`, job)));
  await new JobNotes(store).bringUp();
  const from = await store.head();
  const statements = await statementsOf(() => servedFor(store, from));
  await store.close();
  const db = new Database(file);
  const slow = statements.flatMap((statement) =>
    planOf(db, statement)
      .filter(goesThroughAll)
      .map((step) => `${step}: ${statement}`),
  );
  db.close();
  rmSync(folder, { recursive: true });
  expect(statements.length).toBeGreaterThan(10);
  expect(slow).toEqual([]);
});
