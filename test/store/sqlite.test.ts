import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, describe, expect, it } from 'vitest';
import { openSqlite } from '../../src/store/index.js';
import { sqliteBackend } from '../../src/store/sqlite.js';
import { acceptance } from './acceptance.js';
import { now } from './samples.js';

const folder = mkdtempSync(join(tmpdir(), 'wristpin-sqlite-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let places = 0;

acceptance('SQLite', async () => {
  const file = join(folder, `${++places}.wristpin`);
  return { open: () => openSqlite(file, { now }), under: () => sqliteBackend(file, now) };
});

describe('the connection a log is written through', () => {
  it('flushes every commit, and holds chunks to their pictures', async () => {
    const backend = await sqliteBackend(join(folder, 'settings.wristpin'), now);
    const ask = async (name: string) =>
      Object.values((await sql.raw(`pragma ${name}`).execute(backend.db)).rows[0]!)[0];
    // synchronous 2 is FULL: SQLite, "PRAGMA synchronous"
    expect([await ask('journal_mode'), await ask('synchronous'), await ask('foreign_keys')]).toEqual([
      'wal',
      2,
      1,
    ]);
    await backend.close();
  });

  it('says what went wrong also when SQLite has taken the transaction back by itself', async () => {
    const backend = await sqliteBackend(join(folder, 'taken-back.wristpin'), now);
    const twice = backend.write(({ tx }) =>
      sql`insert or rollback into schema_version values (1, 'again', '')`.execute(tx),
    );
    await expect(twice).rejects.toMatchObject({ code: 'SQLITE_CONSTRAINT_PRIMARYKEY' });
    await backend.close();
  });
});
