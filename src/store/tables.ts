import type { Generated, Kysely } from 'kysely';

export type Dialect = 'sqlite' | 'postgres';

/** The one schema of both databases. Time is ISO text; a number column holds whole numbers only. */
export interface Tables {
  schema_version: { version: number; name: string; applied: string };
  entries: EntryRow;
  pictures: PictureRow;
  picture_chunks: ChunkRow;
  devices: DeviceRow;
  job_notes: NoteRow;
  job_finds: FindRow;
  removed_lines: RemovedRow;
  store_state: StateRow;
}

export interface EntryRow {
  /** the order in which this store took the entries in; never used twice, also after a removal */
  seq: Generated<number>;
  id: string;
  job: string;
  at: string;
  /** where the line stands in its log, when that is not where `at` says */
  rank: number | null;
  /** 1 where the line was said aloud */
  spoken: number | null;
  by: string;
  kind: string;
  v: number;
  /** JSON */
  body: string;
  received: string;
  /** over this line and the one before it, see digest.ts */
  digest: Generated<string>;
}

export interface PictureRow {
  sha256: string;
  mime: string;
  bytes: number;
  width: number;
  height: number;
  received: string;
  digest: Generated<string>;
}

export interface ChunkRow {
  sha256: string;
  /** 0, 1, 2 … without a gap */
  n: number;
  data: Uint8Array;
}

/** A cache beside the log, see job-notes.ts. */
export interface NoteRow {
  job: string;
  first: number;
  last: number;
  count: number;
  /** the job's last line when the rest of the row was made, 0 while it was not */
  made: Generated<number>;
  by: Generated<string>;
  tag: Generated<number>;
  open: Generated<number>;
  invented: Generated<number>;
  /** empty: what is found by words stands in `job_finds` */
  words: Generated<string>;
  summary: Generated<string>;
  lesson: Generated<string>;
  /** empty while the rest was not made */
  digest: Generated<string>;
}

/** A cache beside the log, see finding.ts. */
export interface FindRow {
  n: Generated<number>;
  job: string;
  /** what the program that made it wrote */
  places: Uint8Array;
}

/** Where a line of an invented job was that was taken out again: the line after it follows its digest. */
export interface RemovedRow {
  seq: number;
  digest: string;
}

/** One row: which store this is, and where its chain of digests ends. */
export interface StateRow {
  /** a name of chance that no other store has, a copy of this one neither */
  store: string;
  head: string;
  /** of the last backup that was checked and found whole; empty when there was none */
  backup_at: string;
  backup_file: string;
}

/** A phone or tablet that was let in; it proves itself by a token that is nowhere kept but on it. */
export interface DeviceRow {
  id: string;
  name: string;
  /** lower-case hex of the token's SHA-256 */
  token_sha256: string;
  /** the same of the token by which it may send, from a page at another address of ours, what it wrote; '' for none */
  carry_sha256: Generated<string>;
  paired: string;
  /** when it last asked for anything, to the minute; '' while it has not */
  seen: Generated<string>;
}

export type Db = Kysely<Tables>;
