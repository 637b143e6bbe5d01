import { z } from 'zod';
import { kinds } from '../../quantity/index.js';
import { plausible } from './fields/figure.js';
import { origin } from './fields/origin.js';
import { ref } from './fields/reference.js';
import { when } from './fields/when.js';
import { id, line, words } from './fields/word.js';

function isPattern(text: string): boolean {
  try {
    new RegExp(text);
    return true;
  } catch {
    return false;
  }
}

/** One thing a maker's sheet says about an engine. */
export const spec = z
  .strictObject({
    id,
    name: line,
    /** left out where the answer is words: an oil grade, a plug type */
    kind: z.enum(kinds).optional(),
    /** how the value binds */
    binds: z.enum(['range', 'at most', 'at least', 'set to', 'words']),
    /** what sheets call it, beside the name */
    spellings: z.array(line).min(1),
    /** for words: a regular expression that such a value matches */
    looksLike: z.string().refine(isPattern, 'not a regular expression').optional(),
    /** unit ids tried for a bare number, and for the likely reading of an implausible one */
    units: z.array(line).optional(),
    plausible: plausible.optional(),
    component: ref('components').optional(),
    when: when.optional(),
    note: words.optional(),
    origin,
  })
  .refine(
    ({ kind, binds }) => (kind === undefined) === (binds === 'words'),
    'a spec without kind binds as words, one with kind does not',
  )
  .refine(
    ({ kind, plausible: bounds }) => (kind === undefined) === (bounds === undefined),
    'a spec with a kind needs plausible bounds',
  )
  .refine(
    ({ kind, units }) => (kind === undefined) === (units === undefined),
    'a spec with a kind needs units',
  )
  .refine(
    ({ kind, looksLike }) => kind !== undefined || looksLike !== undefined,
    'a spec of words needs "looksLike"',
  );

/** A word of a label in another word's place ("carb" → "carburetor"); with an empty meaning it is passed over. */
export const specWord = z.strictObject({ id, means: z.string().max(80) });
