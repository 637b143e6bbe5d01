import { Hono } from 'hono';
import { compress } from 'hono/compress';
import { JobNotes, readPacksApart, readPacksBy, shopNow } from '../shopkeep/index.js';
import { StoreError } from '../store/index.js';
import { type DoorEnv, door, pairingPath, trustPath } from './door.js';
import { type ApiError, answerError, notFound } from './error.js';
import { asApiError, ownFault } from './faults.js';
import { everywhere, guarded } from './headers.js';
import { KeepingWatch } from './keeping.js';
import { News } from './news.js';
import { pages } from './pages.js';
import { pairPage, shutPage, shutPagePolicy } from './pair-page.js';
import { Pairing } from './pairing.js';
import type { Parts } from './parts.js';
import { bundleRoutes } from './routes/bundles.js';
import { catalogRoutes } from './routes/catalog.js';
import { demoRoutes } from './routes/demo.js';
import { deviceRoutes } from './routes/devices.js';
import { entryRoutes } from './routes/entries.js';
import { eventRoutes } from './routes/events.js';
import { findRoutes } from './routes/find.js';
import { healthRoutes } from './routes/health.js';
import { jobRoutes } from './routes/jobs.js';
import { matRoutes } from './routes/mat.js';
import { pastRoutes } from './routes/past-jobs.js';
import { pictureRoutes } from './routes/pictures.js';
import { recordRoutes } from './routes/records.js';
import { storeRoutes } from './routes/store.js';
import { worksheetRoutes } from './routes/worksheets.js';
import { sparing } from './sparing-log.js';
import { trustPage } from './trust-page.js';

/** On every answer of the API: the bench's own time. */
const clockHeader = 'Wristpin-Clock';

export interface App {
  readonly http: Hono<DoorEnv>;
  /** lets open pages go, so that the server can stop; the store stays open */
  readonly end: () => void;
}

/** The whole of the server but its socket. Rejects when the store does not answer. */
export async function createApp(given: Parts): Promise<App> {
  const parts = { ...given, log: sparing(given.log, given.clock) };
  const { store } = parts;
  const keeping = new KeepingWatch(store, parts.log);
  const news = new News(store, await store.head(), parts.log);
  const notes = new JobNotes(store);
  readPacksBy(store, async (packs) => readPacksApart(await parts.reader(), packs));
  void (await shopNow(store)).catalog; // made now: that holds the thread, and nobody waits for an answer yet
  const stopFollowing = notes.follow(parts.log);
  notes.onLearned(() => news.tellLearned());
  const pairing = new Pairing(store, parts.clock);
  const http = new Hono<DoorEnv>();
  http.use(everywhere, guarded);
  http.use(door(pairing, parts.network));
  http.use('/api/*', async (c, next) => {
    await next();
    c.res.headers.set(clockHeader, parts.clock().toISOString()); // by it a device finds out how far its own clock is off
    if (!c.res.headers.has('Cache-Control')) c.res.headers.set('Cache-Control', 'no-store');
  });
  http.on('GET', '/api/*', compress()); // what is sent back for a line written is a few words
  http.route('/api/health', healthRoutes(parts));
  http.route('/api/jobs', jobRoutes(store, notes));
  http.route('/api/find', findRoutes(store, notes));
  http.route('/api/jobs', recordRoutes(parts));
  http.route('/api/entries', entryRoutes(parts));
  http.route('/api/events', eventRoutes(store, news, pairing, keeping));
  http.route('/api/devices', deviceRoutes(store, pairing, parts.network));
  http.route('/api/pictures', pictureRoutes(store, parts.clock));
  http.route('/api/worksheets', worksheetRoutes());
  http.route('/api/catalog', catalogRoutes(parts));
  http.route('/api/mat', matRoutes(parts));
  http.route('/api/past', pastRoutes(store, notes));
  http.route('/api/bundles', bundleRoutes(parts));
  http.route('/api/store', storeRoutes(parts, keeping));
  http.route('/api/demo', demoRoutes(parts, news));
  http.route(trustPath, trustPage(parts.network));
  http.route(pairingPath, pairPage(pairing, parts.network));
  http.all('/api/*', (c) => {
    throw notFound(`There is no ${c.req.method} ${c.req.path} here.`);
  });
  http.route('/', pages(parts.webRoot));
  http.notFound((c) => answerError(c, notFound(`There is no ${c.req.method} ${c.req.path} here.`)));
  http.onError((error, c) => {
    const known = asApiError(error);
    if (concernsTheShop(error, known)) parts.log(`${c.req.method} ${c.req.path}: ${describe(error)}`);
    if (known?.status === 401 && !c.req.path.startsWith('/api/'))
      return c.html(shutPage(known.message), 401, { 'Content-Security-Policy': shutPagePolicy });
    return answerError(c, known ?? ownFault());
  });
  const end = () => {
    stopFollowing();
    keeping.end();
    news.end();
  };
  return { http, end };
}

/** A store that fails and a fault of our own; not a request that was rightly refused. */
function concernsTheShop(error: Error, known: ApiError | undefined): boolean {
  return known === undefined || (known.status >= 500 && error instanceof StoreError);
}

/** A store that is away is no fault of the program: its own words say all, and where in the code it was met nothing. */
function describe(error: Error): string {
  if (error instanceof StoreError) return error.message;
  const cause =
    error.cause instanceof Error ? `\n  because: ${error.cause.stack ?? error.cause.message}` : '';
  return `${error.stack ?? error.message}${cause}`;
}
