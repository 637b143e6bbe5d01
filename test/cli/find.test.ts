import { expect, test } from 'vitest';
import { openSqlite } from '../../src/store/index.js';
import { entry, jobB, note, openEntry } from '../server/support.js';
import { cliWithFolder } from '../support/built-cli.js';

const { cli, inFolder } = cliWithFolder('the file');
const wristpin = (...args: string[]) =>
  cli.run(args, { cwd: inFolder(), env: { WRISTPIN_STORE: inFolder('shop.db') } });

test('jobs are found by what stands in them, each with where', async () => {
  const store = await openSqlite(inFolder('shop.db'), { now: () => '2026-03-02T09:00:00.000Z' });
  const part = { part: 'ring', name: 'Bowl ring', count: 1, state: 'ordered', number: 'OX-195-32' };
  await store.append([
    openEntry(1, 12),
    entry(2, 'part', part),
    openEntry(3, 13, jobB),
    note(4, 'Belt slips'),
  ]);
  await store.close();
  const { code, out } = await wristpin('find', 'ox19532');
  expect(code).toBe(0);
  expect(out).toBe('tag 12  Tag 12\n    Parts, 2026-03-01: Bowl ring: ordered · OX-195-32\n');
  expect((await wristpin('find', 'bowl', 'ring')).out).toBe(out);
  expect(JSON.parse((await wristpin('find', 'belt', '--json')).out).found).toMatchObject([
    { summary: { tag: 12 }, places: [{ title: 'Belt slips' }] },
  ]);
});

test('nothing found is said, and is no failure; no words are called wrongly', async () => {
  const none = await wristpin('find', 'gearbox');
  expect([none.code, none.out]).toEqual([0, 'Nothing found. Fewer letters or fewer words find more.\n']);
  const blank = await wristpin('find', '  ');
  expect([blank.code, blank.err]).toEqual([2, expect.stringContaining('Say what to look for')]);
  const empty = await wristpin('find');
  expect([empty.code, empty.err]).toEqual([2, expect.stringContaining('wristpin find WORDS')]);
});
