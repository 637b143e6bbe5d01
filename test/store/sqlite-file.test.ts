import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSqlite, StoreError, type StoreErrorCode } from '../../src/store/index.js';
import { keep } from '../../src/store/keep.js';
import { migrations } from '../../src/store/migrations.js';
import { openCurrent } from '../../src/store/restore.js';
import { sqliteBackend } from '../../src/store/sqlite.js';
import { fill } from './filled.js';
import { entry, now, opening, pictureBytes } from './samples.js';

const folder = mkdtempSync(join(tmpdir(), 'wristpin-file-'));
const whole = join(folder, 'whole.wristpin');
let wholeBytes: Buffer;

beforeAll(async () => {
  const store = await openSqlite(whole, { now });
  await fill(store);
  await store.close();
  wholeBytes = readFileSync(whole);
  chmodSync(folder, 0o777); // the tests of rights run as another user
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let files = 0;
const newFolder = () => {
  const made = join(folder, `case${++files}`);
  mkdirSync(made, { mode: 0o777 });
  chmodSync(made, 0o777);
  return made;
};
const holding = (bytes: Uint8Array | string) => {
  const file = join(newFolder(), 'log.wristpin');
  writeFileSync(file, bytes);
  return file;
};

async function refusal(file: string): Promise<StoreError> {
  const opened = openSqlite(file, { now });
  const error = await opened.then((store) => store.close()).catch((thrown: unknown) => thrown);
  if (!(error instanceof StoreError)) throw new Error(`was not refused with a StoreError: ${error}`);
  return error;
}

/** Root may do everything, so the tests of rights put it off for a moment. */
async function asNobody<T>(work: () => Promise<T>): Promise<T> {
  if (process.geteuid?.() !== 0) return work();
  process.seteuid!(65_534);
  try {
    return await work();
  } finally {
    process.seteuid!(0);
  }
}

describe('a file that is no log', () => {
  const overwritten = (at: number, length: number) => {
    const bytes = Buffer.from(wholeBytes);
    Buffer.from(pictureBytes(length, 9)).copy(bytes, at);
    return bytes;
  };
  const cases: [what: string, bytes: () => Uint8Array | string, code: StoreErrorCode, says: RegExp][] = [
    ['is empty', () => '', 'not-a-log', /is empty, and no log ever is/],
    ['is an empty text', () => '\n', 'not-a-log', /is not a Wristpin log/],
    [
      'is a letter',
      () => 'Dear owner, the crank is bent.\n'.repeat(50),
      'not-a-log',
      /is not a Wristpin log/,
    ],
    ['is garbage', () => pictureBytes(40_960), 'not-a-log', /is not a Wristpin log/],
    ['lost its first page', () => overwritten(0, 4096), 'not-a-log', /is not a Wristpin log/],
    ['lost what follows its header', () => overwritten(100, 3996), 'corrupt', /is damaged/],
    ['is cut within the header', () => wholeBytes.subarray(0, 60), 'cut-short', /60 of its 100 bytes/],
    ['is cut in the middle', () => wholeBytes.subarray(0, 40_000), 'cut-short', /40000 of its \d+ bytes/],
    ['lacks its last byte', () => wholeBytes.subarray(0, -1), 'cut-short', /is cut short/],
  ];
  it.each(cases)('is refused and not touched: one that %s', async (_, bytes, code, says) => {
    const file = holding(bytes());
    const before = { bytes: readFileSync(file), changed: statSync(file).mtimeMs };
    const error = await refusal(file);
    expect(error.code).toBe(code);
    expect(error.happened).toMatch(says);
    expect(error.happened).toContain(file);
    expect(error.safe).toMatch(/Nothing .*changed/);
    expect(error.todo).toMatch(/restore the last backup/);
    expect(readFileSync(file).equals(before.bytes)).toBe(true);
    expect(statSync(file).mtimeMs).toBe(before.changed);
  });

  it('is refused and not touched: a database of another program', async () => {
    const file = join(newFolder(), 'other.db');
    const raw = new Database(file);
    raw.exec('create table entries (id text)');
    raw.close();
    const before = readFileSync(file);
    expect((await refusal(file)).message).toMatch(/is a database of another program/);
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(readdirSync(join(file, '..'))).toEqual(['other.db']);
  });

  it('is refused: a folder, a name in no folder, a name below a file, a link to nowhere', async () => {
    const made = newFolder();
    expect(await refusal(made)).toMatchObject({
      code: 'not-a-log',
      happened: expect.stringMatching(/is not a file/),
    });
    expect(await refusal(join(made, 'none', 'log'))).toMatchObject({ code: 'cannot-open' });
    expect(await refusal(join(whole, 'log'))).toMatchObject({ code: 'cannot-open' });
    symlinkSync(join(made, 'unplugged', 'log'), join(made, 'link'));
    expect(await refusal(join(made, 'link'))).toMatchObject({ code: 'cannot-open' });
    expect(readdirSync(made)).toEqual(['link']);
  });

  it('is refused: one that this user may not read, not write, or not write beside', async () => {
    const unreadable = holding(wholeBytes);
    chmodSync(unreadable, 0o000);
    const readable = holding(wholeBytes);
    chmodSync(readable, 0o444);
    const closed = newFolder();
    chmodSync(closed, 0o555);
    const refusals = await asNobody(async () => [
      await refusal(unreadable),
      await refusal(readable),
      await refusal(join(closed, 'log')),
    ]);
    expect(refusals.map((error) => error.code)).toEqual(['no-permission', 'no-permission', 'no-permission']);
    for (const error of refusals) expect(error.todo).toMatch(/right to .*write/);
    expect(readFileSync(unreadable).equals(wholeBytes)).toBe(true);
    expect(readdirSync(closed)).toEqual([]);
  });

  it('is refused where the last entries of a lost log still lie', async () => {
    const made = newFolder();
    const file = join(made, 'log.wristpin');
    const store = await openSqlite(file, { now });
    await store.append([opening('j1')]);
    copyFileSync(`${file}-wal`, join(made, 'lost.wristpin-wal'));
    await store.close();
    const before = readFileSync(join(made, 'lost.wristpin-wal'));
    expect(await refusal(join(made, 'lost.wristpin'))).toMatchObject({
      code: 'cannot-open',
      happened: expect.stringMatching(/is gone, and the last entries/),
    });
    expect(readFileSync(join(made, 'lost.wristpin-wal')).equals(before)).toBe(true);
    expect(readdirSync(made).sort()).toEqual(['log.wristpin', 'lost.wristpin-wal']);
  });
});

describe('a log', () => {
  it('damaged in a place that opening does not read is found by verification, and not written to', async () => {
    const bytes = Buffer.from(wholeBytes);
    bytes.fill(0xa5, 40 * 4096); // behind the first page of every table: what the tables hold
    const file = holding(bytes);
    const store = await openSqlite(file, { now });
    const report = await store.verify();
    expect(report.ok).toBe(false);
    expect(report.problems.length).toBeGreaterThan(0);
    await expect(store.since(0)).rejects.toMatchObject({
      code: 'corrupt',
      message: expect.stringMatching(/is damaged/),
    });
    await expect(store.backup(`${file}.backup`)).rejects.toMatchObject({ code: 'corrupt' });
    await store.close();
    expect(readFileSync(file).equals(bytes)).toBe(true);
    expect(readdirSync(join(file, '..'))).toEqual(['log.wristpin']);
  });

  it('whose last pages are in the journal alone, as a kill leaves it, is opened', async () => {
    const made = newFolder();
    const file = join(made, 'log.wristpin');
    const store = await openSqlite(file, { now });
    await store.append([opening('j1'), entry('n', 'j1', 'note', { words: 'x'.repeat(100_000) })]);
    for (const end of ['', '-wal']) copyFileSync(file + end, join(made, `killed.wristpin${end}`));
    await store.close();
    const killed = await openSqlite(join(made, 'killed.wristpin'), { now });
    expect((await killed.since(0)).map((e) => e.id)).toEqual(['j1-open', 'n']);
    expect((await killed.verify()).ok).toBe(true);
    await killed.close();
  });

  it('cut short beside a journal that does not make up for it is refused', async () => {
    const made = newFolder();
    const file = join(made, 'log.wristpin');
    writeFileSync(file, wholeBytes);
    const store = await openSqlite(file, { now });
    await store.append([entry('late', 'j1')]);
    copyFileSync(`${file}-wal`, join(made, 'cut.wristpin-wal'));
    writeFileSync(join(made, 'cut.wristpin'), readFileSync(file).subarray(0, 40_960));
    await store.close();
    const error = await refusal(join(made, 'cut.wristpin'));
    expect(['cut-short', 'corrupt']).toContain(error.code);
    expect(readFileSync(join(made, 'cut.wristpin')).length).toBe(40_960);
  });

  it('that another program holds for too long is said to be busy', async () => {
    const file = holding(wholeBytes);
    const store = await openSqlite(file, { now });
    const other = new Database(file);
    other.exec('begin immediate');
    await expect(store.append([entry('late', 'j1')])).rejects.toMatchObject({ code: 'busy' });
    other.exec('rollback');
    expect((await store.append([entry('late', 'j1')])).stored).toEqual(['late']);
    other.close();
    await store.close();
  });

  it('begins as a file without a name, and leaves nothing beside it when closed', async () => {
    const made = newFolder();
    const store = await openSqlite(join(made, 'log.wristpin'), { now });
    await store.append([opening('j1')]);
    await store.close();
    expect(readdirSync(made)).toEqual(['log.wristpin']);
  });

  it('takes away what a killed process left unfinished beside it, and nothing else', async () => {
    const here = newFolder();
    const file = join(here, 'log.wristpin');
    const gone = spawnSync(process.execPath, ['-e', '']).pid;
    const left = `log.wristpin.${gone}.0123abcd.part`;
    const others = [
      `log.wristpin.${process.pid}.0123abcd.part`,
      `other.wristpin.${gone}.0123abcd.part`,
      'log.part',
    ];
    for (const name of [left, `${left}-wal`, ...others]) writeFileSync(join(here, name), 'unfinished');
    const store = await openSqlite(file, { now });
    await store.close();
    expect(readdirSync(here).sort()).toEqual(['log.wristpin', ...others].sort());
  });

  it('backed up is one file, readable where nothing can be written', async () => {
    const made = newFolder();
    const store = await openSqlite(whole, { now });
    await store.backup(join(made, 'backup.wristpin'));
    await store.close();
    expect(readdirSync(made)).toEqual(['backup.wristpin']);
    chmodSync(join(made, 'backup.wristpin'), 0o444);
    chmodSync(made, 0o555);
    const elsewhere = await openSqlite(join(newFolder(), 'restored.wristpin'), { now });
    await asNobody(async () => {
      const source = await openCurrent(join(made, 'backup.wristpin'), now);
      expect((await source.db.selectFrom('entries').select('id').execute()).length).toBe(607);
      await source.done();
    });
    expect(await elsewhere.restore(join(made, 'backup.wristpin'))).toMatchObject({ ok: true, entries: 607 });
    await elsewhere.close();
    chmodSync(made, 0o777);
  });

  it('backed up by an older version is brought up to date in a copy', async () => {
    const file = join(newFolder(), 'backup.wristpin');
    const store = await openSqlite(whole, { now });
    await store.backup(file);
    await store.close();
    const before = readFileSync(file);
    const tomorrow = {
      version: migrations.length + 1,
      name: 'of tomorrow',
      up: (db: Parameters<(typeof migrations)[0]['up']>[0]) =>
        db.schema.alterTable('entries').addColumn('extra', 'text').execute(),
    };
    const source = await openCurrent(file, now, [...migrations, tomorrow]);
    const rows = await source.db.selectFrom('entries').selectAll().execute();
    expect(rows.length).toBe(607);
    expect(rows[0]).toHaveProperty('extra', null);
    await source.done();
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it('whose disk is full says so, loses nothing, and goes on when there is room', async () => {
    const backend = await sqliteBackend(holding(wholeBytes), now);
    const store = keep(backend);
    const limit = (pages: number) => sql.raw(`pragma max_page_count = ${pages}`).execute(backend.db);
    const before = await store.since(0);
    const large = [entry('small', 'j1'), entry('large', 'j1', 'note', { words: 'x'.repeat(500_000) })];
    await limit(1); // SQLite takes the present size for less
    await expect(store.append(large)).rejects.toMatchObject({
      code: 'disk-full',
      message: expect.stringMatching(/no room left.*What was saved before is as it was/),
    });
    expect(await store.since(0)).toEqual(before);
    await limit(1_000_000);
    expect((await store.append(large)).stored).toEqual(['small', 'large']);
    expect((await store.verify()).ok).toBe(true);
    await store.close();
  });
});
