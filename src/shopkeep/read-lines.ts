import { asksTheEngine, EntryError, fold, type RawEntry, readEntry } from '../job/index.js';
import type { Store } from '../store/index.js';
import { ShopkeepError } from './error.js';
import { shopNow } from './shop-now.js';

/**
 * Takes lines that came from outside, each by itself and, where it asks which engine it is written to, against that
 * engine. Only then is a job's log read.
 *
 * @throws ShopkeepError that says which of the entries it is, and which of its fields
 */
export async function readLines(
  store: Store,
  given: readonly unknown[],
  breath: () => Promise<void> = async () => {},
): Promise<RawEntry[]> {
  const entries: RawEntry[] = [];
  for (const [i, entry] of given.entries()) {
    entries.push(numbered(i, () => readEntry(entry)));
    if (i % linesABreath === linesABreath - 1) await breath();
  }
  if (!entries.some(({ kind }) => kind === 'measurement')) return entries; // spares making the catalog
  const { catalog } = await shopNow(store);
  const asking = new Map<RawEntry, number>();
  for (const [i, entry] of entries.entries()) if (asksTheEngine(entry, catalog)) asking.set(entry, i);
  for (const job of new Set([...asking.keys()].map((entry) => entry.job))) {
    const { facts, judged } = await engineOf(store, job, entries, asking);
    for (const [entry, i] of asking)
      if (entry.job === job && !judged.has(entry.id)) numbered(i, () => readEntry(entry, { facts, catalog }));
    await breath();
  }
  return entries;
}

const linesABreath = 100;

/**
 * The facts of a job with what comes now, and the lines that are not held against them: one that the log holds was
 * judged when it was written, and sending it again changes nothing; one that is struck says nothing any more.
 */
async function engineOf(
  store: Store,
  job: string,
  come: readonly RawEntry[],
  asking: ReadonlyMap<RawEntry, number>,
) {
  const kept = await store.entries(job);
  const telling = [...kept, ...come.filter((entry) => entry.job === job)].filter(
    (entry) => entry.kind === 'intake' || entry.kind === 'strike' || asking.has(entry),
  );
  const { intake: facts, log } = fold(job, telling);
  const struck = log.flatMap((line) => (line.struck ? [line.entry.id] : []));
  return { facts, judged: new Set([...kept.map(({ id }) => id), ...struck]) };
}

function numbered(index: number, read: () => RawEntry): RawEntry {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof EntryError)) throw error;
    const field = ['entries', index, error.field].filter((part) => part !== undefined).join('.');
    throw new ShopkeepError('bad-entry', `Entry ${index + 1}: ${error.message}. Nothing was stored.`, field);
  }
}
