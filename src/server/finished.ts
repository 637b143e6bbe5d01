import type { Catalog } from '../catalog/index.js';
import { type FinishedHere, finishedJobs, fold, shopLog } from '../job/index.js';
import type { JobSpan, Store } from '../store/index.js';

interface Known extends JobSpan {
  readonly catalog: Catalog;
  readonly finished: FinishedHere | undefined;
}

/** What each finished job tells of faults, each folded again only when its last entry is another: a cache, never a truth. */
export class FinishedJobs {
  readonly #store: Store;
  #known = new Map<string, Known>();

  constructor(store: Store) {
    this.#store = store;
  }

  async list(catalog: Catalog): Promise<FinishedHere[]> {
    const spans = (await this.#store.jobs()).filter(({ job }) => job !== shopLog);
    const known: Known[] = [];
    for (const span of spans) known.push(this.#kept(span, catalog) ?? (await this.#read(span, catalog)));
    this.#known = new Map(known.map((each) => [each.job, each]));
    return known.flatMap((each) => each.finished ?? []);
  }

  #kept(span: JobSpan, catalog: Catalog): Known | undefined {
    const known = this.#known.get(span.job);
    const same = known?.last === span.last && known.count === span.count && known.catalog === catalog;
    return same ? known : undefined;
  }

  async #read(span: JobSpan, catalog: Catalog): Promise<Known> {
    const job = fold(span.job, await this.#store.entries(span.job));
    return { ...span, catalog, finished: finishedJobs([job], catalog)[0] };
  }
}
