import { fold, type Job } from '../job/index.js';
import type { Store } from '../store/index.js';
import { ShopkeepError } from './error.js';

/** The job that a person means by the number on its tag or by its id; only jobs that were ever called so are folded. */
export async function findJob(store: Store, named: string): Promise<Job> {
  const id = named.toLowerCase();
  const byId = await store.entries(id);
  if (byId.length > 0) return fold(id, byId);
  const tag = /^#?\d{1,6}$/.test(named) ? Number(named.replace('#', '')) : undefined;
  const [only, ...others] = tag === undefined ? [] : await tagged(store, tag);
  if (!only) {
    const message = `There is no job “${named}” in this store. “wristpin jobs” lists them.`;
    throw new ShopkeepError('not-found', message);
  }
  if (others.length > 0) {
    const ids = [only, ...others].map((job) => job.id).join(', ');
    const message = `Tag ${tag} hangs on ${others.length + 1} jobs. Name the job by its id: ${ids}.`;
    throw new ShopkeepError('not-found', message);
  }
  return only;
}

async function tagged(store: Store, tag: number): Promise<Job[]> {
  const jobs: Job[] = [];
  for (const id of await store.opened({ tag })) jobs.push(fold(id, await store.entries(id)));
  return jobs.filter((job) => job.tag === tag);
}
