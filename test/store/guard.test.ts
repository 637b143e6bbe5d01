import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { openPostgres, openSqlite, type Store } from '../../src/store/index.js';
import { postgresBackend } from '../../src/store/postgres.js';
import { startPostgres, type TestPostgres } from '../support/postgres.js';
import { entry, now, opening } from './samples.js';

const folder = mkdtempSync(join(tmpdir(), 'wristpin-guard-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const open: Store[] = [];
afterEach(async () => {
  for (const store of open.splice(0)) await store.close().catch(() => {});
});

let cases = 0;
async function running() {
  const here = join(folder, `case${++cases}`);
  mkdirSync(here);
  const file = join(here, 'shop.db');
  const store = await openSqlite(file, { now });
  open.push(store);
  await store.append([opening('j1'), entry('before', 'j1')]);
  return { here, file, store };
}

const refused = async (store: Store, says: RegExp) => {
  const gone = { name: 'StoreError', code: 'gone', message: expect.stringMatching(says) };
  await expect(store.look()).rejects.toMatchObject(gone);
  await expect(store.append([entry('late', 'j1')])).rejects.toMatchObject(gone);
};

describe('a store whose file, while it is open,', () => {
  it('is deleted says nothing more is saved, and still gives out what it holds', async () => {
    const { file, store } = await running();
    rmSync(file);
    await refused(store, /has been deleted or moved away.*restore the last backup/);
    expect((await store.entries('j1')).map(({ id }) => id)).toEqual(['j1-open', 'before']);
  });

  it('is moved away and put back goes on', async () => {
    const { file, store } = await running();
    renameSync(file, `${file}.away`);
    await refused(store, /has been deleted or moved away/);
    renameSync(`${file}.away`, file);
    expect((await store.append([entry('late', 'j1')])).stored).toEqual(['late']);
  });

  it('is replaced by a backup of its own refuses to write, and does not touch that', async () => {
    const { file, here, store } = await running();
    const backup = join(here, 'backup.db');
    await store.backup(backup);
    const bytes = readFileSync(backup);
    renameSync(backup, file);
    await refused(store, /one was put in its place/);
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });

  it('is written over in its place, by a backup or by an older copy of itself, refuses to write', async () => {
    for (const laidOver of ['backup', 'copy'] as const) {
      const { file, here, store } = await running();
      await store.close();
      copyFileSync(file, join(here, 'copy'));
      const again = await openSqlite(file, { now });
      open.push(again);
      await again.append([entry('more', 'j1', 'note', { words: 'x'.repeat(900_000) })]);
      await again.backup(join(here, 'backup'));
      await sqlCheckpoint(file);
      await again.look();
      copyFileSync(join(here, laidOver), file);
      await refused(again, /was written over by another program/);
    }
  });

  it('loses its journal refuses to write', async () => {
    const { file, store } = await running();
    rmSync(`${file}-wal`);
    await refused(store, /has lost its journal/);
  });

  it('never calls saved what went into a file that was taken away during the write', async () => {
    const { file, store } = await running();
    const saved: string[] = [];
    for (let i = 0; i < 40; i++) {
      const work = store.append([entry(`e${i}`, 'j1')]).then(
        () => saved.push(`e${i}`),
        () => {},
      );
      if (i === 20) renameSync(file, `${file}.away`);
      await work;
    }
    expect(saved.length).toBeGreaterThanOrEqual(20);
    expect(saved.length).toBeLessThan(40);
    renameSync(`${file}.away`, file);
    await store.look();
    const kept = new Set((await store.entries('j1')).map(({ id }) => id));
    expect(saved.filter((id) => !kept.has(id))).toEqual([]);
  });

  async function sqlCheckpoint(file: string): Promise<void> {
    const { default: Database } = await import('better-sqlite3');
    const raw = new Database(file);
    raw.pragma('wal_checkpoint(truncate)');
    raw.close();
  }
});

describe('a backup', () => {
  it('never takes the place of the store itself or of another store that is open, not even when it may replace', async () => {
    const { file, here, store } = await running();
    await expect(store.backup(file, { replace: true })).rejects.toMatchObject({
      code: 'exists',
      message: expect.stringMatching(/the very store that was to be backed up/),
    });
    const other = await running();
    await expect(store.backup(other.file, { replace: true })).rejects.toMatchObject({
      code: 'exists',
      message: expect.stringMatching(/is a shop’s store, and no backup/),
    });
    await other.store.close();
    await expect(store.backup(other.file, { replace: true })).rejects.toMatchObject({ code: 'exists' });
    expect((await store.append([entry('late', 'j1')])).stored).toEqual(['late']);
    expect(readdirSync(here).filter((name) => name.includes('part'))).toEqual([]);
  });

  it('replaces an older backup when it may, and the day of the last good one is kept', async () => {
    const { here, store } = await running();
    expect(await store.lastBackup()).toBeUndefined();
    writeFileSync(join(here, 'b.db'), 'an older one');
    await store.backup(join(here, 'b.db'), { replace: true });
    expect(await store.lastBackup()).toEqual({ at: now(), file: 'b.db' });
    expect(readdirSync(here).filter((name) => name.startsWith('b.db'))).toEqual(['b.db']);
    expect(readFileSync(join(here, 'b.db'))[18]).toBe(1); // SQLite, "Database File Format", 1.3: 2 is write-ahead
  });
});

const found = await startPostgres();
if ('reason' in found) it.skip(`a database that is replaced is left out: ${found.reason}`);
else onServer(found);

function onServer(server: TestPostgres): void {
  afterAll(() => server.stop());

  describe('a store whose database, while it is open,', () => {
    it('is emptied and begun anew by another refuses to write', async () => {
      const url = await server.newDatabase();
      const store = await openPostgres(url, { now });
      open.push(store);
      await store.append([opening('j1')]);
      const under = await postgresBackend(url, now);
      await sql`drop schema public cascade`.execute(under.db);
      await sql`create schema public`.execute(under.db);
      await expect(store.append([entry('a', 'j1')])).rejects.toMatchObject({ name: 'StoreError' });
      await under.close();
      const second = await openPostgres(url, { now });
      open.push(second);
      await second.append([opening('j1')]);
      await refused(store, /is another one now/);
      expect((await second.since(0)).length).toBe(1);
    });
  });
}
