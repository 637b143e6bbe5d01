import { shopLog } from '../job/index.js';
import type { Store, StoredEntry } from '../store/index.js';
import { ShopkeepError } from './error.js';

/** The job's log, or what came after `after`. @throws ShopkeepError when there is no such job */
export async function entriesOf(store: Store, job: string, after = 0): Promise<StoredEntry[]> {
  const entries = await store.entries(job, { after });
  if (entries.length === 0) await requireJob(store, job);
  return entries;
}

/** The shop's own log exists from the start, also while it is empty. */
async function requireJob(store: Store, job: string): Promise<void> {
  if (job === shopLog || (await store.span(job))) return;
  throw new ShopkeepError('not-found', `There is no job ${job} in this shop’s log.`);
}
