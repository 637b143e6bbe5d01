import { Hono } from 'hono';
import type { Parts } from '../parts.js';

export function healthRoutes({ store, storeKind, place, version }: Parts): Hono {
  const app = new Hono();
  app.get('/', async (c) => c.json({ ok: true, version, store: storeKind, place, head: await store.head() }));
  return app;
}
