import { afterAll, beforeAll, expect, test } from 'vitest';
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
  expect((await server.get('/api/past')).json).toEqual({ finished: [], minutes: {} });
  await server.store.append(takenApart(30, 6));
  const answer = await server.get('/api/past');
  expect(answer.json).toEqual({ finished: [], minutes: { muffler: 6 } });
});
