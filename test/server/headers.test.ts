import { readFileSync } from 'node:fs';
import { html } from 'hono/html';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { page } from '../../src/server/small-page.js';
import { jobA, openEntry, rawAsk, startServer, type TestServer } from './support.js';

const ours = '192.0.2.7';
let server: TestServer;
beforeAll(async () => {
  server = await startServer({ network: { addresses: () => [ours] } });
  await server.post('/api/entries', { entries: [openEntry(1, 12)] });
});
afterAll(() => server.close());

// Content Security Policy Level 3, section 6.1.3: what no directive names falls back to default-src
test.each([
  ['an answer of the API', '/api/jobs', 200],
  ['a refusal of the API', '/api/nothing', 404],
  ['a picture that is not there', `/api/pictures/${'0'.repeat(64)}`, 404],
  ['a table', `/api/jobs/${jobA}/tables/parts.csv`, 200],
  ['a file that is not there', '/nothing.js', 404],
  ['a printed record', `/api/jobs/${jobA}/record.pdf`, 200],
])('%s may load and run nothing', async (_what, path, status) => {
  const { headers, status: got } = await server.get(path);
  expect(got).toBe(status);
  const policy = headers.get('content-security-policy')!;
  expect(policy).toMatch(/^default-src '(none|self)'/);
  expect(policy).not.toMatch(/script-src[^;]*'unsafe-inline'|default-src[^;]*[*]/);
  if (path.startsWith('/api/')) expect(policy).toMatch(/^default-src 'none'/);
  expect(policy).toMatch(/frame-ancestors '(none|self)'/);
  expect(headers.get('x-content-type-options')).toBe('nosniff');
  expect(headers.get('referrer-policy')).toBe('no-referrer');
});

test.each([
  ['one that is not paired', { host: ours }, '/', 401],
  ['one that asks for a pairing page without a code', { host: ours }, '/pair/x', 401],
  ['another name', { host: 'attacker.example' }, '/', 403],
  ['a name that is none', { host: 'a b' }, '/', 400],
])('%s is answered with a policy too', async (_who, { host }, path, status) => {
  const answer = await rawAsk(server.url + path, { headers: { host: `${host}:${server.port}` } });
  expect(answer.status).toBe(status);
  expect(answer.headers['content-security-policy']).toMatch(/^default-src 'none'/);
  expect(answer.headers['x-content-type-options']).toBe('nosniff');
});

test('the pairing page runs nothing, and its form goes to us alone', async () => {
  const { code } = (await server.post('/api/devices/code', {})).json;
  const headers = { host: `${ours}:${server.port}` };
  const answer = await rawAsk(`${server.url}/pair/${code}`, { headers });
  expect(answer.status).toBe(200);
  expect(answer.headers['content-security-policy']).toMatch(/^default-src 'none'.*form-action 'self'/);
  expect(answer.headers['content-security-policy']).not.toContain('script-src');
});

test('a page on this computer reaches nothing but itself', async () => {
  const policy = (await server.get('/')).headers.get('content-security-policy')!;
  expect(policy.split('; ')).toContain("connect-src 'self'");
});

test('a page for a device that is not let in wears the colors of the application, which it is not given', async () => {
  const tokens = readFileSync('src/web/look/tokens.css', 'utf8');
  const worn = [...String(await page('Not paired', html``)).matchAll(/--[a-z-]+: light-dark\([^)]+\);/g)].map(
    ([color]) => color,
  );
  expect(worn.length).toBeGreaterThan(5);
  for (const color of worn) expect(tokens).toContain(color);
});
