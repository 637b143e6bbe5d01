import type { Catalog } from '../catalog/index.js';
import { fold, type Job, jobSummary, jobTokens, placesOf } from '../job/index.js';
import type { JobNote, Store } from '../store/index.js';
import { packPlaces } from './find.js';
import { lessonOf } from './lessons.js';
import { shopNow } from './shop-now.js';

/** What is kept of a job beside its log, as the log stands; nothing for a job without lines. */
export async function noteFor(store: Store, job: string, by: string): Promise<JobNote | undefined> {
  const entries = await store.entries(job);
  const last = entries.at(-1);
  return last && noteOf(fold(job, entries), last.seq, by, (await shopNow(store)).catalog);
}

function noteOf(job: Job, made: number, by: string, catalog: Catalog): JobNote {
  const summary = jobSummary(job);
  const { tag, invented, handedOver } = summary;
  const lesson = JSON.stringify(lessonOf(job, catalog)) ?? '';
  const places = placesOf(job);
  return {
    job: job.id,
    made,
    by,
    tag,
    open: !handedOver,
    invented,
    tokens: jobTokens(places).join(' '),
    places: packPlaces(places),
    summary: JSON.stringify(summary),
    lesson,
  };
}
