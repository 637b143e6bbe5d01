import { placeOf, type RawEntry } from '../job/index.js';
import type { Store } from '../store/index.js';

/** Two clocks that are kept right may be this far apart. */
const apartMs = 5 * 60_000;

/**
 * A line that is dated ahead of the bench's clock and says nothing of where it stands would win over every correction
 * until that day: it stands where it came, after all that the store holds of its log by then and not later than it says.
 * What it says of its own time is kept as it is. A line that carries its rank is taken as it is: its device knew what it
 * had seen.
 */
export async function standWhereTheyCame(
  store: Store,
  entries: readonly RawEntry[],
  now: Date,
): Promise<RawEntry[]> {
  const ahead = (e: RawEntry) => e.rank === undefined && placeOf(e) > now.getTime() + apartMs;
  const last = new Map<string, number>();
  for (const job of new Set(entries.filter(ahead).map((e) => e.job))) {
    const places = (await store.entries(job)).map(placeOf);
    last.set(
      job,
      places.reduce((a, b) => Math.max(a, b), now.getTime()),
    );
  }
  return entries.map((entry) => {
    const before = last.get(entry.job);
    if (before === undefined) return entry;
    const rank = ahead(entry) ? Math.min(placeOf(entry), before + 1) : undefined;
    last.set(entry.job, Math.max(before, rank ?? placeOf(entry)));
    return rank === undefined ? entry : { ...entry, rank };
  });
}
