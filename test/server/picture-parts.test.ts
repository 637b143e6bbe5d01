import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Uploads } from '../../src/server/uploads.js';
import { StoreError } from '../../src/store/index.js';
import { picture, startServer, type TestServer } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const put = (name: string, at: number | string, of: number | string, part: Uint8Array, to = server) =>
  to.send('PUT', `/api/pictures/${name}/parts?at=${at}&of=${of}`, part);
const state = async (name: string) => (await server.get(`/api/pictures/${name}/parts`)).json;

describe('a picture in parts', () => {
  test('is the store’s only when all of it has come, and then byte for byte', async () => {
    const bytes = await picture('jpeg', { seed: 31 });
    const name = hash(bytes);
    expect(await state(name)).toEqual({ whole: false, have: 0 });
    expect((await put(name, 0, bytes.length, bytes.subarray(0, 500))).json).toEqual({
      whole: false,
      have: 500,
    });
    expect(await state(name)).toEqual({ whole: false, have: 500 });
    expect(await server.store.hasPicture(name)).toBe(false);
    expect((await put(name, 500, bytes.length, bytes.subarray(500))).json).toEqual({
      whole: true,
      have: bytes.length,
    });
    expect(Buffer.compare((await server.get(`/api/pictures/${name}`)).bytes, bytes)).toBe(0);
    expect(await state(name)).toEqual({ whole: true, have: 0 });
  });

  test('sent twice, left out or of another length changes nothing and is told from where on it is wanted', async () => {
    const bytes = await picture('png', { seed: 32 });
    const name = hash(bytes);
    await put(name, 0, bytes.length, bytes.subarray(0, 400));
    for (const [at, of] of [
      [0, bytes.length],
      [900, bytes.length],
      [400, bytes.length + 1],
    ] as const)
      expect((await put(name, at, of, bytes.subarray(at, at + 400))).json).toEqual({
        whole: false,
        have: 400,
      });
    expect((await put(name, 400, bytes.length, bytes.subarray(400))).json.whole).toBe(true);
  });

  test('damaged on the way is wanted again from its beginning', async () => {
    const bytes = await picture('webp', { seed: 33 });
    const name = hash(bytes);
    const bent = Uint8Array.from(bytes);
    bent[bent.length - 3]! ^= 1;
    const answer = await put(name, 0, bytes.length, bent);
    expect([answer.status, answer.json.error.code]).toEqual([409, 'damaged-on-the-way']);
    expect(await state(name)).toEqual({ whole: false, have: 0 });
    expect((await put(name, 0, bytes.length, bytes)).json.whole).toBe(true);
  });

  test('that is none, or too large, is refused for good', async () => {
    const none = new TextEncoder().encode('a shopping list');
    const answer = await put(hash(none), 0, none.length, none);
    expect([answer.status, answer.json.error.code]).toEqual([422, 'bad-picture']);
    const tooLarge = await put(hash(none), 0, 25 * 1024 * 1024 + 1, none);
    expect([tooLarge.status, tooLarge.json.error.code]).toEqual([413, 'too-large']);
    for (const [at, of, field] of [
      ['-1', 5, 'at'],
      [0, 'x', 'of'],
      [0, 0, 'of'],
    ] as const)
      expect((await put(hash(none), at, of, none)).json.error).toMatchObject({ code: 'bad-request', field });
    // last: what is refused unread leaves its line unfit for another request
    expect((await put(hash(none), 0, 9, new Uint8Array(1024 * 1024 + 1))).status).toBe(413);
  });

  test('that the store cannot take just now is not asked for again: its last word is enough', async () => {
    const bytes = await picture('jpeg', { seed: 34 });
    const name = hash(bytes);
    let full = true;
    const store = new Proxy(server.store, {
      get(of, member) {
        if (member === 'putPicture' && full)
          return () => Promise.reject(new StoreError('disk-full', 'The disk is full.', '', ''));
        const value = of[member as keyof typeof of];
        return typeof value === 'function' ? (value as () => unknown).bind(of) : value;
      },
    });
    const other = await startServer({ store });
    try {
      expect((await put(name, 0, bytes.length, bytes, other)).status).toBe(507);
      const { have } = (await other.get(`/api/pictures/${name}/parts`)).json;
      expect(have).toBe(bytes.length);
      full = false;
      expect((await put(name, have, bytes.length, new Uint8Array(), other)).json.whole).toBe(true);
    } finally {
      await other.stop();
    }
  });
});

test('what is under way at once is bounded; what nobody goes on with makes room', () => {
  let now = 0;
  const uploads = new Uploads(() => new Date(now));
  const of = 25 * 1024 * 1024;
  const part = new Uint8Array(10);
  for (const name of ['a', 'b', 'c', 'd', 'e']) expect(uploads.take(name, 0, of, part)).toEqual({ have: 10 });
  expect(uploads.take('f', 0, of, part)).toBeUndefined();
  now = 61_000;
  uploads.take('a', 10, of, part);
  expect(uploads.take('f', 0, of, part)).toEqual({ have: 10 });
  expect(uploads.have('a')).toBe(20);
  expect(uploads.have('b')).toBe(0);
});
