import { placeOf, type RawEntry } from '../job/index.js';
import type { Appended, Store } from '../store/index.js';

/** Two clocks that are kept right may be this far apart. */
const apartMs = 5 * 60_000;

const turns = new WeakMap<Store, Promise<unknown>>();

/**
 * Keeps lines, and those that are dated ahead of the bench's clock where they came. Of the latter one sending after the
 * other: which place is free is read from the store, and a page that was loaded anew sends again while its first sending is
 * under way.
 */
export async function appendWhereTheyCame(
  store: Store,
  entries: readonly RawEntry[],
  now: Date,
): Promise<Appended> {
  if (!entries.some((entry) => isAhead(entry, now))) return store.append(entries);
  const before = turns.get(store) ?? Promise.resolve();
  const mine = before.then(async () => store.append(await standWhereTheyCame(store, entries, now)));
  turns.set(
    store,
    mine.catch(() => {}),
  );
  return mine;
}

const isAhead = (e: RawEntry, now: Date): boolean =>
  e.rank === undefined && placeOf(e) > now.getTime() + apartMs;

/**
 * A line that is dated ahead of the bench's clock and says nothing of where it stands would win over every correction
 * until that day: it stands where it came, after all that the store holds of its log by then and not later than it says.
 * What it says of its own time is kept as it is. A line that carries its rank is taken as it is: its device knew what it
 * had seen.
 */
async function standWhereTheyCame(
  store: Store,
  entries: readonly RawEntry[],
  now: Date,
): Promise<RawEntry[]> {
  const last = new Map<string, number>();
  for (const job of new Set(entries.filter((e) => isAhead(e, now)).map((e) => e.job))) {
    const places = (await store.entries(job)).map(placeOf);
    last.set(
      job,
      places.reduce((a, b) => Math.max(a, b), now.getTime()),
    );
  }
  return entries.map((entry) => {
    const before = last.get(entry.job);
    if (before === undefined) return entry;
    const rank = isAhead(entry, now) ? Math.min(placeOf(entry), before + 1) : undefined;
    last.set(entry.job, Math.max(before, rank ?? placeOf(entry)));
    return rank === undefined ? entry : { ...entry, rank };
  });
}
