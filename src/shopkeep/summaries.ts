import { fold, type JobSummary, jobSummary, shopLog } from '../job/index.js';
import type { JobSpan, Store } from '../store/index.js';

export interface ListedJob {
  readonly id: string;
  /** seq of its first and last entry, and how many there are */
  readonly first: number;
  readonly last: number;
  readonly count: number;
  readonly summary: JobSummary;
}

/** The summaries of all jobs, each folded again only when its last entry is another: a cache, never a truth. */
export class Summaries {
  readonly #store: Store;
  #known = new Map<string, ListedJob>();

  constructor(store: Store) {
    this.#store = store;
  }

  async list(): Promise<ListedJob[]> {
    const spans = (await this.#store.jobs()).filter(({ job }) => job !== shopLog);
    const listed: ListedJob[] = [];
    for (const span of spans) listed.push(this.#kept(span) ?? (await this.#folded(span)));
    this.#known = new Map(listed.map((job) => [job.id, job]));
    return listed;
  }

  #kept(span: JobSpan): ListedJob | undefined {
    const known = this.#known.get(span.job);
    return known?.last === span.last && known.count === span.count ? known : undefined;
  }

  async #folded({ job, first, last, count }: JobSpan): Promise<ListedJob> {
    const summary = jobSummary(fold(job, await this.#store.entries(job)));
    return { id: job, first, last, count, summary };
  }
}
