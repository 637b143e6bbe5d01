import { accessSync, constants, existsSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { Backend } from './backend.js';
import { StoreError } from './error.js';
import { explainSqlite } from './sqlite-error.js';
import { partName, putInPlace, removeFile } from './sqlite-file.js';
import { openToRead, toOneFile } from './sqlite-open.js';
import type { VerifyReport } from './store.js';
import type { Db } from './tables.js';
import { pageProblems, verify } from './verify.js';

/** The name is given only to a copy that has been checked and is on the disk. */
export async function backup(backend: Backend, toFile: string): Promise<VerifyReport> {
  const file = resolve(toFile.trim());
  if (existsSync(file)) throw taken(file);
  const part = partName(file);
  try {
    accessSync(dirname(file), constants.W_OK);
    await backend.copyTo(part);
    toOneFile(part);
    const report = await checkFile(part, file);
    if (!putInPlace(part, file)) throw taken(file);
    return report;
  } catch (error) {
    throw explainSqlite(error, file);
  } finally {
    removeFile(part);
  }
}

async function checkFile(part: string, file: string): Promise<VerifyReport> {
  const db = await openToRead(part);
  try {
    await refuseDamaged(db, file);
    return await verify(db, 'sqlite', (error) => explainSqlite(error, file));
  } finally {
    await db.destroy();
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
