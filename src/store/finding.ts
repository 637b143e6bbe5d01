import { type Selectable, sql } from 'kysely';
import type { Asked } from '../job/index.js';
import type { FoundJob, FoundWhere } from './store.js';
import type { Db, Dialect, FindRow } from './tables.js';

/**
 * The index in which jobs are found by any word of their lines: a row a job with its places, and its tokens in the
 * database's own full-text search (FTS5, or a tsvector under a GIN index). Tokens are cut by `job/find`, never by the
 * database, so that both find the same. A cache like the notes, made anew with them.
 */
export interface Findable {
  readonly job: string;
  /** separated by spaces */
  readonly tokens: string;
  readonly places: Uint8Array;
}

export async function keepFindable(tx: Db, dialect: Dialect, { job, tokens, places }: Findable) {
  const row = { job, places: Buffer.from(places) };
  const { n } = await tx
    .insertInto('job_finds')
    .values(row)
    .onConflict((on) => on.column('job').doUpdateSet({ places: row.places }))
    .returning('n')
    .executeTakeFirstOrThrow();
  if (dialect === 'postgres')
    await sql`update job_finds set tokens = array_to_tsvector(string_to_array(${tokens}, ' '))
      where n = ${n}`.execute(tx);
  else {
    await sql`delete from job_words where rowid = ${n}`.execute(tx);
    await sql`insert into job_words (rowid, tokens) values (${n}, ${tokens})`.execute(tx);
  }
}

/** Of one job, or of all. */
export async function forgetFindable(tx: Db, dialect: Dialect, job?: string): Promise<void> {
  const gone = tx.deleteFrom('job_finds').$if(job !== undefined, (q) => q.where('job', '=', job!));
  if (dialect === 'sqlite')
    await (job === undefined
      ? sql`insert into job_words (job_words) values ('delete-all')`.execute(tx)
      : sql`delete from job_words where rowid in (select n from job_finds where job = ${job})`.execute(tx));
  await gone.execute();
}

/** Jobs that hold all that is asked: open ones first, then those written to last. */
export async function findJobs(db: Db, dialect: Dialect, asked: Asked, most: number): Promise<FoundJob[]> {
  if (asked.length === 0) return [];
  const matching =
    dialect === 'postgres'
      ? sql<boolean>`tokens @@ ${postgresQuery(asked)}::tsquery`
      : sql<boolean>`n in (select rowid from job_words where job_words match ${sqliteQuery(asked)})`;
  // thousands may match: they are put in order by two numbers, and what is shown is read of a few
  const first = db
    .selectFrom('job_finds')
    .innerJoin('job_notes', 'job_notes.job', 'job_finds.job')
    .select('job_finds.job')
    .where(matching)
    .orderBy('open', 'desc')
    .orderBy('last', 'desc')
    .limit(most);
  return db
    .selectFrom('job_notes')
    .select(['job', 'summary'])
    .where('job', 'in', first)
    .orderBy('open', 'desc')
    .orderBy('last', 'desc')
    .execute();
}

export async function foundWhere(db: Db, jobs: readonly string[]): Promise<FoundWhere[]> {
  if (jobs.length === 0) return [];
  const rows: Pick<Selectable<FindRow>, 'job' | 'places'>[] = await db
    .selectFrom('job_finds')
    .select(['job', 'places'])
    .where('job', 'in', jobs)
    .execute();
  return rows;
}

/** Tokens hold letters, digits and `_ . -` only; they are quoted for both all the same. */
const sqliteQuery = (asked: Asked): string =>
  asked.map(({ token, goesOn }) => `"${token.replaceAll('"', '')}"${goesOn ? '*' : ''}`).join(' AND ');

const postgresQuery = (asked: Asked): string =>
  asked.map(({ token, goesOn }) => `'${token.replace(/['\\]/g, '')}'${goesOn ? ':*' : ''}`).join(' & ');
