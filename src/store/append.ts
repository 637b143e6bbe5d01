import { setImmediate as breath } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { type RawEntry, shopLog } from '../job/index.js';
import type { Backend } from './backend.js';
import { checkEntry, type FreshRow } from './check-entry.js';
import { lineDigest } from './digest.js';
import { nothingStored, StoreError } from './error.js';
import { countIn } from './job-notes.js';
import { headDigest, setHead } from './state.js';
import type { Appended } from './store.js';
import type { Db } from './tables.js';

interface Waiting {
  readonly rows: readonly FreshRow[];
  readonly done: (appended: Appended) => void;
  readonly failed: (error: unknown) => void;
}

const rowsACommit = 1_000;

/**
 * What comes while a commit is under way waits and goes into the next one together: the disk is waited for once, and
 * each is answered after that. Each is taken whole or refused whole by itself; a commit that fails fails for all in it.
 */
export function appender(backend: Backend): (entries: readonly RawEntry[]) => Promise<Appended> {
  const waiting: Waiting[] = [];
  let writing = false;
  const write = async () => {
    writing = true;
    while (waiting.length > 0) {
      await commit(backend, nextGroup(waiting));
      await breath(); // so that those who wait to be heard are in the next group
    }
    writing = false;
  };
  return async (entries) => {
    const rows = entries.map(checkEntry);
    if (rows.length === 0) return { stored: [], already: [] };
    return new Promise((done, failed) => {
      waiting.push({ rows, done, failed });
      if (!writing) void write();
    });
  };
}

function nextGroup(waiting: Waiting[]): Waiting[] {
  const group = waiting.splice(0, 1);
  let rows = group[0]!.rows.length;
  while (waiting.length > 0 && rows + waiting[0]!.rows.length <= rowsACommit) {
    rows += waiting[0]!.rows.length;
    group.push(waiting.shift()!);
  }
  return group;
}

async function commit(backend: Backend, group: readonly Waiting[]): Promise<void> {
  try {
    const answers = await backend.write(async ({ tx, numbers, announce }) => {
      const kept = await keptFor(
        tx,
        group.flatMap(({ rows }) => rows),
      );
      const sorted = group.map(({ rows }) => sortedOut(kept, rows));
      const fresh = sorted.flatMap((each) => (each instanceof StoreError ? [] : each.fresh));
      if (fresh.length > 0)
        await announce(await insert(tx, fresh, await numbers(fresh.length), backend.now()));
      return sorted;
    });
    for (const [i, answer] of answers.entries()) {
      if (answer instanceof StoreError) group[i]!.failed(answer);
      else group[i]!.done({ stored: answer.fresh.map((row) => row.id), already: answer.already });
    }
  } catch (error) {
    for (const { failed } of group) failed(error);
  }
}

/** What the log holds of the ids and jobs that a group names; grows by what the group adds. */
interface Kept {
  readonly rows: Map<string, FreshRow>;
  readonly opened: Set<string>;
}

const namesAQuery = 500;

async function keptFor(tx: Db, rows: readonly FreshRow[]): Promise<Kept> {
  const kept: Kept = { rows: new Map(), opened: new Set([shopLog]) };
  for (const ids of inParts(rows.map((row) => row.id)))
    for (const row of await tx.selectFrom('entries').selectAll().where('id', 'in', ids).execute())
      kept.rows.set(row.id, row);
  for (const jobs of inParts(rows.map((row) => row.job))) {
    const openings = tx.selectFrom('entries').select('job').distinct().where('kind', '=', 'open');
    for (const { job } of await openings.where('job', 'in', jobs).execute()) kept.opened.add(job);
  }
  return kept;
}

function* inParts(names: readonly string[]): Generator<string[]> {
  const all = [...new Set(names)];
  for (let i = 0; i < all.length; i += namesAQuery) yield all.slice(i, i + namesAQuery);
}

/** Which rows are new, and which are only sent again; or why none of them is taken. */
function sortedOut(
  kept: Kept,
  rows: readonly FreshRow[],
): { readonly fresh: FreshRow[]; readonly already: string[] } | StoreError {
  const opened = rows.filter((row) => row.kind === 'open').map((row) => row.job);
  const stray = rows.find((row) => !kept.opened.has(row.job) && !opened.includes(row.job));
  const fresh = new Map<string, FreshRow>();
  const already: string[] = [];
  for (const row of rows) {
    const known = kept.rows.get(row.id) ?? fresh.get(row.id); // the batch may name an id twice
    if (known === undefined) fresh.set(row.id, row);
    else if (sameContent(known, row)) already.push(row.id);
    else return conflict(row);
  }
  if (stray) return noSuchJob(stray);
  for (const row of fresh.values()) kept.rows.set(row.id, row);
  for (const job of opened) kept.opened.add(job);
  return { fresh: [...fresh.values()], already };
}

const columns = ['job', 'at', 'spoken', 'by', 'kind', 'v'] as const;

/**
 * The order of fields in the body does not count: a device may write them in another order the second time. Nor does where
 * the line stands: one that came without a rank is given one where it is taken in, by each store for itself.
 */
function sameContent(a: FreshRow, b: FreshRow): boolean {
  if (columns.some((column) => a[column] !== b[column])) return false;
  return a.body === b.body || isDeepStrictEqual(JSON.parse(a.body), JSON.parse(b.body));
}

export const entriesAStatement = 100;

/** Each row gets its number beforehand: no database promises to number the rows of one statement in order. */
async function insert(
  tx: Db,
  fresh: readonly FreshRow[],
  numbers: readonly number[],
  received: string,
): Promise<number> {
  let digest = await headDigest(tx);
  const rows = fresh.map((row, i) => {
    const kept = { ...row, seq: numbers[i]!, received };
    digest = lineDigest(digest, kept);
    return { ...kept, digest };
  });
  for (let i = 0; i < rows.length; i += entriesAStatement)
    await tx
      .insertInto('entries')
      .values(rows.slice(i, i + entriesAStatement))
      .execute();
  await setHead(tx, digest);
  await countIn(tx, rows);
  return numbers.at(-1)!;
}

function conflict(row: FreshRow): StoreError {
  return new StoreError(
    'conflict',
    `Entry ${row.id} is already in the log with a different content.`,
    nothingStored,
    'A change is a new entry with an id of its own; a mistake is struck by a later entry.',
  );
}

function noSuchJob(row: FreshRow): StoreError {
  return new StoreError(
    'no-such-job',
    `Entry ${row.id} belongs to job ${row.job}, which has not been opened.`,
    nothingStored,
    'Send the entry that opens the job first, or with it.',
  );
}
