import { z } from 'zod';
import { origin } from './fields/origin.js';
import { outcomeOf, ref } from './fields/reference.js';
import { id, line } from './fields/word.js';

/** Words that mean the same at the bench. */
export const sameWords = z.strictObject({ id, words: z.array(line).min(2), origin });

/** What an outcome is called at the bench besides its own words. */
export const ownWords = z.strictObject({
  id,
  check: ref('checks'),
  outcome: outcomeOf('check'),
  words: z.array(line).min(1),
  origin,
});
