import { Hono } from 'hono';
import { z } from 'zod';
import { desk, findWorksheet } from '../../desk/index.js';
import { describe, printJson, run, type Worksheet, WorksheetError } from '../../worksheet/index.js';
import { atMost, megabyte, readJson } from '../body.js';
import { ApiError, notFound } from '../error.js';

const request = z.object({
  given: z.record(z.string(), z.string('is written as text, as at the bench: "140 in-lb"')),
  units: z.enum(['inch', 'metric']).optional(),
});

/** The reference desk over HTTP. */
export function worksheetRoutes(): Hono {
  const app = new Hono();
  app.get('/', (c) => c.json({ worksheets: desk.map(describe) }));
  app.post('/:id', atMost(megabyte, 'What a worksheet is given'), async (c) => {
    const worksheet = findWorksheet(c.req.param('id'));
    if (!worksheet) throw notFound(`There is no worksheet called “${c.req.param('id')}”.`);
    const { given, units } = await readJson(c, request);
    return c.json({ answers: printJson(answer(worksheet, given), units) });
  });
  return app;
}

function answer(worksheet: Worksheet, given: Readonly<Record<string, string>>) {
  try {
    return run(worksheet, given);
  } catch (error) {
    if (error instanceof WorksheetError) {
      throw new ApiError(422, 'cannot-answer', error.message, error.field);
    }
    throw error;
  }
}
