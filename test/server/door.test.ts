import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { placeOf } from '../../src/server/door.js';
import { jobA, openEntry, rawAsk, startServer, type TestServer } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const open = () => JSON.stringify({ entries: [openEntry(1, 12)] });

describe('the name under which the server is asked', () => {
  test.each(['localhost', '127.0.0.1', '[::1]', 'LOCALHOST'])('%s with our port is ours', async (name) => {
    const answer = await rawAsk(`${server.url}/api/health`, { headers: { host: `${name}:${server.port}` } });
    expect(answer.status).toBe(200);
  });

  test.each(['attacker.example', 'localhost.attacker.example', '127.0.0.1.attacker.example', '192.168.0.9'])(
    '%s is refused, whatever it resolves to',
    async (name) => {
      const answer = await rawAsk(`${server.url}/api/jobs`, { headers: { host: `${name}:${server.port}` } });
      expect(answer.status).toBe(403);
      expect(JSON.parse(answer.body).error).toEqual({
        code: 'wrong-host',
        message: `Wristpin answers under its own address only: on this computer open http://127.0.0.1:${server.port} instead.`,
      });
    },
  );

  test('our name with another port is refused, and so is none', async () => {
    for (const host of [`localhost:${server.port + 1}`, 'localhost']) {
      expect((await rawAsk(`${server.url}/api/jobs`, { headers: { host } })).status).toBe(403);
    }
  });

  test.each(['', 'a b', '127.0.0.1@attacker.example'])(
    'a Host that is none (“%s”) is refused',
    async (name) => {
      const answer = await rawAsk(`${server.url}/api/jobs`, { headers: { host: `${name}:${server.port}` } });
      expect(answer.status).toBe(400);
      expect(JSON.parse(answer.body).error.code).toBe('bad-request');
    },
  );

  test('the pages are behind the same door as the log', async () => {
    const answer = await rawAsk(`${server.url}/`, { headers: { host: `attacker.example:${server.port}` } });
    expect(answer.status).toBe(403);
  });
});

describe('where a writing request comes from', () => {
  const post = (headers: Record<string, string>) =>
    rawAsk(`${server.url}/api/entries`, { method: 'POST', headers, body: open() });

  test('another page’s origin is refused and nothing is stored', async () => {
    for (const origin of ['https://attacker.example', 'null', `http://localhost:${server.port}`]) {
      const answer = await post({ origin });
      expect(answer.status, origin).toBe(403);
      expect(JSON.parse(answer.body).error.code).toBe('wrong-origin');
    }
    expect((await post({ 'sec-fetch-site': 'cross-site' })).status).toBe(403);
    expect((await post({ 'sec-fetch-site': 'same-site' })).status).toBe(403);
    expect(await server.store.entries(jobA)).toEqual([]);
  });

  test('our own page and a command without an origin are let in', async () => {
    expect((await post({ origin: server.url, 'sec-fetch-site': 'same-origin' })).status).toBe(200);
    expect((await post({})).status).toBe(200);
  });

  test('removing is a writing request too', async () => {
    const answer = await rawAsk(`${server.url}/api/demo`, {
      method: 'DELETE',
      headers: { origin: 'https://attacker.example' },
    });
    expect(answer.status).toBe(403);
  });
});

test('on port 80 a browser names no port', () => {
  const header = (name: string) => (name === 'host' ? 'localhost' : undefined);
  const from = '127.0.0.1';
  expect(placeOf({ method: 'GET', port: 80, from, header })).toBe('this computer');
  expect(() => placeOf({ method: 'GET', port: 81, from, header })).toThrow(/its own address only/);
});
