import { setImmediate as breath } from 'node:timers/promises';
import { deflateSync, inflateSync } from 'node:zlib';
import { askedFor, type FoundJob, type FoundPlace, placesFound } from '../job/index.js';
import type { Store } from '../store/index.js';
import type { JobNotes } from './job-notes.js';

const placesAJob = 3;

/**
 * The jobs in which all of what was typed stands, the closest first, at most `most`. Open jobs come before those handed
 * over, and then the ones written to last.
 */
export async function findAnything(
  store: Store,
  notes: JobNotes,
  typed: string,
  most: number,
): Promise<FoundJob[]> {
  await notes.catchUp();
  return foundIn(store, typed, most);
}

/** As `findAnything`, in what was read so far. */
export async function foundIn(store: Store, typed: string, most: number): Promise<FoundJob[]> {
  const hits = new Map<string, Hit>();
  for (const asked of askedFor(typed)) {
    if (hits.size >= most) break;
    for (const { job, summary } of await store.findJobs(asked, most))
      if (hits.size < most && !hits.has(job)) hits.set(job, { asked, summary });
  }
  const where = await store.foundWhere([...hits.keys()]);
  const packed = new Map(where.map(({ job, places }) => [job, places]));
  const found: FoundJob[] = [];
  for (const [job, { asked, summary }] of hits) {
    const places = placesFound(unpackPlaces(packed.get(job)), asked, placesAJob);
    found.push({ summary: JSON.parse(summary), places });
    await breath(); // a server has others to serve
  }
  return found;
}

interface Hit {
  readonly asked: ReturnType<typeof askedFor>[number];
  readonly summary: string;
}

export const packPlaces = (places: readonly FoundPlace[]): Uint8Array => deflateSync(JSON.stringify(places));

/** Deflate carries a sum of what went in: bytes that are not what was packed are an error, never other words. */
function unpackPlaces(packed: Uint8Array | undefined): FoundPlace[] {
  return packed === undefined ? [] : JSON.parse(inflateSync(packed).toString());
}
