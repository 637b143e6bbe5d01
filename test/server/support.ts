import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, type OutgoingHttpHeaders, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import type { RawEntry } from '../../src/job/index.js';
import { type Parts, type Running, serve } from '../../src/server/index.js';
import { packaged } from '../../src/shopkeep/index.js';
import { openSqlite, type Store } from '../../src/store/index.js';
import { bundle } from '../support/child.js';

/** A real server on a free port over a real SQLite file in a folder of its own. */
export interface TestServer extends Running {
  readonly store: Store;
  /** what it was made of */
  readonly parts: Parts;
  readonly folder: string;
  readonly logged: string[];
  readonly get: (path: string, headers?: Record<string, string>) => Promise<Answer>;
  readonly post: (path: string, body: unknown) => Promise<Answer>;
  readonly send: (method: string, path: string, body?: BodyInit | Uint8Array) => Promise<Answer>;
  readonly close: () => Promise<void>;
}

export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  readonly bytes: Uint8Array;
  // biome-ignore lint/suspicious/noExplicitAny: what came over the wire, looked at by the test
  readonly json: any;
}

let reader: ReturnType<typeof bundle> | undefined;

/** The program of the reading threads, built from the present source when it is first wanted. */
export async function builtReader(): Promise<string> {
  reader ??= bundle('src/shopkeep/reading/reader.worker.ts').then((built) => {
    process.once('exit', built.remove);
    return built;
  });
  return (await reader).path;
}

const clock = () => new Date('2026-03-02T09:00:00.000Z');

export async function startServer(own: Partial<Parts> = {}): Promise<TestServer> {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-server-'));
  const store =
    own.store ?? (await openSqlite(join(folder, 'shop.db'), { now: () => clock().toISOString() }));
  const logged: string[] = [];
  const webRoot = join(folder, 'web');
  mkdirSync(join(webRoot, 'assets'), { recursive: true });
  writeFileSync(join(webRoot, 'index.html'), '<!doctype html><title>Wristpin</title>');
  writeFileSync(join(webRoot, 'assets', 'app-1a2b3c.js'), 'export {};');
  const parts: Parts = {
    store,
    storeKind: 'sqlite',
    place: 'here',
    webRoot,
    demo: join(folder, 'demo'),
    fonts: packaged().fonts,
    reader: builtReader,
    version: '1.2.3',
    clock,
    log: (line) => logged.push(line),
    ...own,
  };
  const running = await serve(parts, 0);
  const send = (method: string, path: string, body?: BodyInit | Uint8Array, headers = {}) =>
    ask(running.url + path, { method, headers, ...(body !== undefined && { body: body as BodyInit }) });
  return {
    ...running,
    store,
    parts,
    folder,
    logged,
    get: (path, headers) => send('GET', path, undefined, headers),
    post: (path, body) => send('POST', path, JSON.stringify(body)),
    send,
    close: async () => {
      await running.stop();
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export async function ask(url: string, init: RequestInit = {}): Promise<Answer> {
  const response = await fetch(url, init);
  const bytes = new Uint8Array(await response.arrayBuffer());
  const isJson = response.headers.get('content-type')?.includes('json');
  const json = isJson ? JSON.parse(new TextDecoder().decode(bytes)) : undefined;
  return { status: response.status, headers: response.headers, bytes, json };
}

/** A request with headers that `fetch` does not let a program set. */
export function rawAsk(
  url: string,
  options: { method?: string; headers?: OutgoingHttpHeaders; body?: string; path?: string } = {},
): Promise<{ status: number; headers: IncomingHttpHeaders; body: string }> {
  return new Promise((resolve, reject) => {
    const { body: sentBody, ...rest } = options;
    const sent = request(url, { method: 'GET', ...rest }, (answer) => {
      let body = '';
      answer.setEncoding('utf8');
      answer.on('data', (chunk: string) => (body += chunk));
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body }));
    });
    sent.on('error', reject);
    sent.end(sentBody);
  });
}

/** The n-th of our ids: UUIDs of version 7 whose order is that of n. */
export function uuid(n: number): string {
  return `01900000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
}

export const jobA = uuid(0xa);
export const jobB = uuid(0xb);

export function entry(n: number, kind: string, body: unknown, job = jobA): RawEntry {
  const at = new Date(Date.UTC(2026, 2, 1, 8, 0, 0) + n * 1000).toISOString();
  return { id: uuid(1000 + n), job, at, by: 'bench', kind, v: 1, body };
}

export function openEntry(n: number, tag: number, job = jobA, invented?: boolean): RawEntry {
  return entry(n, 'open', { tag, title: `Tag ${tag}`, ...(invented && { invented }) }, job);
}

export function note(n: number, words: string, job = jobA): RawEntry {
  return entry(n, 'note', { words }, job);
}

/** A picture whose content depends on `seed` only. */
export async function picture(
  format: 'jpeg' | 'png' | 'webp',
  { width = 640, height = 480, seed = 1, orientation = 1 } = {},
): Promise<Uint8Array> {
  const raw = Buffer.alloc(width * height * 3);
  let state = seed >>> 0 || 1;
  for (let i = 0; i < raw.length; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    raw[i] = state >>> 24;
  }
  const image = sharp(raw, { raw: { width, height, channels: 3 } }).withMetadata({ orientation });
  return new Uint8Array(await image.toFormat(format).toBuffer());
}
