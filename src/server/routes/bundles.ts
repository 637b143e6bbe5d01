import { Hono } from 'hono';
import { importBundle } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { atMost, megabyte } from '../body.js';

const largest = 256 * megabyte;

export function bundleRoutes(store: Store): Hono {
  const app = new Hono();
  app.post('/', atMost(largest, 'A bundle'), async (c) => {
    const imported = await importBundle(store, new Uint8Array(await c.req.arrayBuffer()));
    return c.json({ ...imported, head: await store.head() });
  });
  return app;
}
