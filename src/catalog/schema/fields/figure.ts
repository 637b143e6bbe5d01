import { z } from 'zod';
import { findUnit, QuantityError } from '../../../quantity/index.js';
import { origin } from './origin.js';
import { when } from './when.js';
import { line } from './word.js';

const unitId = z.string().refine(isUnit, { error: ({ input }) => `"${input}" is not a unit known here` });

function isUnit(text: string): boolean {
  try {
    findUnit(text);
    return true;
  } catch (error) {
    if (error instanceof QuantityError) return false;
    throw error;
  }
}

/** A number or a span of numbers in one unit, with where it comes from. */
export const figure = z
  .strictObject({
    from: z.number().optional(),
    to: z.number().optional(),
    unit: unitId,
    /** which part, side or surface it is for: "intake", "compression rings" */
    of: line.optional(),
    when: when.optional(),
    words: line.optional(),
    origin,
  })
  .refine(({ from, to }) => from !== undefined || to !== undefined, 'a figure needs "from" or "to"')
  .refine(({ from, to }) => from === undefined || to === undefined || from <= to, '"from" is above "to"');

/** Part of a scale: from (inclusive) to (exclusive). */
export const band = z.strictObject({
  from: z.number().optional(),
  to: z.number().optional(),
  unit: unitId,
  origin,
});

/** The bounds inside which a value is believed. */
export const plausible = z
  .strictObject({ low: z.number(), high: z.number(), unit: unitId, because: line, origin })
  .refine(({ low, high }) => low < high, '"low" is not below "high"');
