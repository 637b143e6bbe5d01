import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openPostgres } from '../../src/store/index.js';
import { startPostgres, type TestPostgres } from '../support/postgres.js';
import { jobA, note, openEntry, startServer, type TestServer } from './support.js';

const started = await startPostgres();
const postgres = 'reason' in started ? undefined : started;
if ('reason' in started) console.warn(`PostgreSQL is left out: ${started.reason}`);

/** Two servers, as two benches of one shop would run them. */
describe.skipIf(!postgres)('two servers over one PostgreSQL', () => {
  let one: TestServer;
  let other: TestServer;
  beforeAll(async () => {
    const url = await (postgres as TestPostgres).newDatabase();
    const clock = { now: () => '2026-03-02T09:00:00.000Z' };
    one = await startServer({ store: await openPostgres(url, clock), storeKind: 'postgres' });
    other = await startServer({ store: await openPostgres(url, clock), storeKind: 'postgres' });
  });
  afterAll(async () => {
    await one.close();
    await other.close();
    await postgres?.stop();
  });

  test('say which kind of store they have', async () => {
    expect((await one.get('/api/health')).json).toMatchObject({ ok: true, store: 'postgres' });
  });

  test('show each other’s entries, and tell their pages of them', async () => {
    await one.post('/api/entries', { entries: [openEntry(1, 12)] });
    const page = await fetch(`${other.url}/api/events`);
    const reader = page.body!.pipeThrough(new TextDecoderStream()).getReader();
    const { head } = (await one.post('/api/entries', { entries: [note(2, 'said at the other bench')] })).json;
    // an event of the first entry, or of where the store stands, may still come before it
    let heard = '';
    const told = () =>
      [...heard.matchAll(/event: changed\n(?:id: .*\n)?data: (\{.*\})/g)].map((m) => JSON.parse(m[1]!));
    while (!told().some((e) => e.seq >= head && e.jobs.includes(jobA))) heard += (await reader.read()).value;
    expect(heard).toContain('event: changed');
    await reader.cancel();
    const { entries } = (await other.get(`/api/jobs/${jobA}/entries`)).json;
    expect(entries).toHaveLength(2);
  });

  test('one id with two contents, sent to both at once, is kept once', async () => {
    const answers = await Promise.all([
      one.post('/api/entries', { entries: [note(9, 'this')] }),
      other.post('/api/entries', { entries: [note(9, 'that')] }),
    ]);
    expect(answers.map((answer) => answer.status).sort()).toEqual([200, 409]);
  });
});
