import { resolve } from 'node:path';
import { explainSqlite } from './sqlite-error.js';
import { openToRead } from './sqlite-open.js';
import type { VerifyReport } from './store.js';
import { verify } from './verify.js';

/** A log or a backup in a file, also one that a server has open; nothing in it or beside it is changed. */
export async function verifyFile(given: string): Promise<VerifyReport> {
  const file = resolve(given.trim());
  const { db, done } = await openToRead(file);
  try {
    return await verify(db, 'sqlite', (error) => explainSqlite(error, file));
  } finally {
    await done();
  }
}
