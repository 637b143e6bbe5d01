import type { Db, Dialect } from './tables.js';

/** What the two databases do differently. Everything else is written once over it. */
export interface Backend {
  readonly dialect: Dialect;
  /** for messages: the file, or host and database; never with a password */
  readonly name: string;
  readonly db: Db;
  readonly now: () => string;
  /**
   * One transaction, one writer at a time, durable when it resolves. Writers must not overlap: seq numbers have
   * to become visible in order, or a reader of `since` would pass over one that commits late.
   */
  write<T>(work: (writing: Writing) => Promise<T>): Promise<T>;
  /** A view of all rows at one moment, held while `read` runs, that keeps no writer waiting. */
  snapshot<T>(read: (db: Db) => Promise<T>): Promise<T>;
  /** Copies all rows, as of one moment, into the file `part`, which does not exist yet. */
  copyTo(part: string): Promise<void>;
  /** @throws what `explain` understands, when it is not the log any more that was opened, or does not answer */
  look(): Promise<void>;
  watch(changed: (head: number) => void): () => void;
  /** A database's own error as a StoreError; anything else as it is. */
  explain(error: unknown): unknown;
  close(): Promise<void>;
}

export interface Writing {
  readonly tx: Db;
  /** So many numbers for new entries, in order, none of them ever used before. */
  numbers(count: number): Promise<number[]>;
  /** Watchers hear of `head` once the transaction has committed, and not if it does not. */
  announce(head: number): Promise<void>;
}
