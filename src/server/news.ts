import type { Store } from '../store/index.js';

/** Something changed in these jobs; `seq` is the store's head by then. */
export interface Change {
  readonly seq: number;
  readonly jobs: readonly string[];
  /** what the shop's jobs have taught is another thing now */
  readonly learned?: true;
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
        const change = await this.#store.changedSince(told);
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

  /** After the look that is under way: an open page must not be sent back to an earlier `seq`. */
  tellLearned(): void {
    this.#told = this.#told.then((seq) => {
      this.tell({ seq, jobs: [], learned: true });
      return seq;
    });
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
