import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { openEntry, startServer, type TestServer } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

test('the server says what it is and where its store stands', async () => {
  const { status, json } = await server.get('/api/health');
  expect(status).toBe(200);
  expect(json).toEqual({ ok: true, version: '1.2.3', store: 'sqlite', place: 'here', head: 0 });
  await server.store.append([openEntry(1, 12)]);
  expect((await server.get('/api/health')).json.head).toBe(1);
});

test('the catalog is named by the hash of its content, as a page can work it out for its own copy', async () => {
  const hash = createHash('sha256').update(JSON.stringify(builtInCatalog())).digest('hex');
  expect((await server.get('/api/catalog')).json).toEqual({ version: '1.2.3', hash });
});

test('what the log says now is never taken from a cache', async () => {
  for (const path of ['/api/health', '/api/jobs', '/api/jobs/shop/entries', '/api/catalog']) {
    expect((await server.get(path)).headers.get('cache-control'), path).toBe('no-store');
  }
});

test('a store that fails is told in outline, and in full where the server runs', async () => {
  const other = await startServer();
  await other.store.close();
  const answer = await other.get('/api/jobs');
  expect(answer.status).toBe(503);
  expect(answer.json.error.code).toBe('closed');
  expect(other.logged.join('\n')).toContain('GET /api/jobs');
  await other.close();
});
