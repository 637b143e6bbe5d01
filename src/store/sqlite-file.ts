import { randomUUID } from 'node:crypto';
import {
  closeSync,
  constants,
  copyFileSync,
  existsSync,
  fsyncSync,
  linkSync,
  openSync,
  readdirSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  unlinkSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { StoreError, type StoreErrorCode } from './error.js';
import { codeOf, notReached } from './sqlite-error.js';

/** "Wpin": marks the file as a Wristpin log, at byte 68 of SQLite's header. */
export const applicationId = 0x5770696e;

/**
 * Looks at a file before SQLite does, and touches nothing: SQLite would take an empty file for a new database and
 * begin a new log in it. Gives `absent` when a new log may be begun there. The header's layout: SQLite, "Database
 * File Format", section 1.3.
 */
export function inspectFile(file: string, use: 'read' | 'write'): 'absent' | 'log' {
  const size = sizeOf(file);
  if (size === undefined) {
    refuseStrayJournal(file);
    return 'absent';
  }
  if (size === 0) throw refuse('not-a-log', `${file} is empty, and no log ever is.`, ifItWasALog);
  const header = readHeader(file, use);
  refuseForeign(file, header, size);
  refuseCutShort(file, declaredSize(header));
  return 'log';
}

/**
 * Pages may still be in the journal when the program was killed; SQLite finds out then. The order of the looks (header,
 * journal, size) matters: another process may just be moving pages from the journal into the file.
 */
function refuseCutShort(file: string, declared: number): void {
  if ((sizeOf(`${file}-wal`) ?? 0) > 0) return;
  const size = sizeOf(file) ?? 0;
  if (size < declared) throw cutShort(file, size, declared);
}

export function cutShort(file: string, size: number, declared: number): StoreError {
  return refuse(
    'cut-short',
    `The log ${file} is cut short: ${size} of its ${declared} bytes are there.`,
    ifItWasALog,
  );
}

/** On the disk, not only in the system's memory. Windows flushes through a handle that may write only. */
function flush(file: string, flags: 'r' | 'r+' = 'r+'): void {
  const handle = openSync(file, flags);
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** A name beside the file, for what is not finished yet; what processes left there that were killed goes. */
export function partName(file: string): string {
  removeStrays(file);
  return `${file}.${process.pid}.${randomUUID().slice(0, 8)}.part`;
}

/** What killed processes left unfinished beside a file. */
export function removeStrays(file: string): void {
  const start = `${basename(file)}.`;
  for (const name of folderIsThere(file) ? readdirSync(dirname(file)) : []) {
    const [, pid] = name.startsWith(start)
      ? (/^(\d+)\.[0-9a-f]{8}\.part/.exec(name.slice(start.length)) ?? [])
      : [];
    if (pid !== undefined && !isRunning(Number(pid))) rmSync(join(dirname(file), name), { force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0); // sends nothing
    return true;
  } catch (error) {
    return codeOf(error) !== 'ESRCH';
  }
}

export function removeFile(file: string): void {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(file + end, { force: true });
}

/** Gives a finished file its name at once and for good; gives false when the name is taken already. */
export function putInPlace(part: string, file: string): boolean {
  flush(part);
  const placed = linkOrCopy(part, file);
  unlinkSync(part);
  if (placed && process.platform !== 'win32') flush(dirname(file), 'r'); // Windows opens no folder
  return placed;
}

/** Gives a finished file the name of an older one, which is there until then: a kill leaves the one or the other. */
export function putInPlaceOf(part: string, file: string): void {
  flush(part);
  renameSync(part, file);
  if (process.platform !== 'win32') flush(dirname(file), 'r');
}

/** A link never replaces a file. Some file systems (FAT) have none; there a copy is made that never does either. */
function linkOrCopy(part: string, file: string): boolean {
  if (attempt(() => linkSync(part, file)) === 'done') return true;
  if (existsSync(file) || attempt(() => copyFileSync(part, file, constants.COPYFILE_EXCL)) === 'taken')
    return false;
  flush(file);
  return true;
}

function attempt(place: () => void): 'done' | 'taken' | 'no-links' {
  try {
    place();
    return 'done';
  } catch (error) {
    const code = codeOf(error);
    if (code === 'EEXIST') return 'taken';
    if (code === 'EPERM' || code === 'ENOTSUP' || code === 'EOPNOTSUPP' || code === 'ENOSYS')
      return 'no-links';
    throw error;
  }
}

function sizeOf(file: string): number | undefined {
  try {
    const found = statSync(file);
    if (found.isFile()) return found.size;
  } catch (error) {
    if (codeOf(error) === 'ENOENT' && folderIsThere(file)) return undefined;
    throw notReached(file, error);
  }
  throw refuse(
    'not-a-log',
    `${file} is not a file, and a log is one.`,
    'Name the file of the log, not its folder.',
  );
}

function folderIsThere(file: string): boolean {
  try {
    return statSync(dirname(file)).isDirectory();
  } catch {
    return false;
  }
}

/** SQLite would replay a journal left by a lost log into the new one. */
function refuseStrayJournal(file: string): void {
  if ((sizeOf(`${file}-wal`) ?? 0) === 0) return;
  throw refuse(
    'cannot-open',
    `The log ${file} is gone, and the last entries written to it are still beside it in ${file}-wal.`,
    'Put the log back next to that file, or name another file for a new log.',
  );
}

function readHeader(file: string, use: 'read' | 'write'): Buffer {
  try {
    // 'r+' asks for the right to write, and changes nothing
    const handle = openSync(file, use === 'write' ? 'r+' : 'r');
    try {
      const header = Buffer.alloc(100);
      return header.subarray(0, readSync(handle, header, 0, 100, 0));
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    throw notReached(file, error);
  }
}

/** Whether the log is kept in write-ahead form, as one that is written to is; a backup is not. */
export function isWalForm(file: string): boolean {
  return readHeader(file, 'read')[18] === 2;
}

function refuseForeign(file: string, header: Buffer, size: number): void {
  const magic = 'SQLite format 3\0';
  const start = header.toString('latin1', 0, Math.min(magic.length, header.length));
  if (start !== magic) throw refuse('not-a-log', `${file} is not a Wristpin log.`, ifItWasALog);
  if (header.length < 100) throw cutShort(file, size, 100);
  if (header.readUInt32BE(68) === applicationId) return;
  throw refuse(
    'not-a-log',
    `${file} is a database of another program.`,
    'Name the file of the log, or a new one.',
  );
}

/** 0 when the header does not say: the count is valid only while the two change counters agree. */
function declaredSize(header: Buffer): number {
  const written = header.readUInt16BE(16);
  const pageBytes = written === 1 ? 65_536 : written;
  return header.readUInt32BE(24) === header.readUInt32BE(92) ? pageBytes * header.readUInt32BE(28) : 0;
}

const ifItWasALog =
  'If it once was the log, keep it and restore the last backup into a new file; else name another file.';

function refuse(code: StoreErrorCode, happened: string, todo: string): StoreError {
  return new StoreError(code, happened, 'Nothing has been changed.', todo);
}
