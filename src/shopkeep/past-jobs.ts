import type { Catalog } from '../catalog/index.js';
import {
  type FinishedHere,
  finishedJobs,
  fold,
  type StepTime,
  shopLog,
  shopMinutes,
  stepTimes,
} from '../job/index.js';
import type { JobSpan, Store } from '../store/index.js';

interface Known extends JobSpan {
  readonly catalog: Catalog;
  readonly finished: FinishedHere | undefined;
  readonly times: readonly StepTime[];
}

/** What the shop's jobs so far tell beside the catalog. */
export interface Past {
  /** of faults, by the jobs that are finished */
  readonly finished: FinishedHere[];
  /** of minutes, by component or assembly */
  readonly minutes: ReturnType<typeof shopMinutes>;
}

/** What the shop's jobs tell, each folded again only when its last entry is another: a cache, never a truth. */
export class PastJobs {
  readonly #store: Store;
  #known = new Map<string, Known>();

  constructor(store: Store) {
    this.#store = store;
  }

  async tell(catalog: Catalog): Promise<Past> {
    const spans = (await this.#store.jobs()).filter(({ job }) => job !== shopLog);
    const known: Known[] = [];
    for (const span of spans) known.push(this.#kept(span, catalog) ?? (await this.#read(span, catalog)));
    this.#known = new Map(known.map((each) => [each.job, each]));
    return {
      finished: known.flatMap((each) => each.finished ?? []),
      minutes: shopMinutes(known.flatMap((each) => each.times)),
    };
  }

  #kept(span: JobSpan, catalog: Catalog): Known | undefined {
    const known = this.#known.get(span.job);
    const same = known?.last === span.last && known.count === span.count && known.catalog === catalog;
    return same ? known : undefined;
  }

  async #read(span: JobSpan, catalog: Catalog): Promise<Known> {
    const job = fold(span.job, await this.#store.entries(span.job));
    return { ...span, catalog, finished: finishedJobs([job], catalog)[0], times: stepTimes(job, catalog) };
  }
}
