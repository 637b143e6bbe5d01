import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { entry, jobA, jobB, note, openEntry, rawAsk, startServer, type TestServer, uuid } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const list = async () => (await server.get('/api/jobs')).json;

describe('the list of jobs', () => {
  test('of an empty store is empty', async () => {
    expect(await list()).toEqual({ jobs: [], head: 0 });
  });

  test('shows each job at a glance, and the shop’s own log is none', async () => {
    const complaint = `Starts, then  dies.\n${'It smokes. '.repeat(40)}`;
    const intake = { machine: 'Pump', architecture: 'side-valve', complaint };
    await server.store.append([
      openEntry(1, 12),
      entry(2, 'intake', intake),
      entry(3, 'setting', { key: 'currency', value: 'USD' }, 'shop'),
      openEntry(4, 13, jobB, true),
    ]);
    const { jobs, head } = await list();
    expect(head).toBe(4);
    expect(jobs).toEqual([
      {
        id: jobA,
        first: 1,
        last: 2,
        count: 2,
        summary: {
          id: jobA,
          tag: 12,
          title: 'Tag 12',
          machine: 'Pump',
          architecture: 'side-valve',
          complaint: expect.stringMatching(/^Starts, then dies\. It smokes\..*…$/),
          invented: false,
          opened: openEntry(1, 12).at,
          lastAt: entry(2, 'intake', {}).at,
          handedOver: false,
          last: expect.objectContaining({ stage: 'intake', page: 'intake', by: 'bench' }),
        },
      },
      {
        id: jobB,
        first: 4,
        last: 4,
        count: 1,
        summary: expect.objectContaining({ tag: 13, invented: true }),
      },
    ]);
    expect([...jobs[0].summary.complaint]).toHaveLength(140);
  });

  test('follows the log: a hand-over shows, and struck it shows no more', async () => {
    const handOver = { receivedBy: 'The owner', declined: [], nextDue: [] };
    const [first] = (await server.post('/api/entries', { entries: [entry(10, 'hand-over', handOver)] })).json
      .stored;
    expect(first).toBe(uuid(1010));
    expect((await list()).jobs[0].summary.handedOver).toBe(true);
    const strike = entry(11, 'strike', { entry: first, reason: 'The owner came back.' });
    await server.post('/api/entries', { entries: [strike] });
    expect((await list()).jobs[0]).toMatchObject({ count: 4, summary: { handedOver: false } });
  });
});

describe('a list that is asked for in part', () => {
  test('by state, by tag, page by page', async () => {
    const tags = async (query: string) => {
      const { jobs, beyond } = (await server.get(`/api/jobs?${query}`)).json;
      return [jobs.map((j: { summary: { tag: number } }) => j.summary.tag), beyond];
    };
    expect(await tags('invented=true')).toEqual([[13], undefined]);
    expect(await tags('tag=12')).toEqual([[12], undefined]);
    expect(await tags('state=handed-over')).toEqual([[], undefined]);
    const [first, beyond] = await tags('most=1');
    expect([first, await tags(`most=1&beyond=${beyond}`)]).toEqual([[12], [[13], 4]]);
    expect((await server.get('/api/jobs/counts')).json).toMatchObject({ all: 2, open: 2, invented: 1 });
  });

  test.each(['state=lost', 'most=0', 'most=501', 'tag=x', 'color=red', 'words=pump'])(
    '“%s” is refused',
    async (query) => {
      const answer = await server.get(`/api/jobs?${query}`);
      expect(answer.status).toBe(422);
      expect(answer.json.error.field).toBe(query.split('=')[0]);
    },
  );

  test('comes compressed to whoever takes it so', async () => {
    const answer = await rawAsk(server.url, { path: '/api/jobs', headers: { 'accept-encoding': 'gzip' } });
    expect(answer.headers['content-encoding']).toBe('gzip');
    const plain = await rawAsk(server.url, { path: '/api/jobs' });
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(JSON.parse(plain.body)).toEqual(await list());
  });
});

describe('the log of a job', () => {
  test('is given from where the page stands', async () => {
    const all = (await server.get(`/api/jobs/${jobA}/entries`)).json;
    const tail = (await server.get(`/api/jobs/${jobA}/entries?after=${all.entries[1].seq}`)).json;
    expect(tail.entries).toEqual(all.entries.slice(2));
    expect(tail.head).toBe(all.head);
    expect((await server.get(`/api/jobs/${jobA}/entries?after=${all.head}`)).json.entries).toEqual([]);
  });

  test.each(['-1', '1.5', 'x', ''])('after “%s” is refused', async (after) => {
    const answer = await server.get(`/api/jobs/${jobA}/entries?after=${after}`);
    expect(answer.status).toBe(422);
    expect(answer.json.error.field).toBe('after');
  });

  test('that does not exist is not an empty one', async () => {
    const answer = await server.get(`/api/jobs/${uuid(99)}/entries`);
    expect(answer.status).toBe(404);
    expect(answer.json.error).toMatchObject({
      code: 'not-found',
      message: expect.stringContaining(uuid(99)),
    });
  });
});

test('the store’s own order is what “after” counts in: an entry written earlier and sent later is not missed', async () => {
  const { head } = await list();
  await server.store.append([note(5, 'written before the hand-over, sent after it')]);
  const { entries } = (await server.get(`/api/jobs/${jobA}/entries?after=${head}`)).json;
  expect(entries.map((e: { id: string }) => e.id)).toEqual([uuid(1005)]);
});
