import { Hono } from 'hono';
import { entriesOf, type Summaries } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { ApiError } from '../error.js';

export function jobRoutes(store: Store, summaries: Summaries): Hono {
  const app = new Hono();
  app.get('/', async (c) => {
    const head = await store.head(); // before the list: what comes in between is then told of again, never missed
    return c.json({ jobs: await summaries.list(), head });
  });
  app.get('/:job/entries', async (c) => {
    const after = readAfter(c.req.query('after'));
    const head = await store.head();
    return c.json({ entries: await entriesOf(store, c.req.param('job'), after), head });
  });
  return app;
}

function readAfter(text: string | undefined): number {
  if (text === undefined) return 0;
  if (/^\d{1,15}$/.test(text)) return Number(text);
  throw new ApiError(422, 'bad-request', `after: “${text}” is not a whole number.`, 'after');
}
