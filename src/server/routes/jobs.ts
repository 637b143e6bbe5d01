import { Hono } from 'hono';
import { z } from 'zod';
import { entriesOf, type JobNotes } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { ApiError } from '../error.js';

const wholeNumber = z
  .string()
  .regex(/^\d{1,15}$/, { error: ({ input }) => `“${input}” is not a whole number` })
  .transform(Number);
const mostAPage = 500;

/** What a list is asked for: `beyond` is what the answer before this one said under that name. */
const asked = z.strictObject({
  state: z.enum(['open', 'handed-over']).optional(),
  invented: z.literal('true').optional(),
  tag: wholeNumber.optional(),
  order: z.enum(['as opened', 'newest first']).default('as opened'),
  beyond: wholeNumber.optional(),
  most: wholeNumber.pipe(z.number().min(1).max(mostAPage)).default(mostAPage),
});

export function jobRoutes(store: Store, notes: JobNotes): Hono {
  const app = new Hono();
  app.get('/', async (c) => {
    const { state, invented, ...rest } = read(asked, c.req.query());
    const head = await store.head(); // before the list: what comes in between is then told of again, never missed
    const jobs = await notes.list({
      ...rest,
      ...(state && { open: state === 'open' }),
      ...(invented && { invented: true }),
    });
    const last = jobs.length === rest.most ? jobs.at(-1) : undefined;
    const beyond = rest.order === 'newest first' ? last?.last : last?.first;
    return c.json({ jobs, head, ...(beyond !== undefined && { beyond }) });
  });
  app.get('/counts', async (c) => c.json(await notes.counts()));
  app.get('/:job/entries', async (c) => {
    const { after = 0 } = read(z.object({ after: wholeNumber.optional() }), c.req.query());
    const head = await store.head();
    return c.json({ entries: await entriesOf(store, c.req.param('job'), after), head });
  });
  return app;
}

/** @throws ApiError 422 that names the part of the address that does not fit */
function read<S extends z.ZodType>(schema: S, query: Record<string, string>): z.output<S> {
  const found = schema.safeParse(query);
  if (found.success) return found.data;
  const issue = found.error.issues[0]!;
  const field = issue.code === 'unrecognized_keys' ? issue.keys[0]! : issue.path.join('.');
  throw new ApiError(422, 'bad-request', `${field}: ${issue.message}.`, field);
}
