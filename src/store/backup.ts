import { accessSync, constants, existsSync, statSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import type { Backend } from './backend.js';
import { StoreError } from './error.js';
import { explainSqlite } from './sqlite-error.js';
import { isWalForm, partName, putInPlace, putInPlaceOf, removeFile } from './sqlite-file.js';
import { openToRead, toOneFile } from './sqlite-open.js';
import { setBackup } from './state.js';
import type { VerifyReport } from './store.js';
import type { Db } from './tables.js';
import { pageProblems, verify } from './verify.js';

/** The name is given only to a copy that has been checked and is on the disk. */
export async function backup(
  backend: Backend,
  toFile: string,
  { replace = false }: BackupOptions = {},
): Promise<VerifyReport> {
  const file = resolve(toFile.trim());
  refuseTaken(file, replace, backend);
  const part = partName(file);
  try {
    accessSync(dirname(file), constants.W_OK);
    await backend.copyTo(part);
    toOneFile(part);
    const report = await checkFile(part, file);
    refuseTaken(file, replace, backend);
    if (replace) putInPlaceOf(part, file);
    else if (!putInPlace(part, file)) throw taken(file);
    if (report.ok) await noteBackup(backend, file);
    return report;
  } catch (error) {
    throw explainSqlite(error, file);
  } finally {
    removeFile(part);
  }
}

export interface BackupOptions {
  /** an older backup of that name goes once the new one is whole; a store never does */
  readonly replace?: boolean;
}

function refuseTaken(file: string, replace: boolean, { name }: Backend): void {
  if (!existsSync(file)) return;
  if (!replace) throw taken(file);
  if (isStore(file)) throw liveStore(file, name);
}

/** A store is in write-ahead form or has its journal beside it; a backup has neither. */
function isStore(file: string): boolean {
  if (existsSync(`${file}-wal`) || existsSync(`${file}-shm`)) return true;
  const { size } = statSync(file);
  return size >= 100 && isWalForm(file);
}

async function noteBackup(backend: Backend, file: string): Promise<void> {
  await backend.write(({ tx }) => setBackup(tx, backend.now(), basename(file)));
}

async function checkFile(part: string, file: string): Promise<VerifyReport> {
  const { db, done } = await openToRead(part);
  try {
    await refuseDamaged(db, file);
    return await verify(db, 'sqlite', (error) => explainSqlite(error, file));
  } finally {
    await done();
  }
}

/** Damaged pages may hide rows; a copy of them is no backup. What single rows lack is reported instead. */
export async function refuseDamaged(db: Db, file: string): Promise<void> {
  const [first, ...more] = await pageProblems(db, 'sqlite');
  if (first === undefined) return;
  throw new StoreError(
    'corrupt',
    `The copy ${file} is damaged: ${first}${more.length > 0 ? `, and ${more.length} more` : ''}.`,
    'The log has not been changed by this.',
    'Run the verification on the log, and take an earlier backup if it is damaged too.',
  );
}

function taken(file: string): StoreError {
  return new StoreError(
    'exists',
    `There is already a file ${file}.`,
    'It was not touched.',
    'Name a new file for the backup.',
  );
}

function liveStore(file: string, store: string): StoreError {
  const itself = file === store ? 'the very store that was to be backed up' : 'a shop’s store, and no backup';
  return new StoreError(
    'exists',
    `${file} is ${itself}.`,
    'It was not touched.',
    'Name another file for the backup.',
  );
}
