import { type FoundPlace, fold, jobSummary, jobTokens, placesOf } from '../../src/job/index.js';
import { packPlaces } from '../../src/shopkeep/find.js';
import { JobNotes } from '../../src/shopkeep/index.js';
import type { Store } from '../../src/store/index.js';
import { jobOf, linesOf } from './years.js';

const jobsATime = 10;

/** Through the store's own door; gives the number of lines. */
export async function fill(store: Store, jobs: number): Promise<number> {
  let lines = 0;
  for (let n = 0; n < jobs; n += jobsATime) {
    const batch = Array.from({ length: Math.min(jobsATime, jobs - n) }, (_, i) => linesOf(n + i)).flat();
    lines += (await store.append(batch)).stored.length;
    if (n % 1000 === 0) process.stderr.write(`\r  ${n} jobs `);
  }
  await new JobNotes(store).bringUp((behind) => process.stderr.write(`\r  ${behind} to read `));
  process.stderr.write('\r');
  return lines;
}

/**
 * What a search stands on, of the same jobs: each is kept findable as the program does it, but of its log only the first
 * line is put into the store. They differ by tag and owner, so that of the rest the tokens are cut once. Gives the number
 * of lines that are findable.
 */
export async function fillFindable(store: Store, jobs: number): Promise<number> {
  const open = patternOf(1);
  const done = patternOf(2);
  let lines = 0;
  for (let n = 0; n < jobs; n += findableATime) {
    const numbers = Array.from({ length: Math.min(findableATime, jobs - n) }, (_, i) => n + i);
    await store.append(numbers.map((each) => linesOf(each)[0]!));
    const made = await store.head();
    const notes = numbers.map((each) => {
      const pattern = each % 20 === 1 ? open : done;
      lines += pattern.lines;
      return { job: jobOf(each), made, ...pattern.note(each) };
    });
    await store.keepNotes(notes);
    if (n % 1000 === 0) process.stderr.write(`\r  ${n} jobs `);
  }
  process.stderr.write('\r');
  return lines;
}

const findableATime = 50;

function patternOf(of: number) {
  const log = linesOf(of);
  const job = fold(jobOf(of), log);
  const places = placesOf(job);
  const isOwn = ({ kind, detail = '' }: FoundPlace) => kind === 'open' || detail.includes(`Owner ${of}`);
  const shared = jobTokens(places.filter((place) => !isOwn(place)));
  const note = (n: number) => {
    const own = places.map((place): FoundPlace => {
      if (!isOwn(place)) return place;
      if (place.kind === 'open') return { ...place, value: String(n + 1) };
      return { ...place, detail: place.detail!.replaceAll(`Owner ${of}`, `Owner ${n}`) };
    });
    const tokens = new Set([...shared, ...jobTokens(own.filter((_, i) => isOwn(places[i]!)))]);
    const summary = JSON.stringify({ ...jobSummary(job), id: jobOf(n), tag: n + 1 });
    return {
      ...{ by: 'bench', tag: n + 1, open: job.handOver === undefined, invented: false, summary, lesson: '' },
      ...{ tokens: [...tokens].join(' '), places: packPlaces(own) },
    };
  };
  return { lines: log.length, note };
}
