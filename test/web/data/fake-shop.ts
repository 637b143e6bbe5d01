import { IDBFactory } from 'fake-indexeddb';
import { vi } from 'vitest';
import type { RawEntry } from '../../../src/job/index.js';

type Outbox = typeof import('../../../src/web/data/outbox.js');

/** What came in, in order: "POST /api/entries". */
export interface Shop {
  /** every request the device made */
  readonly asked: string[];
  /** lines the store has acknowledged, in order */
  readonly kept: RawEntry[];
  /** how the next requests end; without one the store takes what comes */
  answer: (request: string, lines: readonly RawEntry[]) => Response | 'away' | undefined;
}

export const says = (status: number, message: string) =>
  new Response(JSON.stringify({ error: { message, code: 'no' } }), { status });

/** The network as the outbox sees it, down to fetch: the shop's server behind it is this object. */
export function fakeShop(): Shop {
  const shop: Shop = { asked: [], kept: [], answer: () => undefined };
  vi.stubGlobal('fetch', async (path: string, init?: RequestInit) => {
    const request = `${init?.method ?? 'GET'} ${path}`;
    shop.asked.push(request);
    const { entries = [] } = (typeof init?.body === 'string' ? JSON.parse(init.body) : {}) as {
      entries?: RawEntry[];
    };
    const answer = shop.answer(request, entries);
    if (answer === 'away') throw new TypeError('fetch failed');
    if (answer) return answer;
    shop.kept.push(...entries);
    return new Response(JSON.stringify({ stored: entries.map(({ id }) => id), already: [] }));
  });
  return shop;
}

/** Hears "online" as a window does. */
export const browserWindow = () => new EventTarget();

/** The outbox as a page that has just been opened has it: nothing in memory, the device's storage as it was left. */
export async function openPage(storage?: IDBFactory): Promise<Outbox> {
  vi.resetModules();
  if (storage) vi.stubGlobal('indexedDB', storage);
  return import('../../../src/web/data/outbox.js');
}

export const freshStorage = () => new IDBFactory();
