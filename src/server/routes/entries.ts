import { Hono } from 'hono';
import { z } from 'zod';
import { appendWhereTheyCame, readLines } from '../../shopkeep/index.js';
import { atMost, megabyte, readJson } from '../body.js';
import type { Parts } from '../parts.js';

const request = z.object({ entries: z.array(z.unknown()) });
const largest = 2 * megabyte;

/** New lines for the log. Answered only after the store has them on the disk; all of them or none. */
export function entryRoutes({ store, clock }: Pick<Parts, 'store' | 'clock'>): Hono {
  const app = new Hono();
  app.post('/', atMost(largest, 'Entries sent together'), async (c) => {
    const { entries } = await readJson(c, request);
    const appended = await appendWhereTheyCame(store, await readLines(store, entries), clock());
    return c.json({ ...appended, head: await store.head() });
  });
  return app;
}
