import { accessSync, constants, copyFileSync, existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { isWalForm } from './sqlite-file.js';

/** Where a log is read so that it and its folder stay as they are. */
export interface PlaceToRead {
  readonly file: string;
  readonly readonly: boolean;
  readonly tidy: () => void;
}

/**
 * SQLite makes two files beside a log in write-ahead form, also when it only reads, and a reader may not take them away
 * again. A backup has no such form; beside a log that is open they are there already. A log that nobody has open is
 * opened as if to write, and nothing is written: then SQLite itself takes the two away. Where that cannot be, a copy is
 * read: on a medium that cannot be written, and of a log whose newest lines a kill left in its journal, which the last
 * one to close it would move over.
 */
export function placeToRead(file: string): PlaceToRead {
  const [wal, shm] = [`${file}-wal`, `${file}-shm`];
  const inPlace = (readonly: boolean) => ({ file, readonly, tidy: () => {} });
  if (existsSync(wal) && existsSync(shm)) return inPlace(true);
  const journal = existsSync(wal) && statSync(wal).size > 0;
  if (!journal && !isWalForm(file)) return inPlace(true);
  return !journal && writable(file) && writable(dirname(file)) ? inPlace(false) : copied(file, journal);
}

function writable(path: string): boolean {
  try {
    accessSync(path, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

function copied(from: string, journal: boolean): PlaceToRead {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-'));
  const tidy = () => rmSync(folder, { recursive: true, force: true });
  const file = join(folder, 'read.wristpin');
  try {
    copyFileSync(from, file, constants.COPYFILE_FICLONE);
    if (journal) copyFileSync(`${from}-wal`, `${file}-wal`);
  } catch (error) {
    tidy();
    throw error;
  }
  return { file, readonly: false, tidy };
}
