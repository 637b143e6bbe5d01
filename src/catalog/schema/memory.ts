import { z } from 'zod';
import { origin } from './fields/origin.js';
import { id, line } from './fields/word.js';

/** How to find out again what a picture would have told and nobody took. */
export const memory = z
  .strictObject({
    id,
    /** it goes for a view in whose name a word begins so; for every view where it is left out */
    says: z.array(line).min(1).optional(),
    /** ways to win it back, the surest first */
    ways: z.array(line).min(1).optional(),
    /** such a view tells how it was found, and nothing goes together by it */
    onlyFound: z.literal(true).optional(),
    origin,
  })
  .refine(({ ways, onlyFound }) => (ways === undefined) !== (onlyFound === undefined), {
    message: 'say either "ways" or that it is "onlyFound"',
  });
