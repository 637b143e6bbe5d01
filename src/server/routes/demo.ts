import { Hono } from 'hono';
import { loadDemo, removeDemo } from '../../shopkeep/index.js';
import type { News } from '../news.js';
import type { Parts } from '../parts.js';

export function demoRoutes({ store, demo }: Parts, news: News): Hono {
  const app = new Hono();
  app.post('/', async (c) => c.json({ ...(await loadDemo(store, demo)), head: await store.head() }));
  app.delete('/', async (c) => {
    const removed = await removeDemo(store);
    const head = await store.head();
    // The store announces what was added only; pages must hear of a removal too.
    if (removed.jobs.length > 0) news.tell({ seq: head, jobs: removed.jobs });
    return c.json({ ...removed, head });
  });
  return app;
}
