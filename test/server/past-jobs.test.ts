import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { entry, openEntry, startServer, type TestServer, uuid } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

/** A job whose muffler came off so many minutes after its guard. */
const takenApart = (n: number, minutes: number) => {
  const job = uuid(0xa0 + n);
  const step = (place: number, id: string) =>
    entry(
      100 * n + place,
      'step',
      { step: id, stage: 'teardown', title: id, component: id, state: 'done' },
      job,
    );
  return [
    { ...openEntry(100 * n, n, job) },
    entry(100 * n + 1, 'intake', { architecture: 'overhead-valve', owner: `Owner ${n}` }, job),
    step(2, 'muffler-guard'),
    step(2 + 60 * minutes, 'muffler'),
  ];
};

test('what the shop’s jobs tell of minutes is a median of three, without owner or job', async () => {
  await server.store.append([...takenApart(1, 5), ...takenApart(2, 9)]);
  expect((await server.get('/api/past')).json).toEqual({ counts: [], jobs: {}, minutes: {} });
  await server.store.append(takenApart(30, 6));
  const answer = await server.get('/api/past');
  expect(answer.json).toEqual({ counts: [], jobs: {}, minutes: { muffler: 6 } });
});

describe('what the finished jobs tell of faults', () => {
  const key = 'flywheel-key-part-sheared';
  const ids = [1, 2, 3].map((n) => uuid(0xb0 + n));
  const finished = (job: string, n: number) => [
    openEntry(5000 + 10 * n, 60 + n, job),
    entry(
      5001 + 10 * n,
      'intake',
      { architecture: 'side-valve', owner: 'Jo Invented', machine: 'Mower' },
      job,
    ),
    entry(
      5002 + 10 * n,
      'decision',
      { about: 'fault', which: key, title: key, choice: 'repaired', reason: '' },
      job,
    ),
    entry(5003 + 10 * n, 'hand-over', { receivedBy: 'Jo Invented', declined: [], nextDue: [] }, job),
  ];
  const counted = (n: number, counted: boolean) =>
    entry(6000 + n, 'learning', { job: ids[1], counted, reason: '' }, 'shop');
  const past = async (query = '') => (await server.get(`/api/past${query}`)).json;
  const ofKey = (told: { counts: { fault: string }[] }) => told.counts.find(({ fault }) => fault === key);

  test('is counted by kind of engine, and holds no owner, no job and no machine', async () => {
    await server.store.append([...finished(ids[0]!, 1), ...finished(ids[2]!, 3)]);
    const two = await past();
    await server.store.append(finished(ids[1]!, 2));
    const three = await past();
    expect([two.jobs, three.jobs]).toEqual([{ 'side-valve': 2 }, { 'side-valve': 3 }]);
    expect(ofKey(three)).toEqual({ architecture: 'side-valve', fault: key, found: 3, present: 3, absent: 0 });
    for (const word of ['Jo', 'Mower', ids[0]!]) expect(JSON.stringify(three)).not.toContain(word);

    // a job left out is as if it had never been counted, one that is asked about does not speak for itself
    await server.store.append([counted(1, false)]);
    expect(await past()).toEqual(two);
    await server.store.append([counted(2, true)]);
    expect(await past()).toEqual(three);
    expect(await past(`?without=${ids[1]}`)).toEqual(two);
    expect((await past(`?without=${ids[0]}`)).jobs).toEqual({ 'side-valve': 2 });
  });

  test('a job opened again, its hand-over struck, is no finished one', async () => {
    const strike = { entry: uuid(1000 + 5033), reason: 'It came back.' };
    await server.store.append([entry(7000, 'strike', strike, ids[2]!)]);
    expect((await past()).jobs).toEqual({ 'side-valve': 2 });
  });

  test('the list of them says which are left out', async () => {
    await server.store.append([entry(7001, 'learning', { job: ids[0], counted: false, reason: '' }, 'shop')]);
    const told = (await server.get('/api/past/jobs')).json;
    expect([told.all, told.leftOut]).toEqual([2, 1]);
    expect(told.jobs.find((j: { job: string }) => j.job === ids[0])).toEqual({
      job: ids[0],
      tag: 61,
      machine: 'Mower',
      architecture: 'side-valve',
      at: entry(5013, '', {}).at,
      counted: false,
      invented: false,
    });
  });
});
