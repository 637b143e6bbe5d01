import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Backend } from './backend.js';
import { refuseDamaged } from './backup.js';
import { copyRows } from './copy.js';
import { StoreError } from './error.js';
import { migrate, schemaVersion } from './migrate.js';
import { type Migration, migrations } from './migrations.js';
import { explainSqlite } from './sqlite-error.js';
import { partName, putInPlace, removeFile } from './sqlite-file.js';
import { copyFile, createFile, openToRead, openToWrite, type Reading } from './sqlite-open.js';
import type { VerifyReport } from './store.js';
import type { Db } from './tables.js';
import { verifyFile } from './verify-file.js';

export async function restore(backend: Backend, fromFile: string): Promise<void> {
  const file = resolve(fromFile.trim());
  const source = await openCurrent(file, backend.now);
  try {
    await refuseDamaged(source.db, file);
    await backend.write(async ({ tx, announce }) => {
      await refuseFilled(tx, backend.name);
      const head = await copyRows(source.db, tx, backend.dialect);
      if (head > 0) await announce(head);
    });
  } finally {
    await source.done();
  }
}

/**
 * Into a file that is not there yet: built beside it and then put in place, so that a failure or a kill at any moment
 * leaves no store of that name.
 */
export async function restoreInto(
  toFile: string,
  fromFile: string,
  now: () => string,
): Promise<VerifyReport> {
  const [file, from] = [resolve(toFile.trim()), resolve(fromFile.trim())];
  const source = await openCurrent(from, now);
  let part: string | undefined;
  try {
    await refuseDamaged(source.db, from);
    part = partName(file);
    await createFile(part, now, (to) => to.transaction().execute((tx) => copyRows(source.db, tx, 'sqlite')));
    const report = await verifyFile(part);
    if (!putInPlace(part, file)) throw filled(file);
    return report;
  } catch (error) {
    throw explainSqlite(error, file);
  } finally {
    if (part !== undefined) removeFile(part);
    await source.done();
  }
}

/** A backup in today's tables. One of an older version is brought up in a copy; the backup stays as it is. */
export async function openCurrent(
  file: string,
  now: () => string,
  steps: readonly Migration[] = migrations,
): Promise<Reading> {
  const reading = await openToRead(file);
  if ((await schemaVersion(reading.db, 'sqlite')) === steps.length) return reading;
  await reading.done();
  return upgradedCopy(file, now, steps);
}

async function upgradedCopy(file: string, now: () => string, steps: readonly Migration[]): Promise<Reading> {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-'));
  const copy = join(folder, 'upgraded.wristpin');
  const tidy = () => rmSync(folder, { recursive: true, force: true });
  try {
    await copyFile(file, copy);
    const db = openToWrite(copy);
    await migrate(db, 'sqlite', now, steps);
    return { db, done: () => db.destroy().then(tidy) };
  } catch (error) {
    tidy();
    throw explainSqlite(error, file);
  }
}

async function refuseFilled(tx: Db, name: string): Promise<void> {
  const entry = await tx.selectFrom('entries').select('seq').limit(1).executeTakeFirst();
  const picture = await tx.selectFrom('pictures').select('sha256').limit(1).executeTakeFirst();
  if (entry === undefined && picture === undefined) return;
  throw filled(name);
}

function filled(name: string): StoreError {
  return new StoreError(
    'not-empty',
    `The log ${name} already holds something, and a backup is restored into an empty one only.`,
    'Nothing has been changed.',
    'Name a new file or database, and restore into that.',
  );
}
