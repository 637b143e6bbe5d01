import { CompiledQuery, Kysely, PostgresDialect, sql } from 'kysely';
import pg from 'pg';
import type { Backend, Writing } from './backend.js';
import { createBell } from './bell.js';
import { copyRows } from './copy.js';
import { StoreError } from './error.js';
import { migrate, refuseNewer, schemaVersion } from './migrate.js';
import { migrations } from './migrations.js';
import { explainPostgres } from './postgres-error.js';
import { channel, listen } from './postgres-listener.js';
import { createFile } from './sqlite-open.js';
import { stateOf } from './state.js';
import type { VerifyReport } from './store.js';
import type { Db, Tables } from './tables.js';
import { verify } from './verify.js';

const waitForOthersMs = 10_000;
const connectMs = 5_000;

/** Opens the log in a PostgreSQL database, and makes its tables in an empty one. Several servers may share it. */
export async function postgresBackend(url: string, now: () => string): Promise<Backend> {
  const { name, config, db } = connectTo(url);
  const bell = createBell();
  try {
    await refuseUnfit(db, name);
    await migrate(db, 'postgres', now);
    const { store } = await stateOf(db);
    const listener = await listen(config, bell);
    return {
      dialect: 'postgres',
      name,
      db,
      now,
      write: (work) => write(db, (tx) => requireSame(tx, name, store), work),
      look: () => requireSame(db, name, store),
      snapshot: (read) => snapshot(db, read),
      copyTo: (part) => snapshot(db, (view) => createFile(part, now, (file) => fill(view, file))),
      watch: bell.watch,
      explain: (error) => explainPostgres(error, name),
      close: async () => {
        await listener.stop();
        await db.destroy();
      },
    };
  } catch (error) {
    await db.destroy();
    throw explainPostgres(error, name);
  }
}

function connectTo(url: string) {
  const name = nameOf(url);
  const config = { connectionString: url, connectionTimeoutMillis: connectMs, keepAlive: true, types };
  const pool = new pg.Pool(config);
  // a connection that breaks says so twice: to the query under way, or the next one, which rejects; and by an event
  // that would end the whole program if nobody took it
  pool.on('error', () => {});
  pool.on('connect', (client) => client.on('error', () => {}));
  const db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool, onCreateConnection: secure }) });
  return { name, config, db };
}

/** Of a log that is only read: its tables stay at the version that they have. */
export async function verifyDatabase(url: string): Promise<VerifyReport> {
  const { name, db } = connectTo(url);
  const explain = (error: unknown) => explainPostgres(error, name);
  try {
    const version = await schemaVersion(db, 'postgres');
    if (version === 0) throw noLog(name);
    refuseNewer(version, migrations.length);
    return await snapshot(db, (view) => verify(view, 'postgres', explain));
  } catch (error) {
    throw explain(error);
  } finally {
    await db.destroy();
  }
}

async function requireSame(db: Db, name: string, store: string): Promise<void> {
  const state = await stateOf(db);
  if (state.store === store) return;
  throw new StoreError(
    'gone',
    `The database ${name} is another one now: one was put in its place while Wristpin was running.`,
    'Nothing is written any more, so that nothing can be lost: what you write stays on your device.',
    'Put the database back and close and open Wristpin; else restore the last backup into a new one.',
  );
}

function noLog(name: string): StoreError {
  return new StoreError(
    'cannot-open',
    `There is no log in the database ${name}.`,
    'Nothing has been changed.',
    'Look at the name again.',
  );
}

function nameOf(url: string): string {
  try {
    const { protocol, host, pathname } = new URL(url);
    if (protocol === 'postgres:' || protocol === 'postgresql:') return `${host}${pathname}`;
  } catch {
    // the address itself is not repeated below: it may hold a password
  }
  throw new StoreError(
    'cannot-open',
    'The address of the database is not of the form postgres://user@host:port/database.',
    'Nothing has been changed.',
    'Correct the address.',
  );
}

/** int8 comes as text, for it may be greater than a number can hold; ours count entries and cannot. */
const types: pg.CustomTypesConfig = {
  getTypeParser: (oid: number, format?: 'text' | 'binary') =>
    oid === pg.types.builtins.INT8 ? wholeNumber : pg.types.getTypeParser(oid, format as 'text'),
};

function wholeNumber(text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value))
    throw new RangeError(`${text} is beyond the whole numbers that can be counted here`);
  return value;
}

/** Neither may a commit be called done before it is on the disk, nor a writer wait for ever. */
async function secure(connection: { executeQuery(query: CompiledQuery): Promise<unknown> }): Promise<void> {
  const durable = `select set_config('synchronous_commit', 'on', false) where current_setting('synchronous_commit') = 'off'`;
  await connection.executeQuery(CompiledQuery.raw(durable));
  await connection.executeQuery(CompiledQuery.raw(`set lock_timeout = ${waitForOthersMs}`));
}

async function refuseUnfit(db: Db, name: string): Promise<void> {
  const { rows } = await sql<{ fsync: string; encoding: string }>`
    select current_setting('fsync') as fsync, current_setting('server_encoding') as encoding`.execute(db);
  const { fsync, encoding } = rows[0]!;
  if (fsync !== 'on')
    throw unfit(
      name,
      'has fsync switched off: a power cut could take what was said to be saved',
      'Set fsync = on.',
    );
  if (encoding !== 'UTF8')
    throw unfit(name, `keeps text as ${encoding}, which lacks characters`, "Create it with encoding 'UTF8'.");
}

function unfit(name: string, why: string, todo: string): StoreError {
  return new StoreError('unfit', `The database ${name} ${why}.`, 'Nothing has been changed.', todo);
}

/**
 * The table's lock comes before the first number is drawn and goes with the commit, so that numbers become visible
 * in their order. Readers are not kept waiting by it.
 */
async function write<T>(
  db: Db,
  isSame: (tx: Db) => Promise<void>,
  work: (writing: Writing) => Promise<T>,
): Promise<T> {
  return db.transaction().execute(async (tx) => {
    await sql`lock table entries in exclusive mode`.execute(tx);
    await isSame(tx);
    return work({ tx, numbers: (count) => numbers(tx, count), announce: (seq) => announce(tx, seq) });
  });
}

async function numbers(tx: Db, count: number): Promise<number[]> {
  const drawn = sql<{ seq: number }>`
    select nextval(pg_get_serial_sequence('entries', 'seq')) as seq from generate_series(1, ${count}::integer)`;
  return (await drawn.execute(tx)).rows.map(({ seq }) => seq).sort((a, b) => a - b);
}

/** Delivered by the commit, to every server that listens, this one too. */
async function announce(tx: Db, seq: number): Promise<void> {
  await sql`select pg_notify(${channel}, ${String(seq)})`.execute(tx);
}

async function snapshot<T>(db: Db, read: (view: Db) => Promise<T>): Promise<T> {
  const frozen = db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only');
  return frozen.execute(async (tx) => {
    await sql`select 1`.execute(tx); // the view is fixed by the first query
    return read(tx);
  });
}

async function fill(view: Db, file: Db): Promise<void> {
  await file.transaction().execute((tx) => copyRows(view, tx, 'sqlite'));
}
