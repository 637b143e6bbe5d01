import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { RawEntry } from '../../../src/job/index.js';
import { browserWindow, fakeShop, freshStorage, until } from './fake-shop.js';

const job = '0198c0de-0000-7000-8000-000000000001';
type Tell = (event: { data: string }) => void;
let tells: Record<string, Tell> = {};

beforeEach(() => {
  tells = {};
  vi.resetModules();
  vi.stubGlobal('indexedDB', freshStorage());
  vi.stubGlobal('window', browserWindow());
  vi.stubGlobal(
    'EventSource',
    class {
      addEventListener(name: string, tell: Tell) {
        tells[name] = tell;
      }
    },
  );
});
afterEach(() => vi.unstubAllGlobals());

test('a change made on another device makes the job and the list stale and no other job; what the jobs taught when that is another', async () => {
  const { followChanges, queries } = await import('../../../src/web/data/queries.js');
  followChanges();
  for (const key of [['entries', job], ['entries', 'other'], ['jobs'], ['past']])
    queries.setQueryData(key, []);
  tells.changed?.({ data: JSON.stringify({ jobs: [job] }) });
  const stale = (key: string[]) => queries.getQueryState(key)?.isInvalidated;
  expect(stale(['entries', job])).toBe(true);
  expect(stale(['jobs'])).toBe(true);
  expect(stale(['entries', 'other'])).toBe(false);
  expect(stale(['past'])).toBe(false);
  tells.learned?.({ data: '{}' });
  expect(stale(['past'])).toBe(true);
});

test('an acknowledged line is among the known ones before the outbox lets it go', async () => {
  const shop = fakeShop();
  const { followChanges, queries } = await import('../../../src/web/data/queries.js');
  const { outboxNow, write } = await import('../../../src/web/data/outbox.js');
  followChanges();
  queries.setQueryData(['entries', job], []);
  const inBetween: number[] = [];
  queries.getQueryCache().subscribe(() => {
    const known = queries.getQueryData<RawEntry[]>(['entries', job]) ?? [];
    inBetween.push(known.length + outboxNow().waiting.length);
  });
  const entry = await write(job, 'note', { stage: 'intake', words: 'one' });
  await until(() => expect(outboxNow().waiting).toEqual([]));
  expect(shop.kept.map(({ id }) => id)).toEqual([entry.id]);
  expect(queries.getQueryData<RawEntry[]>(['entries', job])?.map(({ id }) => id)).toEqual([entry.id]);
  expect(inBetween.length).toBeGreaterThan(0);
  expect(Math.min(...inBetween)).toBeGreaterThanOrEqual(1);
});

test('a line left by an earlier visit and acknowledged before its job was read does not stand for the whole job', async () => {
  const shop = fakeShop();
  const { entriesQuery, followChanges, queries } = await import('../../../src/web/data/queries.js');
  const { outboxNow, write } = await import('../../../src/web/data/outbox.js');
  followChanges();
  const left = await write(job, 'note', { stage: 'intake', words: 'left by an earlier visit' });
  await until(() => expect(outboxNow().waiting).toEqual([]));
  const before = { ...left, id: '0198c0de-0000-7000-8000-0000000000aa' };
  shop.answer = () => new Response(JSON.stringify({ entries: [before, left] }));
  const lines = await queries.fetchQuery({ ...entriesQuery(job), staleTime: 30_000 });
  expect(lines.map(({ id }) => id)).toEqual([before.id, left.id]);
});

test('a job’s lines are asked of the store and stay the same objects', async () => {
  const line = { id: 'a', job, at: '2026-11-28T10:00:00+00:00', by: 'b', kind: 'note', v: 1, body: {} };
  const shop = fakeShop();
  shop.answer = () => new Response(JSON.stringify({ entries: [line] }));
  const { entriesQuery } = await import('../../../src/web/data/queries.js');
  const first = await entriesQuery(job).queryFn();
  const again = await entriesQuery(job).queryFn();
  expect(shop.asked).toEqual(Array(2).fill(`GET /api/jobs/${job}/entries`));
  expect(again[0]).toBe(first[0]);
});
