import { createHash } from 'node:crypto';
import { setImmediate as breath } from 'node:timers/promises';
import { builtInState } from '../catalog/index.js';
import type { JobSummary, Shop } from '../job/index.js';
import type { JobCounts, JobNote, JobSpan, JobsAsked, Store } from '../store/index.js';
import { packaged } from './package.js';
import { shopFolded } from './shop-folded.js';

export interface ListedJob extends Omit<JobSpan, 'job'> {
  readonly id: string;
  readonly summary: JobSummary;
}

/** Few enough that whoever asks for a list hardly waits, and more than are written to between two looks. */
const jobsATurn = 20;
const afterMs = 300;
/** While many write, a tenth of the time goes into reading after them. */
const restTimes = 10;

/**
 * Keeps the notes beside the log up with it: each job is folded once after it was written to, and never for a list. It
 * takes a breath after each job, for a server has others to serve.
 */
export class JobNotes {
  readonly #store: Store;
  readonly #learned = new Set<() => void>();
  #turn: Promise<unknown> = Promise.resolve();

  constructor(store: Store) {
    this.#store = store;
  }

  /** The jobs asked for, as their logs stand; only while many have never been read, those that were. */
  async list(asked: JobsAsked): Promise<ListedJob[]> {
    await this.catchUp();
    const rows = await this.#store.listJobs(asked);
    return rows.map(({ job, summary, ...span }) => ({ id: job, ...span, summary: JSON.parse(summary) }));
  }

  async counts(): Promise<JobCounts> {
    await this.catchUp();
    return this.#store.jobCounts();
  }

  /**
   * Brings all of them up; `tell` hears how many are still to do. What is written meanwhile is left to the next time: where
   * many write at once this would never end.
   */
  async bringUp(tell: (behind: number, all: number) => void = () => {}): Promise<void> {
    const upTo = await this.#store.head();
    for (let done = jobsATurn; done >= jobsATurn; ) {
      const { behind, all } = await this.#store.jobCounts();
      if (behind > 0) tell(behind, all);
      done = await this.catchUp(upTo);
    }
  }

  /** Goes on bringing them up after each change, a little later, so that lines that come together are read together. */
  follow(log: (line: string) => void): () => void {
    let timer: NodeJS.Timeout | undefined;
    let stopped = false;
    let waitMs = afterMs;
    let missed = false;
    const bringUp = () => {
      const begun = performance.now();
      void this.bringUp()
        .catch((error) => !stopped && log(`what is kept beside the log is behind: ${String(error)}`))
        .finally(() => {
          timer = undefined;
          waitMs = Math.max(afterMs, restTimes * (performance.now() - begun));
          if (missed && !stopped) later();
          missed = false;
        });
    };
    const later = () => {
      missed = timer !== undefined;
      timer ??= setTimeout(bringUp, waitMs);
    };
    const leave = this.#store.watch(later);
    later();
    return () => {
      stopped = true;
      clearTimeout(timer);
      leave();
    };
  }

  /** Calls back when a job teaches another thing than before. */
  onLearned(tell: () => void): void {
    this.#learned.add(tell);
  }

  /**
   * Brings up those written to last, or last by `upTo`. One turn after the other, so that no job is folded twice; gives how
   * many.
   */
  catchUp(upTo?: number): Promise<number> {
    const turn = this.#turn.then(() => this.#makeSome(upTo));
    this.#turn = turn.catch(() => {});
    return turn;
  }

  async #makeSome(upTo: number | undefined): Promise<number> {
    const by = await makerNow(this.#store);
    await this.#store.forgetNotes(by);
    const behind = await this.#store.behind(jobsATurn, upTo);
    if (behind.length === 0) return 0;
    const { noteFor } = await import('./note-for.js'); // half of a command's start, and most find all made
    const notes: JobNote[] = [];
    for (const { job } of behind) {
      const note = await noteFor(this.#store, job, by);
      if (note) notes.push(note);
      await breath();
    }
    if (notes.length > 0 && (await this.#store.keepNotes(notes))) for (const tell of this.#learned) tell();
    return notes.length;
  }
}

let maker: { readonly packs: Shop['packs']; readonly by: string } | undefined;

/** Stands for all but the log that goes into a note: the program and the catalog it computes with. */
async function makerNow(store: Store): Promise<string> {
  const { packs } = await shopFolded(store);
  if (maker?.packs !== packs) {
    const of = JSON.stringify([packaged().version, builtInState, packs.map(({ text }) => text)]);
    maker = { packs, by: createHash('sha256').update(of).digest('hex') };
  }
  return maker.by;
}
