import { setImmediate as rest } from 'node:timers/promises';
import { asksTheEngine, fold, foldShop, type RawEntry, readEntry, shopLog } from '../job/index.js';
import type { Store } from '../store/index.js';
import { ShopkeepError } from './error.js';
import { numbered, readEach } from './read-each.js';
import { TooMuch } from './reading/reading.js';
import { packReader, shopNow } from './shop-now.js';

/**
 * Takes lines that came from outside, each by itself, and as far as they ask for it against what the store holds.
 *
 * @throws ShopkeepError that says which of the entries it is, and which of its fields
 */
export const readLines = (store: Store, given: readonly unknown[]): Promise<RawEntry[]> =>
  heldAgainstStore(store, readEach(given));

/**
 * A line that asks which engine it is written to is held against that engine, and a pack against the catalog that it is
 * laid over. Only then is a log read.
 */
export async function heldAgainstStore(store: Store, entries: RawEntry[]): Promise<RawEntry[]> {
  await requirePacksRead(store, entries);
  if (!entries.some(({ kind }) => kind === 'measurement')) return entries; // spares making the catalog
  const { catalog } = await shopNow(store);
  const asking = new Map<RawEntry, number>();
  for (const [i, entry] of entries.entries()) if (asksTheEngine(entry, catalog)) asking.set(entry, i);
  for (const job of new Set([...asking.keys()].map((entry) => entry.job))) {
    const { facts, judged } = await engineOf(store, job, entries, asking);
    for (const [entry, i] of asking) {
      if (entry.job !== job || judged.has(entry.id)) continue;
      numbered(i, () => readEntry(entry, { facts, catalog }));
      if (i % linesABreath === linesABreath - 1) await rest();
    }
  }
  return entries;
}

/** Between so many lines others are let in. */
const linesABreath = 100;

/**
 * A pack that nobody could read in good time would hold up every page of the shop: it is not kept. One that does not fit the
 * catalog is, and is left out of it with its reasons.
 */
async function requirePacksRead(store: Store, entries: readonly RawEntry[]): Promise<void> {
  const reader = packReader(store);
  const first = entries.findIndex(({ job, kind }) => job === shopLog && kind === 'pack');
  if (reader === undefined || first < 0) return;
  const own = entries.filter(({ job }) => job === shopLog);
  try {
    await reader(foldShop([...(await store.entries(shopLog)), ...own]).packs);
  } catch (error) {
    if (!(error instanceof TooMuch)) throw error;
    const words = `Entry ${first + 1}: with this pack the shop’s catalog ${error.message}. Nothing was stored.`;
    throw new ShopkeepError('bad-entry', words, `entries.${first}.body.text`);
  }
}

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
