import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type Body,
  type EntryKind,
  placeOf,
  type RawEntry,
  rankAfter,
  readEntry,
} from '../../src/job/index.js';
import { type App, createApp } from '../../src/server/app.js';
import type { Parts } from '../../src/server/index.js';
import { packaged } from '../../src/shopkeep/index.js';
import { openSqlite, type Store, StoreError } from '../../src/store/index.js';
import { NotPaired, ServerError, Unreachable } from '../../src/web/data/api.js';
import type { DeviceStorage, Kept } from '../../src/web/data/outbox/kept.js';
import { DeviceOutbox } from '../../src/web/data/outbox/outbox.js';
import { builtReader } from './support.js';

/**
 * A shop in one process: the real handlers of the server on a real store, and devices with the real outbox, joined by a
 * network that can be cut, lose an answer, or give the bench another address.
 */

const port = 4310;
/** Two networks, from ranges that are kept for documents (RFC 5737). */
export const addresses = ['192.0.2.7', '198.51.100.7'] as const;

const nine = Date.UTC(2026, 2, 2, 9);

export class SimulatedShop {
  readonly #folder = mkdtempSync(join(tmpdir(), 'wristpin-shop-'));
  #store!: Store;
  #app!: App;
  now = nine;
  address: string = addresses[0];
  /** the disk is full */
  full = false;

  async start(): Promise<void> {
    this.#store = await openSqlite(join(this.#folder, 'shop.db'), { now: () => this.clock().toISOString() });
    const { fonts } = packaged();
    const folders = { webRoot: this.#folder, demo: this.#folder, fonts };
    const network = { addresses: () => [this.address] };
    const rest = {
      storeKind: 'sqlite',
      place: 'here',
      version: 'test',
      network,
      clock: this.clock,
      reader: builtReader,
      log: () => {},
    } as const;
    const parts: Parts = { store: this.#fillable(), ...folders, ...rest };
    this.#app = await createApp(parts);
  }

  /** As it stood in the morning, whatever the last round did to it; what is stored stays. */
  begin(): void {
    Object.assign(this, { now: nine, address: addresses[0], full: false });
  }

  readonly clock = (): Date => new Date(this.now);

  #fillable(): Store {
    const append: Store['append'] = async (entries) => {
      if (this.full)
        throw new StoreError('disk-full', 'The disk is full.', 'Nothing was stored.', 'Make room.');
      return this.#store.append(entries);
    };
    return new Proxy(this.#store, {
      get: (store, name) => (name === 'append' ? append : Reflect.get(store, name)),
    });
  }

  async stop(): Promise<void> {
    this.#app.end();
    await this.#store.close();
  }

  async restart(): Promise<void> {
    await this.stop();
    await this.start();
  }

  async end(): Promise<void> {
    await this.stop();
    rmSync(this.#folder, { recursive: true, force: true });
  }

  /** As a device of the shop's network asks, or, without an address, the bench computer itself. */
  async ask(address: string | undefined, path: string, init: RequestInit = {}): Promise<Response> {
    const host = `${address ?? '127.0.0.1'}:${port}`;
    const socket = { localPort: port, remoteAddress: address === undefined ? '127.0.0.1' : '192.0.2.99' };
    const request = new Request(`http://${host}${path}`, init);
    request.headers.set('host', host);
    return this.#app.http.fetch(request, { incoming: { socket }, outgoing: {} } as never);
  }

  entries = (job: string) => this.#store.entries(job);

  async pair(name: string): Promise<string> {
    const { code } = (await (await this.ask(undefined, '/api/devices/code', { method: 'POST' })).json()) as {
      code: string;
    };
    const headers = { 'content-type': 'application/x-www-form-urlencoded' };
    const paired = await this.ask(this.address, `/pair/${code}`, {
      method: 'POST',
      headers,
      body: `name=${name}`,
    });
    return paired.headers.get('set-cookie')!.split(';')[0]!;
  }
}

/** What outlives a page: copies, so that nothing in a page's memory is taken for kept. */
class Disk implements DeviceStorage {
  #kept: Kept = { lines: [], pictures: [] };
  read = async () => structuredClone(this.#kept);
  keep = async (lines: Kept['lines']) => {
    const ids = new Set(lines.map(({ entry }) => entry.id));
    const others = this.#kept.lines.filter(({ entry }) => !ids.has(entry.id));
    this.#kept = structuredClone({ ...this.#kept, lines: [...others, ...lines] });
  };
  mark = async (lines: Kept['lines']) => this.keep(lines);
  drop = async (ids: readonly string[]) => {
    this.#kept = { ...this.#kept, lines: this.#kept.lines.filter(({ entry }) => !ids.includes(entry.id)) };
  };
  bytes = async () => undefined;
}

export class SimulatedDevice {
  readonly #shop: SimulatedShop;
  readonly #disk = new Disk();
  readonly #aheadMs: number;
  readonly #newId: () => string;
  #cookie = '';
  #carry = '';
  /** the address under which its page was opened */
  #at = '';
  readonly #known = new Map<string, RawEntry>();
  outbox!: DeviceOutbox;
  online = true;
  /** the next answer is lost on the way, after the store has taken what was sent */
  loses = false;
  /** every line that was said to be kept here, with what this device had seen when it was written */
  readonly wrote: { readonly line: RawEntry; readonly seen: readonly string[] }[] = [];
  readonly name: string;

  constructor(shop: SimulatedShop, name: string, aheadMs: number, newId: () => string) {
    this.#shop = shop;
    this.#aheadMs = aheadMs;
    this.#newId = newId;
    this.name = name;
  }

  async pair(): Promise<void> {
    this.#cookie = await this.#shop.pair(this.name);
    this.#at = this.#shop.address;
    const here = await this.#ask('/api/devices/here', { method: 'POST' });
    this.#carry = ((await here.json()) as { carry: string }).carry;
    await this.reload();
  }

  /** The page is left in the middle of whatever it did, and opened again. */
  async reload(): Promise<void> {
    this.outbox?.stop();
    this.outbox = new DeviceOutbox({
      storage: this.#disk,
      store: { append: (entries) => this.#append(entries), pictureState: never, putPart: never },
      later: () => () => {}, // tried again where the campaign says so
      sha256: (bytes) => createHash('sha256').update(bytes).digest('hex'),
    });
    this.outbox.whenSaved((entries) => {
      for (const entry of entries) this.#know(entry);
    });
    await this.outbox.start();
  }

  #know(entry: RawEntry): void {
    this.#known.set(entry.id, entry);
  }

  get known(): RawEntry[] {
    return [...this.#known.values()];
  }

  async write<K extends EntryKind>(
    job: string,
    kind: K,
    body: Body<K>,
    more: object = {},
  ): Promise<RawEntry> {
    const seen = this.known.filter((e) => e.job === job);
    const at = new Date(this.#shop.now + this.#aheadMs).toISOString();
    const rank = rankAfter(at, Math.max(Number.NEGATIVE_INFINITY, ...seen.map(placeOf)));
    const line = {
      id: this.#newId(),
      job,
      at,
      by: this.name,
      kind,
      v: 1,
      body,
      ...(rank !== undefined && { rank }),
      ...more,
    };
    const read = readEntry(line);
    await this.outbox.keep([read]);
    this.wrote.push({ line: read, seen: seen.map(({ id }) => id) });
    this.#know(read);
    return read;
  }

  /** What other devices wrote, as far as the bench can be asked. */
  async look(job: string): Promise<void> {
    const answer = await this.#ask(`/api/jobs/${job}/entries`).catch(() => undefined);
    if (!answer?.ok) return;
    const { entries } = (await answer.json()) as {
      entries: (RawEntry & { seq: number; received: string })[];
    };
    for (const { seq: _, received: __, ...entry } of entries) this.#know(entry);
  }

  /** After the bench has moved: the way on that its old page is given, to the address that the bench has now. */
  async stepOver(): Promise<void> {
    if (this.#at === this.#shop.address) return;
    const headers = { authorization: `Bearer ${this.#carry}` };
    const over = await this.#shop.ask(this.#shop.address, '/api/devices/over', { method: 'POST', headers });
    const { path } = (await over.json()) as { path: string };
    const stepped = await this.#shop.ask(this.#shop.address, path);
    this.#cookie = stepped.headers.get('set-cookie')!.split(';')[0]!;
    this.#at = this.#shop.address;
    const here = await this.#ask('/api/devices/here', { method: 'POST' });
    this.#carry = ((await here.json()) as { carry: string }).carry;
  }

  async #ask(path: string, init: RequestInit = {}): Promise<Response> {
    if (!this.online || this.#at !== this.#shop.address) throw new TypeError('nobody answers');
    return this.#shop.ask(this.#at, path, { ...init, headers: { ...init.headers, cookie: this.#cookie } });
  }

  async #append(entries: readonly RawEntry[]) {
    if (!this.online) throw new Unreachable('no network');
    const moved = this.#at !== this.#shop.address;
    const headers: Record<string, string> = moved
      ? { authorization: `Bearer ${this.#carry}`, origin: `http://${this.#at}:${port}` }
      : { cookie: this.#cookie };
    const init = { method: 'POST', headers, body: JSON.stringify({ entries }) };
    const answer = await this.#shop.ask(this.#shop.address, '/api/entries', init);
    if (this.loses) {
      this.loses = false;
      throw new Unreachable('the answer was lost');
    }
    const said = (await answer.json()) as {
      stored: string[];
      already: string[];
      error?: { message: string; code: string };
    };
    if (answer.status === 401) throw new NotPaired(said.error!.message);
    if (said.error) throw new ServerError(said.error.message, answer.status, said.error.code);
    return said;
  }
}

const never = async (): Promise<never> => {
  throw new Error('no pictures in this shop');
};
