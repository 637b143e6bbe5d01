import { sql } from 'kysely';
import { shopLog } from '../job/index.js';
import type { Backend } from './backend.js';
import { noteDigest } from './digest.js';
import { forgetFindable, keepFindable } from './finding.js';
import type { JobCounts, JobNote, JobSpan, JobsAsked, ListedJob, Store } from './store.js';
import type { Db } from './tables.js';

/**
 * Beside the log stands one row a job: where its lines lie, which is counted in the transaction that adds them, and what
 * a list and the shop's learning need of it, which is made anew by whoever folds jobs once `made` is behind `last`. It is
 * a cache: `rebuild` makes it from the log.
 */
export async function countIn(tx: Db, rows: readonly { readonly job: string; readonly seq: number }[]) {
  const spans = new Map<string, JobSpan>();
  for (const { job, seq } of rows) {
    const { first, count } = spans.get(job) ?? { first: seq, count: 0 };
    spans.set(job, { job, first, last: seq, count: count + 1 });
  }
  await tx
    .insertInto('job_notes')
    .values([...spans.values()])
    .onConflict((on) =>
      on.column('job').doUpdateSet((e) => ({
        last: e.ref('excluded.last'),
        count: sql<number>`job_notes.count + excluded.count`,
      })),
    )
    .execute();
}

export async function rebuild(tx: Db): Promise<void> {
  await tx.deleteFrom('job_notes').execute();
  await sql`insert into job_notes (job, first, last, count)
    select job, min(seq), max(seq), count(*) from entries group by job`.execute(tx);
}

export async function reindex(backend: Backend): Promise<void> {
  await backend.write(async ({ tx }) => {
    await forgetFindable(tx, backend.dialect);
    await rebuild(tx);
  });
}

const span = ['job', 'first', 'last', 'count'] as const;

export const jobs = (db: Db): Promise<JobSpan[]> =>
  db.selectFrom('job_notes').select(span).orderBy('first').execute();

export const spanOf = (db: Db, job: string): Promise<JobSpan | undefined> =>
  db.selectFrom('job_notes').select(span).where('job', '=', job).executeTakeFirst();

const machines = (db: Db) => db.selectFrom('job_notes').where('job', '!=', shopLog);

/** Jobs whose note is behind their log, the latest written first: those are asked for. */
export function behind(db: Db, most: number, upTo?: number): Promise<JobSpan[]> {
  const all = machines(db).select(span).whereRef('made', '<', 'last');
  const those = upTo === undefined ? all : all.where('last', '<=', upTo);
  return those.orderBy('last', 'desc').limit(most).execute();
}

export async function keepNotes(backend: Backend, notes: readonly JobNote[]): Promise<boolean> {
  return backend.write(async ({ tx }) => {
    const ids = notes.map(({ job }) => job);
    const before = await tx
      .selectFrom('job_notes')
      .select(['job', 'lesson'])
      .where('job', 'in', ids)
      .execute();
    const known = new Map(before.map(({ job, lesson }) => [job, lesson]));
    for (const { job, made, tokens, places, ...note } of notes) {
      const facts = { ...note, words: '', made, open: Number(note.open), invented: Number(note.invented) };
      const row = { ...facts, digest: noteDigest({ job, ...facts }) };
      // another server may have folded more of it meanwhile
      const update = tx.updateTable('job_notes').set(row).where('job', '=', job).where('made', '<', made);
      const { numUpdatedRows } = await update.executeTakeFirstOrThrow();
      if (numUpdatedRows > 0) await keepFindable(tx, backend.dialect, { job, tokens, places });
    }
    return notes.some(({ job, lesson }) => known.get(job) !== lesson);
  });
}

export async function forgetNotes(backend: Backend, exceptBy: string): Promise<void> {
  // before and behind it in the index; “other than” would be asked of every row
  const others = machines(backend.db)
    .select('job')
    .where('made', '>', 0)
    .where((e) => e.or([e('by', '<', exceptBy), e('by', '>', exceptBy)]));
  if ((await others.limit(1).execute()).length === 0) return;
  await backend.write(async ({ tx }) => {
    await tx.updateTable('job_notes').set({ made: 0, digest: '' }).where('by', '!=', exceptBy).execute();
  });
}

export async function listJobs(db: Db, asked: JobsAsked): Promise<ListedJob[]> {
  const newest = asked.order === 'newest first';
  let rows = machines(db).where('made', '>', 0);
  if (asked.open !== undefined) rows = rows.where('open', '=', Number(asked.open));
  if (asked.invented !== undefined) rows = rows.where('invented', '=', Number(asked.invented));
  if (asked.tag !== undefined) rows = rows.where('tag', '=', asked.tag);
  if (asked.beyond !== undefined)
    rows = newest ? rows.where('last', '<', asked.beyond) : rows.where('first', '>', asked.beyond);
  return rows
    .select([...span, 'summary'])
    .orderBy(newest ? 'last' : 'first', newest ? 'desc' : 'asc')
    .limit(asked.most)
    .execute();
}

export async function jobCounts(db: Db): Promise<JobCounts> {
  const groups = await machines(db)
    .select((e) => [
      'open',
      'invented',
      sql<number>`case when made = 0 then 0 else 1 end`.as('known'),
      sql<number>`sum(case when made < last then 1 else 0 end)`.as('behind'),
      e.fn.countAll<number>().as('count'),
      e.fn.max<number>('tag').as('tag'),
    ])
    .groupBy(['open', 'invented', 'known'])
    .execute();
  const known = groups.filter((g) => g.known === 1);
  const sum = (of: typeof groups) => of.reduce((all, { count }) => all + Number(count), 0);
  return {
    all: sum(groups),
    behind: groups.reduce((all, g) => all + Number(g.behind), 0),
    open: sum(known.filter((g) => g.open === 1)),
    handedOver: sum(known.filter((g) => g.open === 0)),
    invented: sum(known.filter((g) => g.invented === 1)),
    greatestTag: Math.max(0, ...known.filter((g) => g.invented === 0).map((g) => g.tag)),
  };
}

/** Another one as soon as any note is made anew. */
export async function notesState(db: Db): Promise<string> {
  const { count, made } = await machines(db)
    .select((e) => [e.fn.countAll().as('count'), e.fn.sum('made').as('made')])
    .executeTakeFirstOrThrow();
  return `${count} ${made}`;
}

/** By pages in the order of the jobs' ids: some thousand of them are read while others are served. */
export const lessons = (db: Db, { after, most }: { after: string; most: number }) =>
  machines(db)
    .select(['job', 'lesson'])
    .where('made', '>', 0)
    .where('job', '>', after)
    .orderBy('job')
    .limit(most)
    .execute();

/** Read off the openings themselves: the notes may be behind. */
export async function opened(db: Db, saying: Parameters<Store['opened']>[0]): Promise<string[]> {
  const rows = await db
    .selectFrom('entries')
    .select('job')
    .distinct()
    .where('kind', '=', 'open')
    .where('body', 'like', `%${JSON.stringify(saying).slice(1, -1)}%`)
    .execute();
  return rows.map(({ job }) => job);
}

/** The jobs that were written to after `seq`, and the head by then. */
export async function changedSince(db: Db, seq: number): Promise<{ seq: number; jobs: string[] }> {
  const written = db.selectFrom('job_notes').select(['job', 'last']).where('last', '>', seq);
  const rows = await written.orderBy('last').execute();
  return { seq: rows.at(-1)?.last ?? seq, jobs: rows.map(({ job }) => job) };
}
