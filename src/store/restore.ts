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
import { copyFile, openToRead, openToWrite } from './sqlite-open.js';
import type { Db } from './tables.js';

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

interface Source {
  readonly db: Db;
  readonly done: () => Promise<void>;
}

/** A backup in today's tables. One of an older version is brought up in a copy; the backup stays as it is. */
export async function openCurrent(
  file: string,
  now: () => string,
  steps: readonly Migration[] = migrations,
): Promise<Source> {
  const db = await openToRead(file);
  if ((await schemaVersion(db, 'sqlite')) === steps.length) return { db, done: () => db.destroy() };
  await db.destroy();
  return upgradedCopy(file, now, steps);
}

async function upgradedCopy(file: string, now: () => string, steps: readonly Migration[]): Promise<Source> {
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
  throw new StoreError(
    'not-empty',
    `The log ${name} already holds something, and a backup is restored into an empty one only.`,
    'Nothing has been changed.',
    'Name a new file or database, and restore into that.',
  );
}
