import { keptWith, pathKept } from './which-pages.js';

/** Filled in by the build: the files of the application, and a name that is another with each build. */
declare const KEPT: { readonly version: string; readonly files: readonly string[] };

/** As much of a service worker's surroundings as is used here; the page's own types know none of it. */
interface Surroundings {
  readonly registration: unknown;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(kind: 'install' | 'activate', act: (event: Lasting) => void): void;
  addEventListener(kind: 'fetch', act: (event: Lasting & Fetching) => void): void;
  addEventListener(kind: 'message', act: (event: { readonly data: unknown }) => void): void;
}
interface Lasting {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

const here = self as unknown as Surroundings;
const name = `wristpin ${KEPT.version}`;

/** All of it or nothing: a version that lacks a file never takes over. */
async function fill(): Promise<void> {
  const cache = await caches.open(name);
  for (const file of KEPT.files) {
    if (await cache.match(file)) continue; // from a filling that broke off
    // a name with a hash in it never changes its meaning: the version before may have it
    const before = file.startsWith('/assets/') ? await caches.match(file) : undefined;
    const answer = before ?? (await fetch(file, { cache: 'no-cache' }));
    if (!answer.ok) throw new Error(`${file}: ${answer.status}`);
    await cache.put(file, answer);
  }
}

/** The version before stays: a page that it opened may still ask for its parts. */
async function tidy(): Promise<void> {
  const old = keptWith(name, await caches.keys());
  await Promise.all(old.map((each) => caches.delete(each)));
  await here.clients.claim();
}

async function answer(path: string, request: Request): Promise<Response> {
  const own = await (await caches.open(name)).match(path);
  return own ?? (await caches.match(path)) ?? fetch(request);
}

here.addEventListener('install', (event) => event.waitUntil(fill()));
here.addEventListener('activate', (event) => event.waitUntil(tidy()));
here.addEventListener('message', ({ data }) => {
  if (data === 'take over') void here.skipWaiting();
});
here.addEventListener('fetch', (event) => {
  const { request } = event;
  const path = pathKept(request, location.origin);
  if (path !== undefined) event.respondWith(answer(path, request));
});
