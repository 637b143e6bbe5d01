import { setImmediate as breath } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { type Selectable, sql } from 'kysely';
import { attachedTo, shopLog } from '../job/index.js';
import { chainOf } from './chain.js';
import { noteDigest, pictureDigest } from './digest.js';
import { entryPages } from './entry-pages.js';
import { StoreError } from './error.js';
import { jobs } from './job-notes.js';
import { schemaVersion } from './migrate.js';
import { digestsSince } from './migrations.js';
import { chunkRows, hashOf, joined, soundMime } from './pictures.js';
import type { JobSpan, VerifyReport } from './store.js';
import type { Db, Dialect, EntryRow, PictureRow } from './tables.js';

/**
 * Reads everything once and says what is wrong: pages of the file, bodies, openings, chunks, hashes, references; and
 * whether each line has the digest that it was given and follows the one before it; whether what is kept beside the log
 * was counted and made of it. What is folded from the lines is not folded again: it has a digest of its own.
 * It takes a breath now and then, for SQLite answers without ever waiting and a server has others to serve.
 * `explain` turns a database's error into a StoreError; one of code 'corrupt' becomes a problem of the report.
 */
export async function verify(
  db: Db,
  dialect: Dialect,
  explain: (error: unknown) => unknown,
): Promise<VerifyReport> {
  const problems: string[] = [];
  const found = { entries: 0, jobs: 0, pictures: 0 };
  let sounds = 0;
  let miscounted: string[] = [];
  let sealed = true;
  try {
    problems.push(...(await pageProblems(db, dialect)));
    const log = await checkEntries(db, dialect);
    const pictures = await checkPictures(db);
    ({ sounds } = pictures);
    const shown = pictures.kept.size - sounds;
    Object.assign(found, { entries: log.entries, jobs: log.spans.size, pictures: shown });
    problems.push(...log.problems, ...unopened(log), ...pictures.problems, ...missing(log, pictures.kept));
    miscounted = [...new Set([...otherThan(log.spans, await jobs(db)), ...(await otherNotes(db))])].sort();
    sealed = log.sealed;
  } catch (error) {
    const explained = explain(error);
    if (!(explained instanceof StoreError) || explained.code !== 'corrupt') throw explained;
    problems.push(`reading stopped: ${explained.happened}`);
  }
  return {
    ok: problems.length === 0,
    ...found,
    ...(sounds > 0 && { sounds }),
    problems,
    ...(miscounted.length > 0 && { miscounted }),
    ...(!sealed && { sealed }),
  };
}

/** The jobs of which what was counted beside the log is not what lies in it. */
function otherThan(spans: ReadonlyMap<string, JobSpan>, counted: readonly JobSpan[]): string[] {
  const beside = new Map(counted.map((span) => [span.job, span]));
  const known = new Set([...spans.keys(), ...beside.keys()]);
  return [...known].filter((job) => !isDeepStrictEqual(spans.get(job), beside.get(job)));
}

/** The jobs whose note is not what was made. */
async function otherNotes(db: Db): Promise<string[]> {
  const other: string[] = [];
  for (let last = ''; ; ) {
    const rows = await db
      .selectFrom('job_notes')
      .selectAll()
      .where('job', '>', last)
      .orderBy('job')
      .limit(notesAPage)
      .execute();
    for (const row of rows)
      if (row.digest !== undefined && row.digest !== (row.made > 0 ? noteDigest(row) : ''))
        other.push(row.job);
    if (rows.length < notesAPage) return other;
    last = rows.at(-1)!.job;
    await breath();
  }
}

const notesAPage = 200;

/** What SQLite itself finds wrong with the file. PostgreSQL has no such question to ask; its server sees to that. */
export async function pageProblems(db: Db, dialect: Dialect): Promise<string[]> {
  if (dialect !== 'sqlite') return [];
  const pages = await sql<{ integrity_check: string }>`pragma integrity_check`.execute(db);
  const links = await sql<{ table: string; rowid: number }>`pragma foreign_key_check`.execute(db);
  return [
    ...pages.rows.map((row) => row.integrity_check).filter((line) => line !== 'ok'),
    ...links.rows.map((row) => `row ${row.rowid} of ${row.table} belongs to nothing`),
  ];
}

interface LogCheck {
  entries: number;
  readonly spans: Map<string, JobSpan>;
  readonly opened: Set<string>;
  /** picture → an entry that shows it */
  readonly shown: Map<string, string>;
  readonly problems: string[];
  /** whether its lines carry digests */
  readonly sealed: boolean;
}

async function checkEntries(db: Db, dialect: Dialect): Promise<LogCheck> {
  const sealed = (await schemaVersion(db, dialect)) >= digestsSince;
  const log: LogCheck = {
    entries: 0,
    spans: new Map(),
    opened: new Set(),
    shown: new Map(),
    problems: [],
    sealed,
  };
  const chain = sealed ? await chainOf(db) : undefined;
  for await (const rows of entryPages(db))
    for (const row of rows) {
      checkEntry(log, row);
      chain?.next(row, log.problems);
    }
  chain?.end(log.problems);
  return log;
}

function checkEntry(log: LogCheck, row: Selectable<EntryRow>): void {
  log.entries += 1;
  const { first, count } = log.spans.get(row.job) ?? { first: row.seq, count: 0 };
  log.spans.set(row.job, { job: row.job, first, last: row.seq, count: count + 1 });
  if (row.kind === 'open') log.opened.add(row.job);
  const body = parsed(row.body);
  if (body === undefined) log.problems.push(`entry ${row.id} of job ${row.job}: its body is not JSON`);
  const shown = attachedTo({ kind: row.kind, body });
  if (shown !== undefined) log.shown.set(shown, row.id);
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}

function unopened(log: LogCheck): string[] {
  const never = [...log.spans.keys()].filter((job) => job !== shopLog && !log.opened.has(job));
  return never.map((job) => `job ${job} has entries, and none that opens it`);
}

interface PictureCheck {
  readonly kept: Set<string>;
  /** how many of them are sounds */
  readonly sounds: number;
  readonly problems: string[];
}

async function checkPictures(db: Db): Promise<PictureCheck> {
  const rows = await db.selectFrom('pictures').selectAll().orderBy('sha256').execute();
  const kept = new Set(rows.map((row) => row.sha256));
  const problems: string[] = [];
  for (const row of rows) {
    problems.push(...(await pictureProblems(db, row)));
    await breath();
  }
  const named = await db.selectFrom('picture_chunks').select('sha256').distinct().execute();
  const stray = named.filter(({ sha256 }) => !kept.has(sha256));
  problems.push(
    ...stray.map(
      ({ sha256 }) => `picture ${sha256}: there are pieces of it, and nothing that says what it is`,
    ),
  );
  return { kept, sounds: rows.filter(({ mime }) => mime === soundMime).length, problems };
}

async function pictureProblems(db: Db, row: Selectable<PictureRow>): Promise<string[]> {
  const chunks = await chunkRows(db, row.sha256);
  const gap = chunks.findIndex((chunk, i) => chunk.n !== i);
  if (gap >= 0) return [`picture ${row.sha256}: piece ${gap} is missing`];
  const bytes = joined(chunks);
  if (bytes.length !== row.bytes)
    return [`picture ${row.sha256}: ${bytes.length} of ${row.bytes} bytes are there`];
  if (hashOf(bytes) !== row.sha256) return [`picture ${row.sha256}: its bytes do not hash to its name`];
  if (row.digest === undefined || row.digest === pictureDigest(row)) return [];
  return [`picture ${row.sha256}: what is said of it is not what was written`];
}

function missing(log: LogCheck, kept: ReadonlySet<string>): string[] {
  const lost = [...log.shown].filter(([sha256]) => !kept.has(sha256));
  return lost.map(([sha256, entry]) => `entry ${entry} shows picture ${sha256}, which is not here`);
}
