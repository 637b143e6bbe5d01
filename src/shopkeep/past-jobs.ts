import { setImmediate as breath } from 'node:timers/promises';
import type { Catalog } from '../catalog/index.js';
import { addCounts } from '../diagnose/index.js';
import {
  countFinished,
  type FinishedCounts,
  type FinishedHere,
  type JobsTaught,
  type Shop,
  type StepTime,
  shopMinutes,
} from '../job/index.js';
import type { Store } from '../store/index.js';
import type { JobNotes } from './job-notes.js';
import { finishedOf, type Lesson } from './lessons.js';
import { shopNow } from './shop-now.js';

/** A finished job as the shop's own list of them shows it. */
export interface FinishedLine extends Omit<FinishedHere, 'faults'> {
  readonly counted: boolean;
}

/** What all of them taught together, whether the shop counts them or not. */
interface Taught extends FinishedCounts {
  readonly state: string;
  readonly finished: ReadonlyMap<string, Lesson>;
  readonly minutes: JobsTaught['minutes'];
}

const lessonsAPage = 100;

/** What the shop's jobs tell, put together from what each taught; put together again only after one taught more. */
export class PastJobs {
  readonly #store: Store;
  readonly #notes: JobNotes;
  #taught: Promise<Taught> | undefined;

  constructor(store: Store, notes: JobNotes) {
    this.#store = store;
    this.#notes = notes;
  }

  /** Of all jobs that the shop counts but `without`: the one that is asked about does not speak for itself. */
  async tell(without?: string): Promise<JobsTaught> {
    const { shop, catalog } = await shopNow(this.#store);
    const { finished, counts, jobs, minutes } = await this.#read(catalog);
    const left = [...leftOut(shop), ...(without === undefined ? [] : [without])];
    const gone = [...new Set(left)].flatMap((job) => finishedOf(job, finished.get(job), catalog));
    return { ...less({ counts, jobs }, countFinished(gone, catalog)), minutes };
  }

  /** The finished jobs, handed over last first, the first `most` of them and all that the shop left out. */
  async lines(
    most: number,
  ): Promise<{ readonly jobs: FinishedLine[]; readonly all: number; readonly leftOut: number }> {
    const { shop, catalog } = await shopNow(this.#store);
    const { finished } = await this.#read(catalog);
    const out = leftOut(shop);
    const jobs = [...finished].map(([job, lesson]) => ({ job, at: lesson.finished!.at }));
    jobs.sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
    const shown = jobs.filter(({ job }, i) => i < most || out.has(job));
    return {
      jobs: shown.map(({ job }) => {
        const { faults: _, ...line } = finished.get(job)!.finished!;
        return { ...line, job, counted: !out.has(job) };
      }),
      all: jobs.length,
      leftOut: jobs.filter(({ job }) => out.has(job)).length,
    };
  }

  /** Whether it is among those that can count. */
  async isFinished(job: string): Promise<boolean> {
    const { catalog } = await shopNow(this.#store);
    return (await this.#read(catalog)).finished.has(job);
  }

  async #read(catalog: Catalog): Promise<Taught> {
    await this.#notes.catchUp();
    const state = await this.#store.notesState();
    const last = await this.#taught?.catch(() => undefined);
    if (last?.state !== state) this.#taught = this.#putTogether(state, catalog);
    return this.#taught!;
  }

  /** By pages, with a breath after each: a server has others to serve. */
  async #putTogether(state: string, catalog: Catalog): Promise<Taught> {
    const finished = new Map<string, Lesson>();
    const times: StepTime[] = [];
    let all: FinishedCounts = { counts: [], jobs: {} };
    for (let after: string | undefined = ''; after !== undefined; ) {
      const page = await this.#store.lessons({ after, most: lessonsAPage });
      const here: FinishedHere[] = [];
      for (const { job, lesson: text } of page) {
        if (text === '') continue;
        const lesson: Lesson = JSON.parse(text);
        times.push(...lesson.times);
        if (lesson.finished) finished.set(job, lesson);
        here.push(...finishedOf(job, lesson, catalog));
      }
      all = more(all, countFinished(here, catalog));
      after = page.length < lessonsAPage ? undefined : page.at(-1)!.job;
      await breath();
    }
    return { state, finished, ...all, minutes: shopMinutes(times) };
  }
}

const leftOut = ({ learning }: Pick<Shop, 'learning'>): ReadonlySet<string> =>
  new Set([...learning].filter(([, said]) => !said.counted).map(([job]) => job));

const more = (a: FinishedCounts, b: FinishedCounts): FinishedCounts => ({
  counts: addCounts(a.counts, b.counts),
  jobs: added(a.jobs, b.jobs, 1),
});

/** A fault of which nothing is left is as if it had never been counted. */
function less(all: FinishedCounts, gone: FinishedCounts): FinishedCounts {
  const minus = gone.counts.map((c) => ({
    ...c,
    found: -c.found,
    present: -c.present,
    absent: -c.absent,
  }));
  const counts = addCounts(all.counts, minus).filter((c) => c.present + c.absent > 0);
  return { counts, jobs: added(all.jobs, gone.jobs, -1) };
}

function added(a: FinishedCounts['jobs'], b: FinishedCounts['jobs'], times: 1 | -1): FinishedCounts['jobs'] {
  const sums = new Map(Object.entries(a));
  for (const [kind, n] of Object.entries(b)) sums.set(kind, (sums.get(kind) ?? 0) + times * n);
  return Object.fromEntries([...sums].filter(([, n]) => n > 0));
}
