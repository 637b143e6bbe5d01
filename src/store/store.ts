import type { RawEntry } from '../job/index.js';

/** An entry as it lies in the store. */
export interface StoredEntry extends RawEntry {
  /** order of arrival over all jobs; grows, with gaps where a job was removed */
  readonly seq: number;
  readonly received: string;
}

export interface Appended {
  /** ids, in the order given */
  readonly stored: string[];
  readonly already: string[];
}

export interface JobSpan {
  readonly job: string;
  readonly first: number;
  readonly last: number;
  readonly count: number;
}

export interface PictureFacts {
  /** lower-case hex of the bytes' SHA-256; the picture's name */
  readonly sha256: string;
  readonly mime: string;
  readonly width: number;
  readonly height: number;
}

export interface Picture {
  readonly mime: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
}

/** A phone or tablet of the shop that was let in. */
export interface Device {
  readonly id: string;
  readonly name: string;
  readonly paired: string;
}

export interface Removed {
  readonly entries: number;
  readonly pictures: number;
}

export interface VerifyReport {
  readonly ok: boolean;
  readonly entries: number;
  readonly jobs: number;
  readonly pictures: number;
  readonly problems: string[];
}

/** The log and its pictures. Every method but `watch` rejects with a StoreError when the database cannot answer. */
export interface Store {
  /**
   * All or none, in the order given; resolves only when the entries are on the disk. Sending an entry again
   * changes nothing. Throws 'bad-entry', 'conflict' (id known with other content) and 'no-such-job' (neither
   * the log nor this batch opens the job).
   */
  append(entries: readonly RawEntry[]): Promise<Appended>;
  /** The job's entries in order of arrival; `after` gives those with a greater seq only. */
  entries(job: string, from?: { readonly after?: number }): Promise<StoredEntry[]>;
  /** What came after `seq`, over all jobs, in order of arrival. */
  since(seq: number): Promise<StoredEntry[]>;
  /** In order of their first entry; the shop's own log is among them once it has an entry. */
  jobs(): Promise<JobSpan[]>;
  /** The greatest seq, 0 for an empty log. */
  head(): Promise<number>;
  /** Idempotent; the bytes must hash to `sha256` ('bad-picture'), and other facts for it are a 'conflict'. */
  putPicture(facts: PictureFacts, bytes: Uint8Array): Promise<{ readonly stored: boolean }>;
  /** Bytes that hash to the name, `undefined` when there is no such picture, 'corrupt' when they do not. */
  picture(sha256: string): Promise<Picture | undefined>;
  hasPicture(sha256: string): Promise<boolean>;
  /** Takes a demonstration job out again, with the pictures that no other job refers to. Not announced to `watch`. */
  removeInvented(job: string): Promise<Removed>;
  /**
   * Lets a device in by its token, of which only the hash is kept. Devices are no part of the log: a backup restored
   * elsewhere knows none of them.
   */
  pairDevice(device: Pick<Device, 'id' | 'name'>, tokenSha256: string): Promise<void>;
  /** In the order in which they were paired. */
  devices(): Promise<Device[]>;
  deviceOf(tokenSha256: string): Promise<Device | undefined>;
  /** Whether there was such a device. */
  unpairDevice(id: string): Promise<boolean>;
  /**
   * Writes everything into a new SQLite file, whichever database this is, and checks that file. The file is kept
   * also when the report names a problem: it is then one that the log itself has. 'corrupt' only when the file
   * cannot be relied on as a whole.
   */
  backup(toFile: string): Promise<VerifyReport>;
  /** Fills an empty store from a backup ('not-empty' otherwise), and reports on what stands here afterwards. */
  restore(fromFile: string): Promise<VerifyReport>;
  verify(): Promise<VerifyReport>;
  /**
   * Calls back with the head after each change that anyone made: this process, another process on the same file
   * (within a second), another server on the same PostgreSQL. Ask `since` for what came. Returns the way to stop.
   */
  watch(changed: (head: number) => void): () => void;
  /** Waits for what is under way. */
  close(): Promise<void>;
}
