import { z } from 'zod';

/** Letters and digits of a reading sheet ("fu-01", "t21", "q13") name nothing to a person; ids are words. */
const sheetNumber = /^(fu|ai|ig|co|lu|cl|ex|gv|st|dr|tq|t|y|v|h|q|w)-?\d+$/;

/** A name made of lower-case words joined by hyphens. */
export const word = () =>
  z
    .string()
    .max(80)
    .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'an id is lower-case words joined by hyphens')
    .refine((text) => !sheetNumber.test(text), 'an id is words, not a sheet number');

/** What an entry is called. The id of another entry is a `ref`. */
export const id = word();

/** One line for a reader. */
export const line = z.string().trim().min(1).max(400);

/** A sentence or several. */
export const words = z.string().trim().min(1).max(2000);

/** What a complaint or an outcome says of the engine. Locked: it cannot be turned, and so does not run. */
export const engineState = z.enum(['runs', 'does not run', 'locked']);

/** What the engine does during an act. */
export const engineDuring = z.enum(['still', 'turned by hand', 'pulled', 'running', 'hot']);

/**
 * How often a fault shows an outcome. `seen`: the outcome is the fault itself, seen with one's own eyes; hardly anything
 * else looks like it.
 */
export const strength = z.enum(['seen', 'strong', 'medium', 'weak']);

export const minutes = z.number().min(0).max(10_000);

/** Lets a pack write a bare word where an object with one main field is meant. */
export function shorthand<S extends z.ZodType>(field: string, schema: S) {
  return z.preprocess((value) => (typeof value === 'string' ? { [field]: value } : value), schema);
}
