import { Hono } from 'hono';
import { PastJobs, shopNow } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';

/** What the shop's jobs tell of faults and of minutes, so that a page need not read all their logs. */
export function pastRoutes(store: Store): Hono {
  const app = new Hono();
  const past = new PastJobs(store);
  app.get('/', async (c) => {
    const { catalog } = await shopNow(store);
    return c.json(await past.tell(catalog));
  });
  return app;
}
