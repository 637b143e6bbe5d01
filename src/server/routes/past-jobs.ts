import { Hono } from 'hono';
import { type JobNotes, PastJobs } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';

const mostShown = 200;

/** What the shop's jobs tell of faults and of minutes, so that a page need not read all their logs. */
export function pastRoutes(store: Store, notes: JobNotes): Hono {
  const app = new Hono();
  const past = new PastJobs(store, notes);
  app.get('/', async (c) => c.json(await past.tell(c.req.query('without'))));
  app.get('/jobs', async (c) => c.json(await past.lines(mostShown)));
  return app;
}
