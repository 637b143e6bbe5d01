import Database from 'better-sqlite3';
import { StoreError, type StoreErrorCode } from './error.js';

type Words = readonly [code: StoreErrorCode, happened: string, safe: string, todo: string];

const untouched = 'What was saved before is as it was; what was being saved just now is not.';
const keepIt =
  'Keep this file and those named like it with -wal and -shm, and restore the last backup into a new file.';

/** By the first part of SQLite's result code that is in the table: SQLITE_IOERR_FSYNC is a SQLITE_IOERR. */
const words: Record<string, Words> = {
  SQLITE_BUSY: [
    'busy',
    'is in use by another program that has not let go of it',
    untouched,
    'Wait until the other program is done, and try again.',
  ],
  SQLITE_LOCKED: ['busy', 'is in use by another part of this program', untouched, 'Try again.'],
  SQLITE_FULL: [
    'disk-full',
    'has no room left on its disk',
    untouched,
    'Make room on the disk, and try again.',
  ],
  SQLITE_READONLY: [
    'no-permission',
    'may be read and not written',
    untouched,
    'Give this user the right to write the file and its folder.',
  ],
  SQLITE_PERM: [
    'no-permission',
    'may not be opened',
    untouched,
    'Give this user the right to read and write the file and its folder.',
  ],
  SQLITE_CANTOPEN: [
    'cannot-open',
    'or the files that go with it cannot be opened',
    untouched,
    'See that this user may write in its folder, and that the disk is there.',
  ],
  SQLITE_CORRUPT: ['corrupt', 'is damaged', 'Nothing in it has been changed or repaired.', keepIt],
  SQLITE_NOTADB: [
    'corrupt',
    'is damaged at its beginning',
    'Nothing in it has been changed or repaired.',
    keepIt,
  ],
  SQLITE_IOERR: [
    'disk-failed',
    'could not be read or written: the disk reports a fault',
    untouched,
    'Look after the disk, then run the verification and try again.',
  ],
};

/** SQLite's and the file system's own errors as a StoreError; anything else as it is. */
export function explainSqlite(error: unknown, file: string): unknown {
  if (error instanceof Database.SqliteError) return explainResult(error, file);
  return isFileError(error) ? notReached(file, error) : error;
}

/** When the system refuses a file: no right, no folder, no room. */
export function notReached(file: string, error: unknown): StoreError {
  const code = codeOf(error);
  const [kind, happened, todo] = fileWords[code] ?? elsewhere;
  return new StoreError(
    kind,
    `${file} ${happened} (${code}).`,
    'Nothing that was there has been changed.',
    todo,
    error,
  );
}

export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : String(error);
}

type FileWords = readonly [code: StoreErrorCode, happened: string, todo: string];

const noRight: FileWords = [
  'no-permission',
  'may not be opened by this user',
  'Give this user the right to read and write the file and its folder.',
];
const noRoom: FileWords = [
  'disk-full',
  'has no room left on its disk',
  'Make room on the disk, and try again.',
];
const elsewhere: FileWords = [
  'cannot-open',
  'cannot be reached',
  'Look whether the folder and its disk are there, and whether the name is right.',
];
const fileWords: Record<string, FileWords> = {
  EACCES: noRight,
  EPERM: noRight,
  EROFS: noRight,
  ENOSPC: noRoom,
  EDQUOT: noRoom,
  EFBIG: noRoom,
};

function isFileError(error: unknown): boolean {
  return error instanceof Error && 'syscall' in error && 'path' in error;
}

function explainResult(error: InstanceType<typeof Database.SqliteError>, file: string): unknown {
  const known = Object.keys(words).find((code) => error.code === code || error.code.startsWith(`${code}_`));
  if (known === undefined) return error;
  const [code, happened, safe, todo] = words[known]!;
  return new StoreError(code, `The log ${file} ${happened} (${error.message}).`, safe, todo, error);
}
