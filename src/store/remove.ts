import { attachedTo, shopLog } from '../job/index.js';
import type { Backend } from './backend.js';
import { StoreError } from './error.js';
import { forgetFindable } from './finding.js';
import { bodyOf, entriesOf } from './read.js';
import { isInvented } from './references.js';
import type { Removed, StoredEntry } from './store.js';
import type { Db } from './tables.js';

export async function removeInvented(backend: Backend, job: string): Promise<Removed> {
  return backend.write(async ({ tx }) => {
    const entries = await entriesOf(tx, job, 0);
    refuseReal(job, entries);
    const others = await picturesOfOthers(tx, job);
    const alone = [...picturesOf(entries)].filter((sha256) => !others.has(sha256));
    await tx
      .insertInto('removed_lines')
      .expression(tx.selectFrom('entries').select(['seq', 'digest']).where('job', '=', job))
      .execute();
    await tx.deleteFrom('entries').where('job', '=', job).execute();
    await tx.deleteFrom('job_notes').where('job', '=', job).execute();
    await forgetFindable(tx, backend.dialect, job);
    let pictures = 0;
    for (const sha256 of alone) pictures += await removePicture(tx, sha256);
    return { entries: entries.length, pictures };
  });
}

/** Every opening must say "invented": a job that anyone ever opened as a real one is a record. */
function refuseReal(job: string, entries: readonly StoredEntry[]): void {
  const openings = entries.filter((entry) => entry.kind === 'open');
  if (job !== shopLog && openings.length === 0) throw unknown(job);
  if (job === shopLog || !openings.every((entry) => isInvented(entry.body))) throw real(job);
}

function picturesOf(entries: readonly Pick<StoredEntry, 'kind' | 'body'>[]): Set<string> {
  return new Set(entries.map(attachedTo).filter((sha256) => sha256 !== undefined));
}

async function picturesOfOthers(tx: Db, job: string): Promise<Set<string>> {
  const rows = await tx
    .selectFrom('entries')
    .select(['id', 'job', 'kind', 'body'])
    .where('kind', 'in', ['photograph', 'spoken-note'])
    .where('job', '!=', job)
    .execute();
  return picturesOf(rows.map((row) => ({ kind: row.kind, body: bodyOf(row) })));
}

async function removePicture(tx: Db, sha256: string): Promise<number> {
  await tx.deleteFrom('picture_chunks').where('sha256', '=', sha256).execute();
  const gone = await tx.deleteFrom('pictures').where('sha256', '=', sha256).executeTakeFirst();
  return Number(gone.numDeletedRows);
}

const nothingRemoved = 'Nothing was removed.';

function unknown(job: string): StoreError {
  return new StoreError(
    'no-such-job',
    `There is no job ${job}.`,
    nothingRemoved,
    'Look at the list of jobs.',
  );
}

function real(job: string): StoreError {
  return new StoreError(
    'not-invented',
    `Job ${job} is not an invented one, and a real record is never removed.`,
    nothingRemoved,
    'Strike a wrong entry by a later one.',
  );
}
