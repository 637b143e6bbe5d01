import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { RawEntry } from '../../../src/job/index.js';
import { browserWindow, freshStorage, openPage, until } from './fake-shop.js';

const job = '0198c0de-0000-7000-8000-000000000001';
const own = 'http://192.168.4.7:4310';
const other = 'http://192.168.8.9:4310';
const carry = 'c'.repeat(43);

interface Asked {
  readonly url: string;
  readonly authorization: string | undefined;
  readonly lines: readonly RawEntry[];
}

/** A bench that answers at some addresses; its clock may differ from this device's. */
function bench() {
  const at = { own: true, other: false, aheadMs: 0, knows: true, stranger: 0 };
  const asked: Asked[] = [];
  const kept: RawEntry[] = [];
  vi.stubGlobal('fetch', async (url: string, init: RequestInit = {}) => {
    const { authorization } = (init.headers ?? {}) as Record<string, string>;
    const { entries = [] } = typeof init.body === 'string' ? JSON.parse(init.body) : {};
    asked.push({ url, authorization, lines: entries });
    const there = url.startsWith('/') ? at.own : url.startsWith(other) && at.other;
    if (url.startsWith('/') && at.stranger)
      return new Response('<p>Log in</p>', { status: at.stranger, headers: { 'content-type': 'text/html' } });
    if (!there) throw new TypeError('nobody answers');
    if (!at.knows) return new Response('{}', { status: 401 });
    kept.push(...entries);
    const stored = entries.map(({ id }: RawEntry) => id);
    const headers = { 'Wristpin-Clock': new Date(Date.now() + at.aheadMs).toISOString() };
    return new Response(JSON.stringify({ stored, already: [] }), { headers });
  });
  return { at, asked, kept };
}

let storage: Map<string, string>;
beforeEach(() => {
  storage = new Map([['wristpin.elsewhere', JSON.stringify({ origins: [own, other], carry })]]);
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => storage.get(key) ?? null,
    setItem: (key: string, value: string) => storage.set(key, value),
    removeItem: (key: string) => storage.delete(key),
  });
  vi.stubGlobal('indexedDB', freshStorage());
  vi.stubGlobal('window', browserWindow());
  vi.stubGlobal('location', { origin: own });
});
afterEach(() => vi.unstubAllGlobals());

const note = { stage: 'intake' as const, words: 'one' };

describe('when the bench has another address', () => {
  test('what was written goes there with the token for sending, and to nobody who does not know it', async () => {
    const { at, asked, kept } = bench();
    at.own = false;
    at.other = true;
    const box = await openPage();
    await box.write(job, 'note', note);
    await until(() => expect(box.outboxNow().waiting).toEqual([]));
    expect(kept).toHaveLength(1);
    const there = asked.filter(({ url }) => url.startsWith(other));
    expect(there.every(({ authorization }) => authorization === `Bearer ${carry}`)).toBe(true);
    expect(there[0]!.lines).toEqual([]); // first whether it is the bench
    expect(box.outboxNow().reach).toBe('reached');
  });

  test('a stranger at that address gets no line, and the lines stay here', async () => {
    const { at, asked, kept } = bench();
    Object.assign(at, { own: false, other: true, knows: false });
    const box = await openPage();
    await box.write(job, 'note', note);
    await until(() => expect(box.outboxNow().reach).toBe('no answer'));
    expect(kept).toEqual([]);
    expect(asked.flatMap(({ url, lines }) => (url.startsWith('/') ? [] : lines))).toEqual([]);
    expect(box.outboxNow().waiting).toHaveLength(1);
    box.stopOutbox();
  });

  test.each([200, 400, 401, 404, 413])(
    'and its old one is a stranger’s, who answers %i with a page: nothing is refused for good, all goes to the bench',
    async (stranger) => {
      const { at, kept } = bench();
      Object.assign(at, { own: false, other: true, stranger });
      const box = await openPage();
      await box.write(job, 'note', note);
      await until(() => expect(box.outboxNow().waiting).toEqual([]));
      expect(kept).toHaveLength(1);
      expect(box.outboxNow()).toMatchObject({ reach: 'reached', refused: [] });
    },
  );

  test('a page that has nothing to send finds that out too, and says no longer that the store is not reached', async () => {
    const { at } = bench();
    Object.assign(at, { own: false, other: true });
    const box = await openPage();
    await box.startOutbox();
    const { api } = await import('../../../src/web/data/api.js');
    const heard = async () => {
      await api.storeState().catch(() => {});
      return box.outboxNow().reach;
    };
    await expect.poll(heard).toBe('reached');
    at.other = false;
    await expect.poll(heard).toBe('no answer');
    box.stopOutbox();
  });

  test('nothing but what is sent is asked for there', async () => {
    const { at, asked } = bench();
    at.own = false;
    at.other = true;
    vi.resetModules(); // no page of an earlier test hears of it
    const { api } = await import('../../../src/web/data/api.js');
    await expect(api.devices()).rejects.toThrow(/cannot be reached/);
    expect(asked.map(({ url }) => url)).toEqual(['/api/devices']);
  });

  test('a page that came encrypted sends nothing over a line that is not', async () => {
    const { at, asked } = bench();
    at.own = false;
    at.other = true;
    vi.stubGlobal('location', { origin: own.replace('http:', 'https:') });
    const box = await openPage();
    await box.write(job, 'note', note);
    await until(() => expect(box.outboxNow().reach).toBe('no answer'));
    expect(asked.filter(({ url }) => !url.startsWith('/'))).toEqual([]);
    box.stopOutbox();
  });
});

test('a network that was gone and is back is noticed with nothing to send', async () => {
  bench();
  const box = await openPage();
  await box.startOutbox();
  globalThis.window.dispatchEvent(new Event('offline'));
  expect(box.outboxNow().reach).toBe('no network');
  globalThis.window.dispatchEvent(new Event('online'));
  await expect.poll(() => box.outboxNow().reach).toBe('reached');
  box.stopOutbox();
});

describe('the clock of this device', () => {
  test('is measured at each contact, and lines are dated by the bench’s', async () => {
    const { at } = bench();
    at.aheadMs = 3 * 60_000;
    const box = await openPage();
    await box.write(job, 'note', note);
    await until(() => expect(box.outboxNow().waiting).toEqual([]));
    const second = await box.write(job, 'note', note);
    const behind = Date.parse(second.at) - Date.now();
    expect(behind).toBeGreaterThan(3 * 60_000 - 2000);
    expect(behind).toBeLessThan(3 * 60_000 + 2000);
    expect(Number(storage.get('wristpin.clock'))).toBeCloseTo(at.aheadMs, -4);
    const { clockWords } = await import('../../../src/web/frame/bench-contact.js');
    expect(clockWords(at.aheadMs)).toBe('This device’s clock is 3 min slow');
    expect(clockWords(-90 * 60_000)).toBe('This device’s clock is 1 h 30 min fast');
    expect(clockWords(20_000)).toBeUndefined();
  });

  test('put right again is believed again', async () => {
    const { at } = bench();
    storage.set('wristpin.clock', '180000');
    at.aheadMs = 0;
    const box = await openPage();
    await box.write(job, 'note', note);
    await until(() => expect(box.outboxNow().waiting).toEqual([]));
    expect(storage.get('wristpin.clock')).toBeUndefined();
  });
});

test('a line stands after what this device has seen, though that is dated ahead', async () => {
  bench();
  const box = await openPage();
  const { linesOf } = await import('../../../src/web/data/lines.js');
  const ahead = { id: job, job, at: '2036-01-01T00:00:00Z', by: 'x', kind: 'note', v: 1, body: note };
  linesOf(job, [ahead], []);
  const [first, second] = [await box.write(job, 'note', note), await box.write(job, 'note', note)];
  expect(first.rank).toBe(Date.parse(ahead.at) + 1);
  expect(second.rank).toBe(Date.parse(ahead.at) + 2);
  expect((await box.write('0198c0de-0000-7000-8000-000000000002', 'note', note)).rank).toBeUndefined();
  box.stopOutbox();
});

test('a line is signed by the person, by the device’s own name, or by the bench', async () => {
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  const { signature } = await import('../../../src/web/data/device.js');
  expect(signature({ theme: 'auto' })).toBe('bench');
  expect(signature({ theme: 'auto', by: 'bench' })).toBe('bench');
  expect(signature({ theme: 'auto', by: 'bench', name: 'Apron phone' })).toBe('Apron phone');
  expect(signature({ theme: 'auto', by: 'Ada', name: 'Apron phone' })).toBe('Ada, Apron phone');
  expect(signature({ theme: 'auto', by: 'Ada' })).toBe('Ada');
});
