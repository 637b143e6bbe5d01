import { beforeAll, expect, test } from 'vitest';
import { openSqlite } from '../../src/store/index.js';
import { entry, openEntry, uuid } from '../server/support.js';
import { cliWithFolder } from '../support/built-cli.js';
import { call } from '../support/command.js';

const owner = 'Jo Invented, 5 Nowhere Lane';
const { cli, inFolder } = cliWithFolder('the file');

/** A machine that was repaired and handed over; and one that is still on the bench. */
function finished(n: number) {
  const job = uuid(0x100 + n);
  const at = 10 * n;
  return [
    openEntry(at, 20 + n, job),
    entry(at + 1, 'intake', { architecture: 'side-valve', machine: 'Tiller', owner }, job),
    entry(
      at + 2,
      'decision',
      { about: 'fault', which: 'flywheel-key-part-sheared', title: 'Key', choice: 'repaired', reason: '' },
      job,
    ),
    entry(at + 3, 'hand-over', { receivedBy: owner, declined: [], nextDue: [] }, job),
  ];
}

beforeAll(async () => {
  const store = await openSqlite(inFolder('shop.db'), { now: () => '2026-03-02T09:00:00.000Z' });
  await store.append([
    ...[1, 2, 3, 4].flatMap(finished),
    openEntry(900, 12),
    entry(901, 'intake', { architecture: 'side-valve' }),
  ]);
  await store.close();
});

const env = () => ({ WRISTPIN_STORE: inFolder('shop.db') });
const wristpin = (...args: string[]) => call(args, env());
const told = async () => JSON.parse((await wristpin('frequencies', '--json')).out);
const key = async () =>
  (await told()).frequencies.find((f: { fault: string }) => f.fault === 'flywheel-key-part-sheared');

test('counts, the catalog’s figure and the shop’s stand side by side, without any job or owner', async () => {
  const { out, code } = await cli.run(['frequencies', '--json'], { env: env() });
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ jobs: 4, on: true });
  const f = await key();
  expect(f).toMatchObject({ architecture: 'side-valve', present: 4, absent: 0 });
  expect(f.learned).toBeGreaterThan(f.catalog);
  expect(f.learned).toBeLessThan(1);
  for (const secret of ['Jo Invented', 'Nowhere', 'Tiller', uuid(0x101), '"tag"'])
    expect(out).not.toContain(secret);
});

test('for people it says what counts and how far the catalog holds against it', async () => {
  const { out } = await wristpin('frequencies');
  expect(out).toContain('4 of the shop’s own jobs count');
  expect(out).toMatch(/weight of \d+ machines/);
  expect(out).toMatch(/side-valve: found in 4 of 4; the catalog says [\d.]+, with yours [\d.]+ of 100/);
});

test('the advice says that they speak, and their fault stands higher', async () => {
  const posterior = async () => {
    const { out } = await wristpin('advise', '12', '--json');
    const said = JSON.parse(out);
    return {
      jobs: said.ownJobs,
      p: said.faults.find((f: { id: string }) => f.id === 'flywheel-key-part-sheared').posterior,
    };
  };
  const shifted = await posterior();
  expect(shifted.jobs).toBe(4);
  expect((await wristpin('advise', '12')).out).toContain('Shifted by 4 of your own jobs.');
  await wristpin('frequencies', 'off');
  const alone = await posterior();
  expect(alone.jobs).toBe(0);
  expect(alone.p).toBeLessThan(shifted.p);
  expect((await wristpin('advise', '12')).out).not.toContain('your own');
  await wristpin('frequencies', 'on');
  expect(await posterior()).toEqual(shifted);
});

test('a job left out no longer counts, and counted again it is as before', async () => {
  const all = await told();
  expect((await wristpin('frequencies', 'leave-out', '22')).out).toContain('Left out: tag 22');
  expect((await told()).jobs).toBe(3);
  expect(await key()).toMatchObject({ present: 3 });
  await wristpin('frequencies', 'count', '22');
  expect(await told()).toEqual(all);
});

test.each([
  [['offf'], 2, 'off'],
  [['leave-out'], 2, 'wants the job'],
  [['leave-out', '99'], 1, 'There is no job “99”'],
  [['leave-out', '12'], 1, 'not among the jobs that can count'],
  [['on', '12'], 2, 'too much'],
])('called wrongly (%j) it changes nothing and says why', async (args, code, words) => {
  const before = await told();
  const answer = await wristpin('frequencies', ...args);
  expect(answer.code).toBe(code);
  expect(answer.err).toContain(words);
  expect(await told()).toEqual(before);
});
