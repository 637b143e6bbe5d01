import { z } from 'zod';
import { origin } from './fields/origin.js';
import { ref, refs } from './fields/reference.js';
import { when } from './fields/when.js';
import { id, line } from './fields/word.js';

/** Something used up by the work: bought with the parts, never fitted. */
export const consumable = z.strictObject({
  id,
  name: line,
  /** wanted when one of these comes off */
  components: refs('components').min(1).optional(),
  /** wanted when one of these agents is planned for a cleaning */
  agents: refs('agents').min(1).optional(),
  when: when.optional(),
  /** how much of it */
  amount: line,
  /** the spec that says how much on this engine */
  amountSpec: ref('specs').optional(),
  /** what it is for */
  why: line,
  /** not on every machine on which the component comes off */
  ifNeeded: z.literal(true).optional(),
  origin,
});
