import { closeSync, openSync } from 'node:fs';
import { resolve } from 'node:path';
import { setImmediate as breath } from 'node:timers/promises';
import type Database from 'better-sqlite3';
import { sql } from 'kysely';
import type { Backend, Writing } from './backend.js';
import { type Bell, createBell } from './bell.js';
import { migrate } from './migrate.js';
import { kyselyOn } from './sqlite-driver.js';
import { explainSqlite } from './sqlite-error.js';
import { inspectFile, partName, putInPlace, removeFile, removeStrays } from './sqlite-file.js';
import { type Guard, guardOf } from './sqlite-guard.js';
import { connect, copyFile, createFile, examine, nameFile, secure, snapshot } from './sqlite-open.js';
import { lookForOthers } from './sqlite-others.js';
import type { Db } from './tables.js';
import { inTurn } from './turn.js';

/**
 * Opens a log, or begins a new one where no file is. Several processes may have the file open and write: SQLite
 * lets one in at a time, and each waits for the others up to 5 s before it says 'busy'. They must be on one
 * machine: the write-ahead log needs shared memory, and a network drive has none.
 */
export async function sqliteBackend(given: string, now: () => string): Promise<Backend> {
  const file = resolve(given.trim());
  try {
    if (inspectFile(file, 'write') === 'absent') await beginLog(file, now);
    await examine(file);
    removeStrays(file);
    return await backendOn(file, now);
  } catch (error) {
    throw explainSqlite(error, file);
  }
}

/** Built beside and then put in place: a kill at any moment leaves either no log or a whole one under the name. */
async function beginLog(file: string, now: () => string): Promise<void> {
  const part = partName(file);
  try {
    closeSync(openSync(part, 'wx')); // the system says why it will not; SQLite only that it cannot
    await createFile(part, now);
    putInPlace(part, file); // false: another process began it at the same moment; then this is its log
  } finally {
    removeFile(part);
  }
}

async function backendOn(file: string, now: () => string): Promise<Backend> {
  const raw = connect(file, {});
  try {
    raw.pragma('journal_mode = wal');
    secure(raw);
    const db = kyselyOn(raw);
    await migrate(db, 'sqlite', now);
    return overConnection(file, raw, db, now);
  } catch (error) {
    raw.close();
    throw error;
  }
}

function overConnection(file: string, raw: Database.Database, db: Db, now: () => string): Backend {
  const bell = createBell();
  const others = lookForOthers(raw, bell);
  const guard = guardOf(file, nameFile(raw));
  return {
    dialect: 'sqlite',
    name: file,
    db,
    now,
    write: (work) => inTurn(file, () => write(db, bell, guard, work)),
    look: async () => guard.look(),
    snapshot: (read) => snapshot(file, read),
    copyTo: (part) => copyFile(file, part),
    watch: others.watch,
    explain: (error) => explainSqlite(error, file),
    close: async () => {
      others.stop();
      await db.destroy();
      guard.close();
    },
  };
}

/** The look afterwards is the one that counts: nothing is called saved that went into a file that nobody finds again. */
async function write<T>(
  db: Db,
  bell: Bell,
  guard: Guard,
  work: (writing: Writing) => Promise<T>,
): Promise<T> {
  let announced: number | undefined;
  guard.look();
  const result = await db.transaction().execute((tx) =>
    work({
      tx,
      numbers: (count) => numbers(tx, count),
      announce: async (seq) => {
        announced = seq;
      },
    }),
  );
  guard.look();
  if (announced !== undefined) bell.ring(announced);
  await breath(); // nothing above ever waits: who writes in a loop would keep the whole process from anything else
  return result;
}

/** SQLite remembers the greatest number that was ever given, also of rows that are gone. */
async function numbers(tx: Db, count: number): Promise<number[]> {
  const { rows } = await sql<{ seq: number }>`select seq from sqlite_sequence where name = 'entries'`.execute(
    tx,
  );
  const last = rows[0]?.seq ?? 0;
  return Array.from({ length: count }, (_, i) => last + 1 + i);
}
