import { join } from 'node:path';
import { Hono } from 'hono';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DoorEnv } from '../../src/server/door.js';
import { KeepingWatch } from '../../src/server/keeping.js';
import { News } from '../../src/server/news.js';
import { Pairing } from '../../src/server/pairing.js';
import { eventRoutes } from '../../src/server/routes/events.js';
import { openSqlite } from '../../src/store/index.js';
import { jobA, jobB, note, openEntry, startServer, type TestServer } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

interface Heard {
  readonly id: string;
  readonly event: string;
  readonly data: { readonly seq: number; readonly jobs: readonly string[] };
}

/** Listens as a page does, and gives the events one by one. */
async function listen(url: string, headers: Record<string, string> = {}) {
  const control = new AbortController();
  const response = await fetch(`${url}/api/events`, { headers, signal: control.signal });
  const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  const next = async (): Promise<Heard | undefined> => {
    for (;;) {
      const end = rest.indexOf('\n\n');
      if (end >= 0) {
        const block = rest.slice(0, end);
        rest = rest.slice(end + 2);
        if (!block.startsWith(':')) return parse(block);
        continue;
      }
      const { done, value } = await reader.read();
      if (done) return undefined;
      rest += value;
    }
  };
  return { response, next, leave: () => control.abort() };
}

function parse(block: string): Heard {
  const fields = Object.fromEntries(block.split('\n').map((line) => line.split(/: (.*)/s).slice(0, 2)));
  return { id: fields.id, event: fields.event, data: JSON.parse(fields.data) };
}

describe('an open page', () => {
  test('is told where the store stands, then which jobs change', async () => {
    const page = await listen(server.url);
    expect(page.response.headers.get('content-type')).toContain('text/event-stream');
    expect(await page.next()).toEqual({ id: '0', event: 'changed', data: { seq: 0, jobs: [] } });
    await server.post('/api/entries', { entries: [openEntry(1, 12), openEntry(2, 13, jobB)] });
    expect(await page.next()).toEqual({ id: '2', event: 'changed', data: { seq: 2, jobs: [jobA, jobB] } });
    await server.post('/api/entries', { entries: [note(3, 'a')] });
    expect(await page.next()).toMatchObject({ data: { seq: 3, jobs: [jobA] } });
    page.leave();
  });

  test('hears nothing of an entry that was only sent again', async () => {
    const page = await listen(server.url);
    await page.next();
    await server.post('/api/entries', { entries: [note(3, 'a')] });
    await server.post('/api/entries', { entries: [note(4, 'b', jobB)] });
    expect(await page.next()).toMatchObject({ data: { jobs: [jobB] } });
    page.leave();
  });

  test('that lost the line is told what it missed', async () => {
    await server.store.append([note(5, 'c'), note(6, 'd')]);
    const head = await server.store.head();
    const page = await listen(server.url, { 'last-event-id': String(head - 2) });
    expect(await page.next()).toMatchObject({ id: String(head), data: { seq: head, jobs: [jobA] } });
    page.leave();
  });

  test('that saw more than the store holds reads everything anew', async () => {
    const page = await listen(server.url, { 'last-event-id': '999999' });
    expect((await page.next())?.data.jobs).toEqual([jobA, jobB]);
    page.leave();
  });

  test('hears of what another program wrote into the same file', async () => {
    const page = await listen(server.url);
    await page.next();
    const other = await openSqlite(join(server.folder, 'shop.db'), { now: () => '2026-03-02T10:00:00.000Z' });
    await other.append([note(7, 'from beside')]);
    await other.close();
    expect(await page.next()).toMatchObject({ data: { jobs: [jobA] } });
    page.leave();
  });

  test('hears of the removal of invented jobs', async () => {
    const invented = '01900000-0000-7000-8000-00000000dead';
    await server.store.append([openEntry(8, 99, invented, true)]);
    const page = await listen(server.url);
    await page.next();
    await server.send('DELETE', '/api/demo');
    expect((await page.next())?.data.jobs).toEqual([invented]);
    page.leave();
  });
});

test('all pages are told, and one that left disturbs none', async () => {
  const pages = await Promise.all([listen(server.url), listen(server.url), listen(server.url)]);
  for (const page of pages) await page.next();
  pages[0]!.leave();
  await server.post('/api/entries', { entries: [note(30, 'e')] });
  expect(await pages[1]!.next()).toMatchObject({ data: { jobs: [jobA] } });
  expect(await pages[2]!.next()).toMatchObject({ data: { jobs: [jobA] } });
  for (const page of pages) page.leave();
});

test('a silent line is kept alive by comments', async () => {
  const news = new News(server.store, await server.store.head(), () => {});
  const app = new Hono<DoorEnv>();
  app.use(async (c, next) => {
    c.set('visitor', { place: 'this computer' });
    await next();
  });
  const keeping = new KeepingWatch(server.store, () => {});
  const pairing = new Pairing(server.store, () => new Date());
  app.route('/', eventRoutes(server.store, news, pairing, keeping, 20));
  const { body } = await app.request('/');
  const reader = body!.pipeThrough(new TextDecoderStream()).getReader();
  let said = '';
  while (said.split(': still here\n\n').length < 3) said += (await reader.read()).value;
  expect(said.startsWith('event: changed\n')).toBe(true);
  await reader.cancel();
  keeping.end();
  news.end();
});

test('a server that stops lets its pages go at once', async () => {
  const other = await startServer();
  const page = await listen(other.url);
  await page.next();
  // a page that is not let go is cut off in the end, and reads an error instead of an end
  await other.close();
  expect(await page.next()).toBeUndefined();
});
