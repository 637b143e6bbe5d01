import { z } from 'zod';
import { ref } from './reference.js';
import { architecture } from './when.js';
import { line, shorthand } from './word.js';

/** Something that has to be off or open first: a component where it is one, else words. */
export const place = shorthand(
  'component',
  z
    .strictObject({
      component: ref('components').optional(),
      words: line.optional(),
      on: z.array(architecture).min(1).optional(),
    })
    .refine(
      ({ component, words }) => component !== undefined || words !== undefined,
      'name a component or say it in words',
    ),
);
