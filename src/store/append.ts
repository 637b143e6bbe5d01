import { isDeepStrictEqual } from 'node:util';
import { type RawEntry, shopLog } from '../job/index.js';
import type { Backend } from './backend.js';
import { checkEntry, type FreshRow } from './check-entry.js';
import { nothingStored, StoreError } from './error.js';
import type { Appended } from './store.js';
import type { Db } from './tables.js';

export async function append(backend: Backend, entries: readonly RawEntry[]): Promise<Appended> {
  const rows = entries.map(checkEntry);
  if (rows.length === 0) return { stored: [], already: [] };
  return backend.write(async ({ tx, announce }) => {
    const { fresh, already } = await sortOut(tx, rows);
    await refuseUnopened(tx, fresh);
    const head = await insert(tx, fresh, backend.now());
    if (head > 0) await announce(head);
    return { stored: fresh.map((row) => row.id), already };
  });
}

/** Which rows are new, and which are only sent again. */
async function sortOut(tx: Db, rows: readonly FreshRow[]): Promise<{ fresh: FreshRow[]; already: string[] }> {
  const known = await keptRows(tx, rows);
  const fresh: FreshRow[] = [];
  const already: string[] = [];
  for (const row of rows) {
    const kept = known.get(row.id);
    if (kept === undefined) fresh.push(row);
    else if (sameContent(kept, row)) already.push(row.id);
    else throw conflict(row);
    known.set(row.id, kept ?? row); // the batch may name an id twice
  }
  return { fresh, already };
}

const idsAQuery = 500;

async function keptRows(tx: Db, rows: readonly FreshRow[]): Promise<Map<string, FreshRow>> {
  const known = new Map<string, FreshRow>();
  for (let i = 0; i < rows.length; i += idsAQuery) {
    const ids = rows.slice(i, i + idsAQuery).map((row) => row.id);
    for (const row of await tx.selectFrom('entries').selectAll().where('id', 'in', ids).execute())
      known.set(row.id, row);
  }
  return known;
}

const columns = ['job', 'at', 'by', 'kind', 'v'] as const;

/** The order of fields in the body does not count: a device may write them in another order the second time. */
function sameContent(a: FreshRow, b: FreshRow): boolean {
  if (columns.some((column) => a[column] !== b[column])) return false;
  return a.body === b.body || isDeepStrictEqual(JSON.parse(a.body), JSON.parse(b.body));
}

async function refuseUnopened(tx: Db, fresh: readonly FreshRow[]): Promise<void> {
  const opened = new Set([shopLog, ...fresh.filter((row) => row.kind === 'open').map((row) => row.job)]);
  for (const row of fresh) {
    if (opened.has(row.job)) continue;
    if (!(await isOpened(tx, row.job))) throw noSuchJob(row);
    opened.add(row.job);
  }
}

async function isOpened(tx: Db, job: string): Promise<boolean> {
  const found = await tx
    .selectFrom('entries')
    .select('seq')
    .where('job', '=', job)
    .where('kind', '=', 'open')
    .limit(1)
    .executeTakeFirst();
  return found !== undefined;
}

/** One by one: no database promises that a statement with many rows numbers them in the order given. */
async function insert(tx: Db, fresh: readonly FreshRow[], received: string): Promise<number> {
  let head = 0;
  for (const row of fresh) {
    const { seq } = await tx
      .insertInto('entries')
      .values({ ...row, received })
      .returning('seq')
      .executeTakeFirstOrThrow();
    head = seq;
  }
  return head;
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
