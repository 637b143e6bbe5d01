import type { Asked, RawEntry } from '../job/index.js';

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

/**
 * What is kept beside the log of one job by whoever folds it, so that a list, a search and the shop's learning need not
 * read the log. A cache, never a truth.
 */
export interface JobNote {
  readonly job: string;
  /** the last line that it was made of */
  readonly made: number;
  /** which program, with which catalog, made it */
  readonly by: string;
  readonly tag: number;
  readonly open: boolean;
  readonly invented: boolean;
  /** the tokens under which the job is found, separated by spaces */
  readonly tokens: string;
  /** where in the job they stand, as whoever makes the note keeps it */
  readonly places: Uint8Array;
  /** JSON */
  readonly summary: string;
  readonly lesson: string;
}

export interface ListedJob extends JobSpan {
  readonly summary: string;
}

export interface FoundJob {
  readonly job: string;
  readonly summary: string;
}

export interface FoundWhere {
  readonly job: string;
  readonly places: Uint8Array;
}

export interface JobsAsked {
  readonly open?: boolean;
  readonly invented?: boolean;
  readonly tag?: number | undefined;
  /** by the first line, or by the last one from the newest on */
  readonly order: 'as opened' | 'newest first';
  /** the `first`, or `last`, of the job that the page before ended with */
  readonly beyond?: number | undefined;
  readonly most: number;
}

export interface JobCounts {
  readonly all: number;
  /** of them, whose note is not made yet or behind; the other counts leave out those that were never made */
  readonly behind: number;
  readonly open: number;
  readonly handedOver: number;
  readonly invented: number;
  /** of the jobs that are not invented */
  readonly greatestTag: number;
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
  /** no other device has it */
  readonly name: string;
  readonly paired: string;
  /** when it last asked for anything, to the minute */
  readonly seen?: string;
}

/** Lower-case hex of the SHA-256 of what a device proves itself by: here, and to send from another address of ours. */
export interface DeviceTokens {
  readonly token: string;
  readonly carry: string;
}

export interface Removed {
  readonly entries: number;
  readonly pictures: number;
}

export interface LastBackup {
  readonly at: string;
  /** its name, without its folder */
  readonly file: string;
}

export interface VerifyReport {
  readonly ok: boolean;
  readonly entries: number;
  readonly jobs: number;
  readonly pictures: number;
  /** of spoken notes, where there are any */
  readonly sounds?: number;
  readonly problems: string[];
  /** jobs whose lines are counted otherwise beside the log than they lie in it: nothing is lost, `reindex` counts anew */
  readonly miscounted?: readonly string[];
  /** false for a log of an earlier version, whose lines carry no digests yet: a changed sign in one is then not seen */
  readonly sealed?: false;
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
  /** Where one job's lines lie; nothing while it has none. */
  span(job: string): Promise<JobSpan | undefined>;
  /** Jobs with an opening that may say this, struck or not: a fold tells which of them it stands in. */
  opened(saying: { readonly tag: number } | { readonly invented: true }): Promise<string[]>;
  /** The jobs that were written to after `seq`, and the head by then. */
  changedSince(seq: number): Promise<{ readonly seq: number; readonly jobs: readonly string[] }>;
  /**
   * Jobs whose note is not made yet or behind their log, the latest written first; with `upTo` only those not written to
   * after that number. The shop's log is none of them.
   */
  behind(most: number, upTo?: number): Promise<JobSpan[]>;
  /** Whether the lesson of any of them is another than before. */
  keepNotes(notes: readonly JobNote[]): Promise<boolean>;
  /** Those that another program or another catalog made are to be made anew. */
  forgetNotes(exceptBy: string): Promise<void>;
  /** From the notes, the shop's own log left out; jobs without a note yet are not among them. */
  listJobs(asked: JobsAsked): Promise<ListedJob[]>;
  /** Jobs that hold all that is asked, open ones first, then those written to last. */
  findJobs(asked: Asked, most: number): Promise<FoundJob[]>;
  /** The places of these jobs, as their notes gave them. */
  foundWhere(jobs: readonly string[]): Promise<FoundWhere[]>;
  jobCounts(): Promise<JobCounts>;
  /** Another text as soon as any note is made anew. */
  notesState(): Promise<string>;
  /** What the notes keep for the shop's learning, in the order of the jobs' ids. */
  lessons(from: {
    readonly after: string;
    readonly most: number;
  }): Promise<readonly { readonly job: string; readonly lesson: string }[]>;
  /** Drops what is kept beside the log and counts it out of the log anew; the notes are then all to be made. */
  reindex(): Promise<void>;
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
   * elsewhere knows none of them. One that `replaces` another is that device, paired anew.
   */
  pairDevice(device: Pick<Device, 'id' | 'name'>, tokens: DeviceTokens, replaces?: string): Promise<Device>;
  /** Whether there is such a device. */
  renewDevice(id: string, tokens: DeviceTokens): Promise<boolean>;
  sawDevice(id: string, at: string): Promise<void>;
  /** In the order in which they were paired. */
  devices(): Promise<Device[]>;
  deviceOf(tokenSha256: string): Promise<Device | undefined>;
  carrierOf(carrySha256: string): Promise<Device | undefined>;
  /** Whether there was such a device. */
  unpairDevice(id: string): Promise<boolean>;
  /**
   * Writes everything into a new SQLite file, whichever database this is, and checks that file. The file is kept
   * also when the report names a problem: it is then one that the log itself has. 'corrupt' only when the file
   * cannot be relied on as a whole.
   */
  backup(toFile: string, options?: { readonly replace?: boolean }): Promise<VerifyReport>;
  /** Rejects with 'gone' when the file or database is not the one any more that was opened; with another when it is away. */
  look(): Promise<void>;
  /** The last backup that was found whole; nothing when there was none. */
  lastBackup(): Promise<LastBackup | undefined>;
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
