import { keep } from './keep.js';
import { sqliteBackend } from './sqlite.js';
import type { Store, VerifyReport } from './store.js';

export interface Clock {
  /** ISO 8601; stamps what arrives */
  readonly now: () => string;
}

/** The log in one file, begun anew where no file is. Throws a StoreError, with the file untouched, when it cannot be. */
export async function openSqlite(file: string, { now }: Clock): Promise<Store> {
  return keep(await sqliteBackend(file, now));
}

/** The log in a PostgreSQL database, `postgres://user@host:port/database`; several servers may share it. */
export async function openPostgres(url: string, { now }: Clock): Promise<Store> {
  const { postgresBackend } = await import('./postgres.js'); // its driver is slow to load, and a file needs none
  return keep(await postgresBackend(url, now));
}

export async function verifyPostgres(url: string): Promise<VerifyReport> {
  const { verifyDatabase } = await import('./postgres.js');
  return verifyDatabase(url);
}
