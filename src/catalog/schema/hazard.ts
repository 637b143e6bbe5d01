import { z } from 'zod';
import { origin } from './fields/origin.js';
import { outcomeOf, ref, refs } from './fields/reference.js';
import { when } from './fields/when.js';
import { id, line } from './fields/word.js';

/** What makes it dangerous to pull or to run an engine: while it stands, every check that would is barred with these words. */
export const hazard = z
  .strictObject({
    id,
    /** what is wrong, as the reason of a *stop*: "there is fuel in the crankcase" */
    words: line,
    /** what to do instead */
    first: line,
    /** the machines that can be so; a hazard that hangs on facts alone stands until one of `clearedBy` was read sound */
    when: when.optional(),
    /** "pulling" bars running as well */
    bars: z.enum(['pulling', 'running']),
    /** seen with one of these outcomes, read last */
    seen: z
      .array(z.strictObject({ check: ref('checks'), outcomes: z.array(outcomeOf('check')).min(1) }))
      .min(1)
      .optional(),
    /** confirmed and not repaired; a repair of one of them ends the hazard */
    faults: refs('faults').min(1).optional(),
    /** said by the owner, until one of the faults was repaired or one of `clearedBy` was read sound */
    complaints: refs('complaints').min(1).optional(),
    /** pieces that belong there and were seen to be missing */
    missing: refs('components').min(1).optional(),
    clearedBy: refs('checks').min(1).optional(),
    /** while one of these stands it is said already */
    saidBy: refs('hazards').min(1).optional(),
    origin,
  })
  .refine(
    ({ seen, faults, complaints, missing, when: facts }) =>
      [seen, faults, complaints, missing, facts].some((part) => part !== undefined),
    'a hazard hangs on something: an outcome, a fault, a complaint, a missing piece or a fact',
  );
