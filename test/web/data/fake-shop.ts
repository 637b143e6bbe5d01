import { IDBFactory } from 'fake-indexeddb';
import { vi } from 'vitest';
import type { RawEntry } from '../../../src/job/index.js';

type Outbox = typeof import('../../../src/web/data/outbox.js');

type Answer = Response | 'away' | undefined;

/** What came in, in order: "POST /api/entries". */
export interface Shop {
  /** every request the device made */
  readonly asked: string[];
  /** lines the store has acknowledged, in order */
  readonly kept: RawEntry[];
  /** pictures it holds whole, with how many bytes */
  readonly pictures: Map<string, number>;
  /** how the next requests end; without one the store takes what comes */
  answer: (request: string, lines: readonly RawEntry[], signal?: AbortSignal) => Answer | Promise<Answer>;
}

export const says = (status: number, message: string) =>
  new Response(JSON.stringify({ error: { message, code: 'no' } }), { status });

/** The network as the outbox sees it, down to fetch: the shop's server behind it is this object. */
export function fakeShop(): Shop {
  const shop: Shop = { asked: [], kept: [], pictures: new Map(), answer: () => undefined };
  const parts = new Map<string, Uint8Array[]>();
  vi.stubGlobal('fetch', async (path: string, init?: RequestInit) => {
    const request = `${init?.method ?? 'GET'} ${path}`;
    shop.asked.push(request);
    const { entries = [] } = (typeof init?.body === 'string' ? JSON.parse(init.body) : {}) as {
      entries?: RawEntry[];
    };
    const answer = await shop.answer(request, entries, init?.signal ?? undefined);
    if (answer === 'away') throw new TypeError('fetch failed');
    if (answer) return answer;
    const picture = /^\/api\/pictures\/([0-9a-f]+)\/parts(?:\?at=(\d+)&of=(\d+))?$/.exec(path);
    if (picture) return takePart(shop, parts, picture, init?.body as Uint8Array | undefined);
    const already = entries.filter(({ id }) => shop.kept.some((line) => line.id === id));
    const fresh = entries.filter((line) => !already.includes(line));
    shop.kept.push(...fresh);
    return new Response(JSON.stringify({ stored: idsOf(fresh), already: idsOf(already) }));
  });
  return shop;
}

const idsOf = (lines: readonly RawEntry[]) => lines.map(({ id }) => id);

/** As the server does: a part counts where it joins what is here, and the last one makes it whole. */
function takePart(
  shop: Shop,
  parts: Map<string, Uint8Array[]>,
  [, sha256 = '', at, of]: RegExpExecArray,
  part: Uint8Array | undefined,
): Response {
  const here = parts.get(sha256) ?? [];
  const have = () => here.reduce((sum, { length }) => sum + length, 0);
  if (part && Number(at) === have()) here.push(part);
  parts.set(sha256, here);
  if (part && have() === Number(of)) shop.pictures.set(sha256, have());
  return new Response(JSON.stringify({ whole: shop.pictures.has(sha256), have: have() }));
}

/** Hears "online" as a window does. */
export const browserWindow = () => new EventTarget();

/** The outbox as a page that has just been opened has it: nothing in memory, the device's storage as it was left. */
export async function openPage(storage?: IDBFactory): Promise<Outbox> {
  vi.resetModules();
  if (storage) vi.stubGlobal('indexedDB', storage);
  const page = await import('../../../src/web/data/outbox.js');
  pages.push(page);
  return page;
}

const pages: Outbox[] = [];
/** Every page is left: what one of them tries again later must not reach the next test’s shop. */
export const leavePages = () => {
  for (const { stopOutbox } of pages.splice(0)) stopOutbox();
};

/** Waits until it holds; bounded, for a busy machine takes its time. */
export const until = <T>(holds: () => T | Promise<T>): Promise<T> => vi.waitFor(holds, { timeout: 45_000 });

export const freshStorage = () => new IDBFactory();
