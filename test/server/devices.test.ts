import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { placeOf } from '../../src/server/door.js';
import { openEntry, rawAsk, startServer, type TestServer, uuid } from './support.js';

/** An address of the shop's network, from a range that is kept for documents (RFC 5737). */
const ours = '192.0.2.7';
const minutes = (n: number) => new Date(Date.UTC(2026, 2, 2, 9, n));
let now = minutes(0);
let server: TestServer;
beforeAll(async () => {
  server = await startServer({ network: { addresses: () => [ours] }, clock: () => now });
});
afterAll(() => server.close());

type Asked = Parameters<typeof rawAsk>[1];

/** As a device of the shop's network asks: under our address there. */
const fromNetwork = (path: string, { headers, ...rest }: Asked = {}) =>
  rawAsk(server.url + path, { ...rest, headers: { host: `${ours}:${server.port}`, ...headers } });

const begin = async (): Promise<{ code: string; until: string; links: string[] }> =>
  (await server.post('/api/devices/code', {})).json;

const redeem = (code: string, name = 'Phone') =>
  fromNetwork(`/pair/${code}`, {
    method: 'POST',
    headers: { 'content-type': 'application/x-www-form-urlencoded', origin: `http://${ours}:${server.port}` },
    body: `name=${encodeURIComponent(name)}`,
  });

const cookieOf = (answer: Awaited<ReturnType<typeof rawAsk>>): string =>
  answer.headers['set-cookie']![0]!.split(';')[0]!;

async function paired(name = 'Phone'): Promise<string> {
  return cookieOf(await redeem((await begin()).code, name));
}

describe('a device that is not paired', () => {
  test.each([
    '/',
    '/assets/app-1a2b3c.js',
    '/api/jobs',
    '/api/health',
    '/api/events',
    '/api/devices',
    '/pair/x/../..',
  ])('gets 401 and nothing else at %s', async (path) => {
    const answer = await fromNetwork(path);
    expect(answer.status).toBe(401);
    expect(answer.body).toContain('not paired');
    expect(answer.body).not.toContain('<script');
  });

  test('stores nothing', async () => {
    const body = JSON.stringify({ entries: [openEntry(1, 12)] });
    expect((await fromNetwork('/api/entries', { method: 'POST', body })).status).toBe(401);
    expect(await server.store.head()).toBe(0);
  });

  test('is not helped by a token that was made up', async () => {
    for (const token of ['', 'x', 'A'.repeat(43)])
      expect(
        (await fromNetwork('/api/jobs', { headers: { cookie: `wristpin-device=${token}` } })).status,
      ).toBe(401);
  });

  test('may not call itself by this computer’s own names', () => {
    const header = (name: string) => (name === 'host' ? 'localhost:80' : undefined);
    const network = { addresses: () => [ours] };
    expect(() => placeOf({ method: 'GET', port: 80, from: '192.0.2.9', header }, network)).toThrow(
      /own address/,
    );
  });

  test('finds no door under any other name', async () => {
    for (const host of ['192.0.2.8', 'attacker.example'])
      expect((await fromNetwork('/api/jobs', { headers: { host: `${host}:${server.port}` } })).status).toBe(
        403,
      );
  });
});

describe('a code', () => {
  test('lets in one device, which then reads and writes as the bench does', async () => {
    const { code, links } = await begin();
    expect(links).toEqual([`http://${ours}:${server.port}/pair/${code}`]);
    expect((await fromNetwork(`/pair/${code}`)).body).toContain('What is it called?');
    const answer = await redeem(code, 'Phone in the apron');
    expect(answer.status).toBe(303);
    expect(answer.headers['set-cookie']![0]).toMatch(/HttpOnly.*SameSite=Strict/);
    const headers = { cookie: cookieOf(answer) };
    const body = JSON.stringify({ entries: [openEntry(2, 13, uuid(0xd1))] });
    expect((await fromNetwork('/api/entries', { method: 'POST', body, headers })).status).toBe(200);
    expect((await fromNetwork('/', { headers })).status).toBe(200);
    const { here, devices } = JSON.parse((await fromNetwork('/api/devices', { headers })).body);
    expect(here.name).toBe('Phone in the apron');
    expect(devices).toHaveLength(1);
    expect(JSON.stringify(devices)).not.toContain(headers.cookie.split('=')[1]);
    expect((await redeem(code)).status).toBe(401);
  });

  test('that is looked at is not used up', async () => {
    const { code } = await begin();
    await fromNetwork(`/pair/${code}`);
    await fromNetwork(`/pair/${code}`);
    expect((await redeem(code)).status).toBe(303);
  });

  test('is good for ten minutes, and until the next', async () => {
    const first = await begin();
    const second = await begin();
    expect((await redeem(first.code)).status).toBe(401);
    now = minutes(10);
    expect((await redeem(second.code)).status).toBe(401);
    now = minutes(0);
  });

  test('is withdrawn after ten wrong ones', async () => {
    const { code } = await begin();
    for (let n = 0; n < 10; n += 1) expect((await fromNetwork(`/pair/WRONG${n}`)).status).toBe(401);
    expect((await redeem(code)).status).toBe(401);
  });

  test('is not redeemed with more than a name', async () => {
    const { code } = await begin();
    const answer = await fromNetwork(`/pair/${code}`, {
      method: 'POST',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      body: `name=${'x'.repeat(100_000)}`,
    });
    expect(answer.status).toBe(413);
    expect((await redeem(code)).status).toBe(303);
  });

  test('is not redeemed from another page', async () => {
    const { code } = await begin();
    const answer = await fromNetwork(`/pair/${code}`, {
      method: 'POST',
      headers: { origin: 'https://attacker.example' },
      body: 'name=x',
    });
    expect(answer.status).toBe(403);
  });
});

describe('shutting out', () => {
  test('ends what a device may do and what it has open', async () => {
    const headers = { cookie: await paired('Lost phone') };
    const listening = fromNetwork('/api/events', { headers });
    const { devices } = (await server.get('/api/devices')).json;
    const { id } = devices.find((each: { name: string }) => each.name === 'Lost phone');
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect((await server.send('DELETE', `/api/devices/${id}`)).status).toBe(200);
    expect((await listening).status).toBe(200); // it ends: the answer has come to its last byte
    expect((await fromNetwork('/api/jobs', { headers })).status).toBe(401);
    expect((await server.send('DELETE', `/api/devices/${id}`)).status).toBe(404);
  });

  test('is, like letting in, for the bench computer alone', async () => {
    const headers = { cookie: await paired() };
    expect((await fromNetwork('/api/devices/code', { method: 'POST', headers })).status).toBe(403);
    const { here } = JSON.parse((await fromNetwork('/api/devices', { headers })).body);
    expect((await fromNetwork(`/api/devices/${here.id}`, { method: 'DELETE', headers })).status).toBe(403);
  });
});

test('a shop that is not open to its network has no code and answers nobody there', async () => {
  const closed = await startServer();
  expect((await closed.post('/api/devices/code', {})).status).toBe(404);
  expect((await closed.get('/api/devices')).json).toEqual({ open: false, here: null, devices: [] });
  const answer = await rawAsk(`${closed.url}/`, { headers: { host: `${ours}:${closed.port}` } });
  expect(answer.status).toBe(403);
  await closed.close();
});
