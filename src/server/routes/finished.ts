import { Hono } from 'hono';
import type { Store } from '../../store/index.js';
import { FinishedJobs } from '../finished.js';
import { shopNow } from '../shop-now.js';

/** What the shop's finished jobs tell of faults, so that a page need not read all their logs. */
export function finishedRoutes(store: Store): Hono {
  const app = new Hono();
  const finished = new FinishedJobs(store);
  app.get('/', async (c) => {
    const { catalog } = await shopNow(store);
    return c.json({ finished: await finished.list(catalog) });
  });
  return app;
}
