import { sql } from 'kysely';
import { StoreError } from './error.js';
import { type Migration, migrations } from './migrations.js';
import type { Db, Dialect } from './tables.js';

/**
 * Brings the tables to the newest version, all steps in one transaction: after a failure or a power cut the
 * log stands at the version it had. Throws StoreError 'newer' when a newer program wrote it.
 */
export async function migrate(
  db: Db,
  dialect: Dialect,
  now: () => string,
  steps: readonly Migration[] = migrations,
): Promise<void> {
  refuseGap(steps);
  if (upToDate(await schemaVersion(db, dialect), steps)) return;
  await db.transaction().execute(async (tx) => {
    // two servers may start on one new database at the same moment; the second finds the work done
    if (dialect === 'postgres')
      await sql`select pg_advisory_xact_lock(hashtext('wristpin schema'))`.execute(tx);
    const from = await schemaVersion(tx, dialect);
    if (upToDate(from, steps)) return;
    if (from === 0) await createVersionTable(tx);
    for (const step of steps.slice(from)) {
      await step.up(tx as never, dialect);
      await tx
        .insertInto('schema_version')
        .values({ version: step.version, name: step.name, applied: now() })
        .execute();
    }
  });
}

/** 0 when there are no tables yet. */
export async function schemaVersion(db: Db, dialect: Dialect): Promise<number> {
  if (!(await hasVersionTable(db, dialect))) return 0;
  const rows = await db.selectFrom('schema_version').select('version').orderBy('version').execute();
  if (rows.length === 0 || rows.some((row, i) => row.version !== i + 1))
    throw gapInLog(rows.map((r) => r.version));
  return rows.length;
}

export function refuseNewer(found: number, known: number): void {
  if (found <= known) return;
  throw new StoreError(
    'newer',
    `This log was written by a newer Wristpin: its tables are of version ${found}, this program knows ${known}.`,
    'Nothing in it has been changed.',
    'Run the newer Wristpin, or restore a backup made before the change into a new log.',
  );
}

function upToDate(found: number, steps: readonly Migration[]): boolean {
  refuseNewer(found, steps.length);
  return found === steps.length;
}

function refuseGap(steps: readonly Migration[]): void {
  const wrong = steps.findIndex((step, i) => step.version !== i + 1);
  if (wrong >= 0)
    throw new RangeError(`migration ${steps[wrong]?.version} stands where ${wrong + 1} must stand`);
}

/** The catalog's rows are asked, not `to_regclass`: that may answer from before another server made the table. */
async function hasVersionTable(db: Db, dialect: Dialect): Promise<boolean> {
  const query =
    dialect === 'sqlite'
      ? sql<{ found: number }>`select count(*) as found from sqlite_master
          where type = 'table' and name = 'schema_version'`
      : sql<{ found: number }>`select count(*) as found from pg_catalog.pg_tables
          where tablename = 'schema_version' and schemaname = any(current_schemas(false))`;
  return (await query.execute(db)).rows[0]?.found === 1;
}

async function createVersionTable(db: Db): Promise<void> {
  await db.schema
    .createTable('schema_version')
    .addColumn('version', 'integer', (c) => c.primaryKey().notNull())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('applied', 'text', (c) => c.notNull())
    .execute();
}

function gapInLog(versions: readonly number[]): StoreError {
  return new StoreError(
    'corrupt',
    `The table of schema versions holds "${versions.join(', ')}" where 1, 2, 3 … must stand without a gap.`,
    'Nothing in the log has been changed.',
    'Keep this log as it is and restore the last backup into a new one.',
  );
}
