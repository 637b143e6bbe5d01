import { z } from 'zod';
import { architecture } from './when.js';
import { id, line, shorthand } from './word.js';

/** Something that has to be off or open first: a component where it is one, else words. */
export const place = shorthand(
  'component',
  z
    .strictObject({
      component: id.optional(),
      words: line.optional(),
      on: z.array(architecture).min(1).optional(),
    })
    .refine(
      ({ component, words }) => component !== undefined || words !== undefined,
      'name a component or say it in words',
    ),
);
