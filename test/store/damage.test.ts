import { copyFileSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openSqlite, StoreError, type VerifyReport, verifyFile } from '../../src/store/index.js';
import { campaign } from '../support/campaign.js';
import { contents, fill } from './filled.js';
import { now, random } from './samples.js';

const tears = campaign(40, 200);
const flips = campaign(40, 400);
const seed = 20261203;
const folder = mkdtempSync(join(tmpdir(), 'wristpin-damage-'));
const whole = join(folder, 'whole.db');
let bytes: Buffer;
let said: string;

beforeAll(async () => {
  const store = await openSqlite(join(folder, 'store.db'), { now });
  await fill(store);
  await store.backup(whole); // one file without a journal: each damage is in it alone
  said = JSON.stringify(await contents(store));
  await store.close();
  bytes = readFileSync(whole);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A report, or the words in which the file is refused; any other error is a fault. */
const looked = (file: string): Promise<VerifyReport | StoreError> =>
  verifyFile(file).catch((error: unknown) => {
    if (error instanceof StoreError) return error;
    throw error;
  });

describe('a store that is damaged', () => {
  test(`torn off at ${tears} places is refused or found, and never called whole (seed ${seed})`, async () => {
    const next = random(seed);
    for (let i = 0; i < tears; i++) {
      const file = join(folder, 'torn.db');
      copyFileSync(whole, file);
      const length = Math.floor(next() * bytes.length);
      truncateSync(file, length);
      const found = await looked(file);
      expect(found instanceof StoreError || !found.ok, `torn at ${length}`).toBe(true);
    }
  });

  test(`by ${flips} bits flipped anywhere in its file, each alone: found, or nothing that it says is another (seed ${seed})`, async () => {
    const next = random(seed + 1);
    let unseen = 0;
    for (let i = 0; i < flips; i++) {
      const at = Math.floor(next() * bytes.length);
      const changed = Buffer.from(bytes);
      changed[at]! ^= 1 << Math.floor(next() * 8);
      const file = join(folder, 'flipped.db');
      writeFileSync(file, changed);
      const found = await looked(file);
      if (found instanceof StoreError || !found.ok || found.miscounted) continue;
      unseen += 1;
      const store = await openSqlite(file, { now });
      expect(JSON.stringify(await contents(store)), `a bit of byte ${at}`).toBe(said);
      await store.close();
      rmSync(`${file}-wal`, { force: true });
      rmSync(`${file}-shm`, { force: true });
    }
    console.info(`${flips - unseen} of ${flips} found; ${unseen} lay where nothing is kept`);
  });
});
