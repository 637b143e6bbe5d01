import { setImmediate as breath } from 'node:timers/promises';
import { type JobsTaught, shopMinutes } from '../job/index.js';
import type { Store } from '../store/index.js';
import type { JobNotes } from './job-notes.js';
import { finishedOf, type Lesson } from './lessons.js';
import { shopNow } from './shop-now.js';

const lessonsAPage = 500;

/** What the shop's jobs tell, put together from what each taught. */
export class PastJobs {
  readonly #store: Store;
  readonly #notes: JobNotes;
  #read: { readonly state: string; readonly lessons: ReadonlyMap<string, Lesson> } | undefined;

  constructor(store: Store, notes: JobNotes) {
    this.#store = store;
    this.#notes = notes;
  }

  async tell(): Promise<JobsTaught> {
    await this.#notes.bringUp();
    const { catalog } = await shopNow(this.#store);
    const lessons = await this.#lessons();
    return {
      finished: [...lessons].flatMap(([job, lesson]) => finishedOf(job, lesson, catalog)),
      minutes: shopMinutes([...lessons.values()].flatMap(({ times }) => times)),
    };
  }

  async #lessons(): Promise<ReadonlyMap<string, Lesson>> {
    const state = await this.#store.notesState();
    if (this.#read?.state === state) return this.#read.lessons;
    const lessons = new Map<string, Lesson>();
    for (let after: string | undefined = ''; after !== undefined; ) {
      const page = await this.#store.lessons({ after, most: lessonsAPage });
      for (const { job, lesson } of page) if (lesson !== '') lessons.set(job, JSON.parse(lesson));
      after = page.length < lessonsAPage ? undefined : page.at(-1)!.job;
      await breath();
    }
    this.#read = { state, lessons };
    return lessons;
  }
}
