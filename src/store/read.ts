import type { Selectable } from 'kysely';
import { StoreError } from './error.js';
import type { StoredEntry } from './store.js';
import type { Db, EntryRow } from './tables.js';

export async function entriesOf(db: Db, job: string, after: number): Promise<StoredEntry[]> {
  const rows = await db
    .selectFrom('entries')
    .selectAll()
    .where('job', '=', job)
    .where('seq', '>', after)
    .orderBy('seq')
    .execute();
  return rows.map(toEntry);
}

export async function since(db: Db, seq: number): Promise<StoredEntry[]> {
  const rows = await db.selectFrom('entries').selectAll().where('seq', '>', seq).orderBy('seq').execute();
  return rows.map(toEntry);
}

export async function head(db: Db): Promise<number> {
  const row = await db
    .selectFrom('entries')
    .select((e) => e.fn.max<number | null>('seq').as('head'))
    .executeTakeFirstOrThrow();
  return row.head ?? 0;
}

function toEntry({ digest: _, rank, spoken, ...row }: Selectable<EntryRow>): StoredEntry {
  return {
    ...row,
    ...(typeof rank === 'number' && { rank }),
    ...(spoken === 1 && { spoken: true as const }),
    body: bodyOf(row),
  };
}

export function bodyOf(row: Pick<EntryRow, 'id' | 'job' | 'body'>): unknown {
  try {
    return JSON.parse(row.body);
  } catch (cause) {
    throw new StoreError(
      'corrupt',
      `The body of entry ${row.id} of job ${row.job} is not readable any more.`,
      'Nothing has been changed; the other entries are as they were.',
      'Run the verification, keep this log as it is, and restore the last backup into a new one.',
      cause,
    );
  }
}
