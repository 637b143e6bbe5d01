import type Database from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  Kysely,
  SqliteAdapter,
  SqliteDriver,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';
import type { Db, Tables } from './tables.js';

export function kyselyOn(raw: Database.Database): Db {
  return new Kysely<Tables>({
    dialect: {
      createAdapter: () => new SqliteAdapter(),
      createDriver: () => new WritingDriver(raw),
      createIntrospector: (db) => new SqliteIntrospector(db),
      createQueryCompiler: () => new SqliteQueryCompiler(),
    },
  });
}

/**
 * `begin immediate`: a transaction that reads first and then wants to write fails at once, without waiting, when
 * another process wrote in between. And SQLite has already rolled back when the disk is full: a second rollback
 * would fail and hide the reason.
 */
class WritingDriver extends SqliteDriver {
  readonly #raw: Database.Database;
  constructor(raw: Database.Database) {
    super({ database: raw });
    this.#raw = raw;
  }
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#raw.inTransaction) await super.rollbackTransaction(connection);
  }
}
