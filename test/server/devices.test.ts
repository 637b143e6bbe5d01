import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
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
    // the page counts what this very device still holds, in one script that its policy names; nothing of the application
    const scripts = [...answer.body.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)];
    expect(scripts.length).toBeLessThanOrEqual(1);
    expect(answer.body).not.toMatch(/<script[^>]*\ssrc/);
    for (const [, code = ''] of scripts) {
      const hash = createHash('sha256').update(code).digest('base64');
      expect(answer.headers['content-security-policy']).toContain(`script-src 'sha256-${hash}'`);
    }
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
    // Lax, so that a link on another page opens the shop as the paired device; a strict one was kept back there
    expect(answer.headers['set-cookie']![0]).toMatch(/HttpOnly.*SameSite=Lax/);
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

  // it was "is withdrawn after ten wrong ones": so any page of a foreign site could withdraw it by ten requests
  test('stays good however many wrong ones are tried, and the bench computer alone withdraws it', async () => {
    const { code } = await begin();
    for (let n = 0; n < 30; n += 1) expect((await fromNetwork(`/pair/WRONG${n}`)).status).toBe(401);
    for (const asked of [
      { headers: { host: `127.0.0.1:${server.port}`, origin: 'https://attacker.example' } },
      { headers: { 'sec-fetch-site': 'cross-site', host: `127.0.0.1:${server.port}` } },
    ])
      for (const method of ['POST', 'DELETE'])
        expect((await rawAsk(`${server.url}/api/devices/code`, { method, ...asked })).status).toBe(403);
    expect((await fromNetwork('/api/devices/code', { method: 'DELETE' })).status).toBe(401);
    expect((await rawAsk(`${server.url}/api/devices/code`)).status).toBe(404); // looking asks for none
    expect((await fromNetwork(`/pair/${code}`)).status).toBe(200);
    expect((await server.send('DELETE', '/api/devices/code')).status).toBe(200);
    expect((await redeem(code)).status).toBe(401);
  });

  test('cannot be guessed: ten signs out of thirty-one, another each time', async () => {
    const codes = [];
    for (let n = 0; n < 20; n += 1) codes.push((await begin()).code);
    for (const code of codes) expect(code).toMatch(/^[A-HJ-NP-Z2-9]{10}$/);
    expect(new Set(codes).size).toBe(20);
    expect(new Set(codes.join('')).size).toBeGreaterThan(20);
  });

  const large = {
    method: 'POST',
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    body: `name=${'x'.repeat(100_000)}`,
  };

  test('is not redeemed with more than a name', async () => {
    const { code } = await begin();
    expect((await fromNetwork(`/pair/${code}`, large)).status).toBe(413);
    expect((await redeem(code)).status).toBe(303);
  });

  test('that is none is answered 401 before anything of what is sent with it is read', async () => {
    for (const path of ['/pair/', '/pair/WRONG']) expect((await fromNetwork(path, large)).status).toBe(401);
  });

  test('redeemed by a form that cannot be read is not used up', async () => {
    const { code } = await begin();
    const headers = { 'content-type': 'multipart/form-data' };
    const answer = await fromNetwork(`/pair/${code}`, { method: 'POST', headers, body: 'x' });
    expect(answer.status).toBe(400);
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

describe('a token', () => {
  test('is of 32 bytes, and neither it nor its hash stands in the list of devices', async () => {
    const token = (await paired('Phone with a token')).split('=')[1]!;
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    const list = JSON.stringify((await server.get('/api/devices')).json);
    for (const secret of [token, createHash('sha256').update(token).digest('hex')])
      expect(list).not.toContain(secret);
    expect(list).not.toMatch(/[0-9a-f]{64}/);
  });

  test('stands nowhere in the store’s files, nor does what is made of it for sending', async () => {
    const cookie = await paired('Phone whose files are read');
    const { carry } = JSON.parse(
      (await fromNetwork('/api/devices/here', { method: 'POST', headers: { cookie } })).body,
    );
    await server.store.backup(join(server.folder, 'copy.db'));
    const files = readdirSync(server.folder).filter((name) => name.startsWith('shop.db'));
    expect(files).not.toEqual([]);
    const kept = files.map((name) => readFileSync(join(server.folder, name), 'latin1')).join('');
    expect(kept).toContain('Phone whose files are read');
    for (const secret of [cookie.split('=')[1]!, carry]) expect(kept).not.toContain(secret);
  });
});

describe('a device', () => {
  const devices = async () =>
    (await server.get('/api/devices')).json.devices as { id: string; name: string }[];

  test('that is paired again is there once, and keeps no second way in', async () => {
    const cookie = await paired('Paired twice');
    const { code } = await begin();
    const again = await fromNetwork(`/pair/${code}`, {
      method: 'POST',
      headers: { 'content-type': 'application/x-www-form-urlencoded', cookie },
      body: 'name=Paired+twice',
    });
    expect(again.status).toBe(303);
    expect((await devices()).filter(({ name }) => name.startsWith('Paired twice'))).toHaveLength(1);
    expect((await fromNetwork('/api/jobs', { headers: { cookie } })).status).toBe(401);
  });

  test('has a name of its own among those of other devices', async () => {
    for (let n = 0; n < 3; n += 1) await paired('One of three');
    const names = (await devices()).map(({ name }) => name).filter((name) => name.startsWith('One of three'));
    expect(names).toEqual(['One of three', 'One of three 2', 'One of three 3']);
  });

  test('says when it was last seen', async () => {
    const cookie = await paired('Seen phone');
    now = minutes(4);
    await fromNetwork('/api/jobs', { headers: { cookie } });
    now = minutes(0);
    const seen = async () => (await devices()).find(({ name }) => name === 'Seen phone');
    await expect.poll(seen).toMatchObject({ seen: minutes(4).toISOString() });
  });

  test('that opens its used-up link again is led to the shop', async () => {
    const { code } = await begin();
    const cookie = cookieOf(await redeem(code, 'Comes back'));
    const answer = await fromNetwork(`/pair/${code}`, { headers: { cookie } });
    expect([answer.status, answer.headers.location]).toEqual([303, '/']);
  });
});

describe('a page whose own address is gone', () => {
  const other = '192.0.2.99';
  const old = `http://${other}:1`;

  test('sends what it wrote to another one, with a token that is good for that alone', async () => {
    const cookie = await paired('Moved phone');
    const here = await fromNetwork('/api/devices/here', { method: 'POST', headers: { cookie } });
    const { carry, origins } = JSON.parse(here.body);
    expect(origins).toEqual([`http://${ours}:${server.port}`]);
    const headers = { origin: old, 'sec-fetch-site': 'cross-site', authorization: `Bearer ${carry}` };
    const asked = await fromNetwork('/api/entries', { method: 'OPTIONS', headers: { origin: old } });
    expect([asked.status, asked.headers['access-control-allow-origin']]).toEqual([204, '*']);
    expect(asked.headers['access-control-allow-credentials']).toBeUndefined();
    const body = JSON.stringify({ entries: [openEntry(70, 170, uuid(0xe1))] });
    const sent = await fromNetwork('/api/entries', { method: 'POST', headers, body });
    expect([sent.status, sent.headers['access-control-allow-origin']]).toEqual([200, '*']);
    for (const path of ['/api/jobs', '/api/devices', '/'])
      expect((await fromNetwork(path, { headers })).status).toBe(401);

    const over = await fromNetwork('/api/devices/over', { method: 'POST', headers });
    const { path } = JSON.parse(over.body);
    const stepped = await fromNetwork(path);
    expect([stepped.status, stepped.headers.location]).toEqual([303, '/']);
    const now = { cookie: cookieOf(stepped) };
    const known = JSON.parse((await fromNetwork('/api/devices', { headers: now })).body);
    expect(known.here.name).toBe('Moved phone'); // the device that it was, and not paired anew
    expect((await fromNetwork(path)).status).toBe(401); // once
    expect((await fromNetwork('/api/entries', { method: 'POST', headers, body })).status).toBe(401);
  });

  test('without that token sends nothing', async () => {
    const cookie = await paired('Of another site');
    const token = cookie.split('=')[1]!;
    const body = JSON.stringify({ entries: [openEntry(71, 171, uuid(0xe2))] });
    for (const bearer of [token, 'A'.repeat(43)]) {
      const headers = { origin: old, authorization: `Bearer ${bearer}` };
      expect((await fromNetwork('/api/entries', { method: 'POST', headers, body })).status).toBe(401);
    }
    const withCookie = { origin: old, cookie };
    expect((await fromNetwork('/api/entries', { method: 'POST', headers: withCookie, body })).status).toBe(
      403,
    );
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
