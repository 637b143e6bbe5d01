import { Hono } from 'hono';
import { findAnything, type JobNotes } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { ApiError } from '../error.js';

const mostTyped = 200;
const mostFound = 12;

/** `/api/find?words=…`: the jobs in which all of it stands, and where. */
export function findRoutes(store: Store, notes: JobNotes): Hono {
  const app = new Hono();
  app.get('/', async (c) => {
    const words = c.req.query('words') ?? '';
    if (words.length > mostTyped)
      throw new ApiError(422, 'bad-request', `words: more than ${mostTyped} signs.`, 'words');
    return c.json({ found: await findAnything(store, notes, words, mostFound) });
  });
  return app;
}
