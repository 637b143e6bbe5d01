import { z } from 'zod';
import { origin } from './fields/origin.js';
import { ref, refs } from './fields/reference.js';
import { architecture } from './fields/when.js';
import { id, line } from './fields/word.js';

const amount = z.number().gt(0).max(1e6);
const per100 = z.number().min(0).max(100);

/** What a kind of part costs. A shop gives its own prices in a pack that replaces the entry. */
export const price = z
  .strictObject({
    id,
    /** the words by which faults and components call it; all of them are one part, bought once */
    names: z.array(line).min(1),
    from: amount,
    to: amount,
    currency: z.string().min(1).max(8),
    /** gaskets of all kinds: not listed where they are listed one by one */
    gaskets: z.literal(true).optional(),
    /** a set: other price entries that it holds; where it is bought they cost nothing more */
    holds: refs('prices').min(1).optional(),
    /** bought in so many of 100 repairs of a fault that names it; all when left out */
    boughtPer100: per100.optional(),
    /** renewed in so many of 100 cases in which its component comes off for another reason; all when left out */
    renewedPer100: per100.optional(),
    /** where it differs on a kind of engine: a trimmer's cylinder is not a tiller's */
    on: z
      .partialRecord(
        architecture,
        z.strictObject({ from: amount, to: amount, boughtPer100: per100.optional() }),
      )
      .optional(),
    origin,
  })
  .refine(({ from, to }) => from <= to, '"from" is above "to"');

/** How often a fault turns out to be past saving once it lies open: the machine is scrap. */
export const scrapChance = z.strictObject({ id, fault: ref('faults'), per100, words: line, origin });

/** How work on the bench differs from the minutes of the lists: a factor, its least, likeliest and most. */
export const workFactor = z
  .strictObject({
    /** put-back: minutes to put a piece back for each to take it off. pace: real minutes for each listed one. */
    id: z.enum(['put-back', 'pace']),
    from: z.number().gt(0).max(10),
    likely: z.number().gt(0).max(10),
    to: z.number().gt(0).max(10),
    words: line,
    origin,
  })
  .refine(
    ({ from, likely, to }) => from <= likely && likely <= to,
    '"likely" is not between "from" and "to"',
  );

/** Repairs that are one piece of work: where several stand together the longest counts in full, the others in part. */
export const sharedRepair = z.strictObject({
  id,
  /** a fault stands in one such list only */
  faults: refs('faults').min(2),
  /** so many of 100 minutes of each but the longest */
  restPer100: per100,
  /** of these one and the same act is the repair: only the longest takes minutes at all */
  sameAct: refs('faults').min(2).optional(),
  /** where one of `by` stands, a new piece takes the place of all work and parts for `spares` */
  renewed: z.strictObject({ by: refs('faults').min(1), spares: refs('faults').min(1) }).optional(),
  words: line,
  origin,
});
