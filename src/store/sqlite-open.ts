import { randomInt } from 'node:crypto';
import { statSync } from 'node:fs';
import Database from 'better-sqlite3';
import { StoreError } from './error.js';
import { migrate, refuseNewer, schemaVersion } from './migrate.js';
import { migrations } from './migrations.js';
import { kyselyOn } from './sqlite-driver.js';
import { explainSqlite } from './sqlite-error.js';
import { applicationId, cutShort, inspectFile } from './sqlite-file.js';
import { type PlaceToRead, placeToRead } from './sqlite-place.js';
import type { Db } from './tables.js';
import { pageProblems } from './verify.js';

const waitForOthersMs = 5_000;

export function connect(file: string, options: Database.Options): Database.Database {
  return new Database(file, { ...options, fileMustExist: true, timeout: waitForOthersMs });
}

/** In WAL form better-sqlite3 leaves synchronous at NORMAL, which does not flush a commit to the disk. */
export function secure(raw: Database.Database): void {
  raw.pragma('synchronous = full');
  raw.pragma('fullfsync = on'); // macOS: through the drive's own cache as well
  raw.pragma('checkpoint_fullfsync = on');
  raw.pragma('foreign_keys = on');
}

/** A new file, complete and marked as a log; in WAL form so that no opener ever has to switch it over. */
export async function createFile(
  file: string,
  now: () => string,
  fill?: (db: Db) => Promise<unknown>,
): Promise<void> {
  const raw = new Database(file);
  const db = kyselyOn(raw);
  try {
    raw.pragma(`application_id = ${applicationId}`);
    nameAnew(raw);
    secure(raw);
    await migrate(db, 'sqlite', now);
    await fill?.(db);
    raw.pragma('journal_mode = wal');
  } finally {
    await db.destroy();
  }
}

/** A number of chance in the file's header that tells it from every other, copies of it too; see `Guard`. */
export function nameFile(raw: Database.Database): number {
  const named = Number(raw.pragma('user_version', { simple: true }));
  if (named !== 0) return named;
  nameAnew(raw);
  return Number(raw.pragma('user_version', { simple: true }));
}

function nameAnew(raw: Database.Database): void {
  raw.pragma(`user_version = ${randomInt(1, 2 ** 31)}`);
}

/** A log or a backup that is only read; `done` closes it. */
export interface Reading {
  readonly db: Db;
  readonly done: () => Promise<void>;
}

/** For reading a log or a backup: changes nothing in it and leaves nothing beside it. */
export async function openToRead(file: string): Promise<Reading> {
  let place: PlaceToRead | undefined;
  try {
    if (inspectFile(file, 'read') === 'absent') throw notThere(file);
    place = placeToRead(file);
    const raw = connect(place.file, { readonly: place.readonly });
    const db = kyselyOn(raw);
    const tidy = place.tidy;
    const done = async () => {
      raw.close();
      tidy();
    };
    try {
      raw.pragma('query_only = on');
      raw.exec('begin'); // one unmoving view, should somebody write to it
      await examineOn(raw, db, file);
    } catch (error) {
      await done();
      throw error;
    }
    return { db, done };
  } catch (error) {
    throw explainSqlite(error, file);
  }
}

/** For a file of one's own making; the caller destroys it. */
export function openToWrite(file: string): Db {
  const raw = connect(file, {});
  secure(raw);
  return kyselyOn(raw);
}

/** Everything that can be refused is refused here, on a connection that cannot write. */
export async function examine(file: string): Promise<void> {
  const raw = connect(file, { readonly: true });
  try {
    await examineOn(raw, kyselyOn(raw), file);
  } finally {
    raw.close();
  }
}

async function examineOn(raw: Database.Database, db: Db, file: string): Promise<void> {
  const version = await schemaVersion(db, 'sqlite');
  if (version === 0) throw withoutTables(file);
  refuseNewer(version, migrations.length);
  await refuseLostPages(raw, db, file);
}

/** After a kill the last pages may be in the write-ahead log alone; only a full check can tell that from a loss. */
async function refuseLostPages(raw: Database.Database, db: Db, file: string): Promise<void> {
  const declared =
    Number(raw.pragma('page_count', { simple: true })) * Number(raw.pragma('page_size', { simple: true }));
  const { size } = statSync(file);
  if (size < declared && (await pageProblems(db, 'sqlite')).length > 0) throw cutShort(file, size, declared);
}

/** All rows as of one moment into a new file, by SQLite's online backup. In the frozen view it never starts over. */
export async function copyFile(file: string, to: string): Promise<void> {
  await snapshot(file, (_, raw) => raw.backup(to));
}

/**
 * A connection of its own: a long look at everything must not hold up the one connection that answers. The view is
 * never committed, only left: on a damaged file a commit fails too, and would hide what was found.
 */
export async function snapshot<T>(
  file: string,
  read: (db: Db, raw: Database.Database) => Promise<T>,
): Promise<T> {
  const raw = connect(file, { readonly: true });
  const view = kyselyOn(raw);
  try {
    raw.exec('begin');
    raw.prepare('select 1 from sqlite_master').get(); // the view is fixed by the first read, not by `begin`
    return await read(view, raw);
  } finally {
    raw.close(); // `view.destroy()` would not, had no query gone through it
  }
}

/** Out of WAL form: a backup must be readable from a medium that cannot be written. */
export function toOneFile(file: string): void {
  const raw = connect(file, {});
  try {
    nameAnew(raw);
    raw.pragma('journal_mode = delete');
  } finally {
    raw.close();
  }
}

function withoutTables(file: string): StoreError {
  return new StoreError(
    'corrupt',
    `The log ${file} has lost its tables.`,
    'Nothing in it has been changed.',
    'Keep this file and restore the last backup into a new one.',
  );
}

function notThere(file: string): StoreError {
  return new StoreError(
    'cannot-open',
    `There is no file ${file}.`,
    'Nothing has been changed.',
    'Look at the name again.',
  );
}
