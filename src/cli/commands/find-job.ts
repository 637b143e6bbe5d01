import { type ListedJob, Summaries } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { Failed } from '../command.js';

/** The job that a person means by the number on its tag or by its id. */
export async function findJob(store: Store, named: string): Promise<ListedJob> {
  const jobs = await new Summaries(store).list();
  const byId = jobs.find((job) => job.id === named.toLowerCase());
  if (byId) return byId;
  const tagged = /^#?\d{1,6}$/.test(named) ? jobs.filter((job) => job.summary.tag === tagOf(named)) : [];
  const [only, ...others] = tagged;
  if (!only) throw new Failed(`There is no job “${named}” in this store. “wristpin jobs” lists them.`);
  if (others.length > 0) {
    const ids = tagged.map((job) => job.id).join(', ');
    throw new Failed(`Tag ${tagOf(named)} hangs on ${tagged.length} jobs. Name the job by its id: ${ids}.`);
  }
  return only;
}

function tagOf(named: string): number {
  return Number(named.replace('#', ''));
}
