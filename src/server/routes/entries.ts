import { Hono } from 'hono';
import { z } from 'zod';
import { readLines } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { atMost, megabyte, readJson } from '../body.js';

const request = z.object({ entries: z.array(z.unknown()) });
const largest = 2 * megabyte;

/** New lines for the log. Answered only after the store has them on the disk; all of them or none. */
export function entryRoutes(store: Store): Hono {
  const app = new Hono();
  app.post('/', atMost(largest, 'Entries sent together'), async (c) => {
    const { entries } = await readJson(c, request);
    const appended = await store.append(await readLines(store, entries));
    return c.json({ ...appended, head: await store.head() });
  });
  return app;
}
