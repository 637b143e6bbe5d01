import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { JobNotes } from '../../src/shopkeep/index.js';
import { openSqlite } from '../../src/store/index.js';
import { entry, opening } from '../store/samples.js';

test('what is kept beside the log is brought up and then rests, however many go on writing meanwhile', async () => {
  const jobs = Array.from({ length: 25 }, (_, n) => `j${n}`);
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-notes-'));
  const store = await openSqlite(join(folder, 'shop.db'), { now: () => '2026-03-02T09:00:00.000Z' });
  await store.append(jobs.map((job) => opening(job)));
  const keepNotes = store.keepNotes.bind(store);
  let turns = 0;
  // in each turn every machine is written to again, until somebody gives up
  store.keepNotes = async (notes) => {
    turns += 1;
    if (turns < 20) await store.append(jobs.map((job) => entry(`${job}-${turns}`, job)));
    return keepNotes(notes);
  };
  await new JobNotes(store).bringUp();
  expect(turns).toBeLessThanOrEqual(2);

  store.keepNotes = keepNotes;
  await new JobNotes(store).bringUp();
  expect((await store.jobCounts()).behind).toBe(0);
  await store.close();
  rmSync(folder, { recursive: true });
});
