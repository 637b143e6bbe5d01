import type { Store } from '../store/index.js';

/** Something changed in these jobs; `seq` is the store's head by then. */
export interface Change {
  readonly seq: number;
  readonly jobs: readonly string[];
}

type Listener = (change: Change) => void;

/**
 * Tells every open page which jobs changed, whoever wrote: one watch on the store and one question to it for all
 * pages together.
 */
export class News {
  readonly #store: Store;
  readonly #log: (line: string) => void;
  readonly #listeners = new Set<Listener>();
  readonly #stopWatch: () => void;
  #told: Promise<number>;
  #ended = false;
  readonly #ends = new Set<() => void>();

  /** From `head` on; the caller has read it, and so knows that the store answers. */
  constructor(store: Store, head: number, log: (line: string) => void) {
    this.#store = store;
    this.#log = log;
    this.#told = Promise.resolve(head);
    this.#stopWatch = store.watch(() => this.#look());
  }

  /** One look after the other, so that no change is told twice or out of order. A look that fails tells nothing. */
  #look(): void {
    this.#told = this.#told.then(async (told) => {
      try {
        const change = await changesSince(this.#store, told);
        if (change.jobs.length > 0) this.tell(change);
        return change.seq;
      } catch (error) {
        if (!this.#ended) this.#log(`open pages could not be told of a change: ${String(error)}`);
        return told;
      }
    });
  }

  tell(change: Change): void {
    for (const listener of this.#listeners) listener(change);
  }

  listen(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Calls back once when the server stops, at once when it has; gives the way to take that back. */
  onEnd(end: () => void): () => void {
    if (this.#ended) end();
    else this.#ends.add(end);
    return () => this.#ends.delete(end);
  }

  end(): void {
    this.#ended = true;
    this.#stopWatch();
    for (const end of this.#ends) end();
    this.#ends.clear();
  }
}

export async function changesSince(store: Store, seq: number): Promise<Change> {
  const fresh = await store.since(seq);
  return { seq: fresh.at(-1)?.seq ?? seq, jobs: [...new Set(fresh.map((entry) => entry.job))] };
}
