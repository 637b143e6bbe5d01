import { type Store, StoreError } from '../store/index.js';

/** Whether the store keeps what is written, as every page shows it. */
export type Keeping =
  | { readonly ok: true }
  | { readonly ok: false; readonly code: string; readonly message: string };

const lookEveryMs = 500;

/**
 * Looks twice a second whether the store is still there and is the one that was opened, and tells who listens when that
 * changes: a page shall say it before anybody writes a line into nothing.
 */
export class KeepingWatch {
  readonly #store: Store;
  readonly #log: (line: string) => void;
  readonly #listeners = new Set<(keeping: Keeping) => void>();
  readonly #timer: NodeJS.Timeout;
  #now: Keeping = { ok: true };
  #looking = false;

  constructor(store: Store, log: (line: string) => void) {
    this.#store = store;
    this.#log = log;
    this.#timer = setInterval(() => void this.look(), lookEveryMs).unref();
  }

  get now(): Keeping {
    return this.#now;
  }

  /** One look at a time: a database that is away may take its while to say so. */
  async look(): Promise<Keeping> {
    if (this.#looking) return this.#now;
    this.#looking = true;
    try {
      this.#set(await this.#store.look().then(() => ({ ok: true }) as const, inWords));
    } finally {
      this.#looking = false;
    }
    return this.#now;
  }

  listen(listener: (keeping: Keeping) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  end(): void {
    clearInterval(this.#timer);
    this.#listeners.clear();
  }

  #set(next: Keeping): void {
    const before = this.#now;
    this.#now = next;
    if (before.ok === next.ok && (before.ok || next.ok || before.code === next.code)) return;
    this.#log(next.ok ? 'The store is there again.' : next.message);
    for (const listener of this.#listeners) listener(next);
  }
}

function inWords(error: unknown): Keeping {
  if (error instanceof StoreError) return { ok: false, code: error.code, message: error.message };
  return { ok: false, code: 'failed', message: `The store does not answer (${String(error)}).` };
}
