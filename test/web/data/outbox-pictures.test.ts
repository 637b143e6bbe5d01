import 'fake-indexeddb/auto';
import { createHash } from 'node:crypto';
import { IDBObjectStore } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { RawEntry } from '../../../src/job/index.js';
import {
  browserWindow,
  fakeShop,
  freshStorage,
  leavePages,
  openPage,
  type Shop,
  says,
  until,
} from './fake-shop.js';

const job = '0198c0de-0000-7000-8000-000000000001';
const about = { caption: 'the plate', stage: 'intake', when: 'before' } as const;
const bytesOf = (length: number, seed = 1) => Uint8Array.from({ length }, (_, i) => (i * 31 + seed) % 251);
const photograph = (bytes: Uint8Array<ArrayBuffer>) => new File([bytes], 'p.jpg', { type: 'image/jpeg' });
const nameOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

let shop: Shop;
let page: EventTarget;
beforeEach(() => {
  vi.stubGlobal('indexedDB', freshStorage());
  page = browserWindow();
  vi.stubGlobal('window', page);
  vi.stubGlobal('createImageBitmap', async () => ({ width: 40, height: 30 }));
  shop = fakeShop();
});
afterEach(() => {
  leavePages();
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

type Box = Awaited<ReturnType<typeof openPage>>;
const isEmpty = (box: Box) =>
  until(() => expect(box.outboxNow()).toMatchObject({ waiting: [], pictures: 0, refused: [] }));
const reachIs = (box: Box, reach: string) => until(() => expect(box.outboxNow().reach).toBe(reach));
const captions = (lines: readonly RawEntry[]) =>
  lines.map(({ body }) => (body as { caption: string }).caption);

describe('a picture', () => {
  test('is on the device with its line before the store is asked for anything, and before it is called kept', async () => {
    const bytes = bytesOf(1000);
    shop.answer = () => new Promise(() => {}); // a server that hangs
    const box = await openPage();
    await box.writePhotograph(job, photograph(bytes), about);
    expect(box.outboxNow()).toMatchObject({ waiting: [{ kind: 'photograph' }], pictures: 1 });

    shop.answer = () => undefined;
    const next = await openPage(); // the page was loaded anew while the server hung
    await next.startOutbox();
    await isEmpty(next);
    expect(shop.pictures.get(nameOf(bytes))).toBe(1000);
    expect(captions(shop.kept)).toEqual(['the plate']);
  });

  test('goes before its line, in parts, and stays until the store says that it has all of it', async () => {
    const bytes = bytesOf(700_000);
    const box = await openPage();
    let hereAtTheEnd: unknown;
    shop.answer = async (request) => {
      if (request.startsWith('POST')) hereAtTheEnd = shop.pictures.get(nameOf(bytes));
      return undefined;
    };
    await box.writePhotograph(job, photograph(bytes), about);
    await isEmpty(box);
    const name = nameOf(bytes);
    expect(shop.asked).toEqual([
      `GET /api/pictures/${name}/parts`,
      ...[0, 262_144, 524_288].map((at) => `PUT /api/pictures/${name}/parts?at=${at}&of=700000`),
      'POST /api/entries',
    ]);
    expect(hereAtTheEnd).toBe(700_000);
    expect(await box.localPicture(name)).toBeUndefined();
  });

  test('is gone on with where the line broke off', async () => {
    const bytes = bytesOf(600_000);
    const box = await openPage();
    await box.startOutbox();
    shop.answer = (request) => (request.includes('at=524288') ? 'away' : undefined);
    await box.writePhotograph(job, photograph(bytes), about);
    await reachIs(box, 'no answer');
    shop.asked.length = 0;
    shop.answer = () => undefined;
    page.dispatchEvent(new Event('online'));
    await isEmpty(box);
    expect(shop.asked.filter((r) => r.startsWith('PUT'))[0]).toContain('at=524288');
    expect(shop.pictures.get(nameOf(bytes))).toBe(600_000);
  });

  test.each([500, 503, 507])('is kept while the store answers %i, and its line with it', async (status) => {
    const bytes = bytesOf(500, status);
    shop.answer = (request) =>
      request.includes('/pictures/') ? says(status, 'The disk is full.') : undefined;
    const box = await openPage();
    await box.startOutbox();
    await box.writePhotograph(job, photograph(bytes), about);
    await reachIs(box, 'out of order');
    expect(box.outboxNow()).toMatchObject({ said: 'The disk is full.', pictures: 1, refused: [] });
    expect(shop.kept).toEqual([]);
    expect(await box.localPicture(nameOf(bytes))).toBeDefined();
    shop.answer = () => undefined;
    page.dispatchEvent(new Event('online'));
    await isEmpty(box);
    expect(shop.pictures.has(nameOf(bytes))).toBe(true);
    expect(shop.kept).toHaveLength(1);
  });

  test('does not hold up what is written after it, but the strike of its own line', async () => {
    shop.answer = (request) => (request.includes('/pictures/') ? says(503, 'busy') : undefined);
    const box = await openPage();
    await box.startOutbox();
    const { id } = await box.writePhotograph(job, photograph(bytesOf(9)), about);
    await reachIs(box, 'out of order');
    await box.write(job, 'note', { stage: 'intake', words: 'after it' });
    await box.write(job, 'strike', { entry: id, reason: '' });
    await until(() => expect(shop.kept.map(({ kind }) => kind)).toEqual(['note']));
    shop.answer = () => undefined;
    page.dispatchEvent(new Event('online'));
    await isEmpty(box);
    expect(shop.kept.map(({ kind }) => kind)).toEqual(['note', 'photograph', 'strike']);
  });

  test('refused for good is kept with the reason, its line too, until the person decides', async () => {
    const bytes = bytesOf(800);
    shop.answer = (request) =>
      request.startsWith('PUT') ? says(413, 'A picture may be at most 25 MB.') : undefined;
    const first = await openPage();
    await first.writePhotograph(job, photograph(bytes), about);
    await until(() => expect(first.outboxNow().refused).toHaveLength(1));

    const box = await openPage();
    await box.startOutbox();
    expect(box.outboxNow()).toMatchObject({
      waiting: [],
      pictures: 0,
      refused: [{ reason: 'A picture may be at most 25 MB.', entry: { kind: 'photograph' } }],
    });
    expect(shop.kept).toEqual([]);
    expect(await box.localPicture(nameOf(bytes))).toBeDefined();
    shop.answer = () => undefined;
    await box.tryAgain(box.outboxNow().refused[0]!);
    await isEmpty(box);
    expect(shop.kept).toHaveLength(1);
  });

  test('of more pixels than the store takes is kept without being unfolded here, which could take all memory', async () => {
    const head = [
      0xff, 0xd8, 0xff, 0xc2, 0, 17, 8, 0x23, 0x28, 0x23, 0x28, 3, 1, 0x11, 0, 2, 0x11, 1, 3, 0x11, 1,
    ];
    const bytes = Uint8Array.from([...head, 0xff, 0xd9]);
    vi.stubGlobal('createImageBitmap', () => Promise.reject(new Error('unfolded')));
    const box = await openPage();
    const { body } = await box.writePhotograph(job, photograph(bytes), about);
    expect(body).toMatchObject({ picture: { width: 9000, height: 9000 } });
    await expect(box.writePhotograph(job, photograph(bytesOf(9)), about)).rejects.toThrow('cannot be read');
  });

  test('refused for good and taken back is gone with its line', async () => {
    shop.answer = (request) => (request.startsWith('PUT') ? says(422, 'not a picture') : undefined);
    const box = await openPage();
    await box.writePhotograph(job, photograph(bytesOf(70)), about);
    await until(() => expect(box.outboxNow().refused).toHaveLength(1));
    await box.dropRefused(box.outboxNow().refused[0]!);
    expect(box.outboxNow()).toMatchObject({ waiting: [], pictures: 0, refused: [] });
    expect(await box.localPicture(nameOf(bytesOf(70)))).toBeUndefined();
    expect(shop.kept).toEqual([]);
  });

  test('damaged on the way is sent again; one damaged on the device is said to be', async () => {
    let times = 0;
    const damaged = () =>
      new Response(JSON.stringify({ error: { message: 'differs', code: 'damaged-on-the-way' } }), {
        status: 409,
      });
    shop.answer = (request) => (request.startsWith('PUT') && times++ === 0 ? damaged() : undefined);
    const box = await openPage();
    await box.startOutbox();
    await box.writePhotograph(job, photograph(bytesOf(90)), about);
    await reachIs(box, 'out of order');
    expect(box.outboxNow().refused).toEqual([]);
    page.dispatchEvent(new Event('online'));
    await isEmpty(box);

    shop.answer = (request) => (request.startsWith('PUT') ? damaged() : undefined);
    const bytes = bytesOf(91);
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, value, key) {
      return put.call(this, value instanceof Uint8Array ? Uint8Array.from(value, (b) => b ^ 1) : value, key);
    });
    await box.writePhotograph(job, photograph(bytes), about);
    await until(() =>
      expect(box.outboxNow().refused[0]?.reason).toBe(
        'The picture was damaged on this device: take it again.',
      ),
    );
  });

  test('that an older version of this program kept is sent all the same', async () => {
    const bytes = bytesOf(333);
    const old = await openDB('wristpin-outbox', 1, {
      upgrade(d) {
        d.createObjectStore('entries');
        d.createObjectStore('pictures');
      },
    });
    await old.put('pictures', new Blob([bytes], { type: 'image/png' }), nameOf(bytes));
    const entry = { id: 'a', job, at: '2026-11-28T10:00:00+00:00', by: 'b', kind: 'note', v: 1, body: {} };
    await old.put('entries', { entry }, 'a');
    old.close();
    const box = await openPage();
    await box.startOutbox();
    await isEmpty(box);
    expect(shop.pictures.get(nameOf(bytes))).toBe(333);
    expect(shop.kept).toEqual([entry]);
  });
});

describe('a device that can keep nothing', () => {
  const full = () =>
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });

  test('says so before anything is called kept', async () => {
    shop.answer = () => 'away';
    const box = await openPage();
    full();
    await expect(box.write(job, 'note', { stage: 'intake', words: 'one' })).rejects.toThrow(
      /storage is full.*Not kept: .*cannot be reached/,
    );
    await expect(box.writePhotograph(job, photograph(bytesOf(5)), about)).rejects.toThrow(/Not kept/);
    expect(box.outboxNow()).toMatchObject({
      waiting: [],
      trouble: expect.stringContaining('storage is full'),
    });
  });

  test('sends straight to the store, and a line counts after the store’s word', async () => {
    const box = await openPage();
    full();
    await box.writePhotograph(job, photograph(bytesOf(5)), about);
    expect(shop.pictures.size).toBe(1);
    expect(captions(shop.kept)).toEqual(['the plate']);
  });

  test('a browser without a storage is said so too', async () => {
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new DOMException('denied', 'SecurityError');
      },
    });
    shop.answer = () => 'away';
    const box = await openPage();
    await box.startOutbox();
    expect(box.outboxNow().trouble).toMatch(/keeps nothing on this device/);
    await expect(box.write(job, 'note', { stage: 'intake', words: 'one' })).rejects.toThrow(/Not kept/);
  });
});

test('a storage that the browser cleared is noticed when the page is opened again', async () => {
  const kept = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  });
  shop.answer = () => 'away';
  const first = await openPage();
  await first.writePhotograph(job, photograph(bytesOf(12)), about);
  await first.write(job, 'note', { stage: 'intake', words: 'one' });
  const again = await openPage();
  await again.startOutbox();
  expect(again.outboxNow().missing).toBeUndefined();

  const cleared = await openPage(freshStorage());
  await cleared.startOutbox();
  expect(cleared.outboxNow().missing).toEqual({ lines: 2, pictures: 1 });
  cleared.forgetMissing();
  expect(cleared.outboxNow().missing).toBeUndefined();
  const later = await openPage();
  await later.startOutbox();
  expect(later.outboxNow().missing).toBeUndefined();
});

test('an answer that is not the store’s is no word: a network’s own page, or a "yes" without the lines', async () => {
  shop.answer = () => new Response('<html>Welcome to the café</html>');
  const box = await openPage();
  await box.startOutbox();
  await box.write(job, 'note', { stage: 'intake', words: 'one' });
  await reachIs(box, 'no answer');
  shop.answer = () => new Response('{"stored":[],"already":[]}');
  page.dispatchEvent(new Event('online'));
  await reachIs(box, 'out of order');
  expect(box.outboxNow().waiting).toHaveLength(1);
});

test('what the store refused of several pages of one device is known to all of them, and so is what it took', async () => {
  shop.answer = () => 'away';
  const one = await openPage();
  await one.startOutbox();
  const two = await openPage();
  await two.startOutbox();
  await one.write(job, 'note', { stage: 'intake', words: 'one' });
  await until(() => expect(two.outboxNow().waiting).toHaveLength(1));
  const savedAtTwo: string[] = [];
  two.whenSaved((lines) => savedAtTwo.push(...lines.map(({ id }) => id)));
  shop.answer = () => undefined;
  page.dispatchEvent(new Event('online'));
  await isEmpty(one);
  await isEmpty(two);
  expect(savedAtTwo).toHaveLength(1);
  expect(shop.kept).toHaveLength(1);
});

describe('a spoken note', () => {
  test('is on the device with its line before the store is asked, outlives the page, and goes before its line', async () => {
    const wav = bytesOf(300_000, 7);
    shop.answer = () => 'away';
    const box = await openPage();
    await box.writeSpokenNote(job, { wav, seconds: 9.4 }, { stage: 'teardown', about: 'Cylinder head' });
    expect(box.outboxNow()).toMatchObject({ waiting: [{ kind: 'spoken-note' }], pictures: 0, sounds: 1 });
    expect(await (await box.localPicture(nameOf(wav)))!.arrayBuffer()).toEqual(wav.buffer);

    shop.answer = () => undefined;
    const next = await openPage(); // loaded anew
    await next.startOutbox();
    await isEmpty(next);
    expect(next.outboxNow().sounds).toBe(0);
    expect(shop.pictures.get(nameOf(wav))).toBe(300_000);
    expect(shop.asked.at(-1)).toBe('POST /api/entries');
    expect(shop.kept).toMatchObject([
      { kind: 'spoken-note', body: { sound: { seconds: 9.4 }, about: 'Cylinder head' } },
    ]);
  });
});
