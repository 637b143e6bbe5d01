import { z } from 'zod';
import { origin } from './fields/origin.js';
import { ref, refs } from './fields/reference.js';
import { when } from './fields/when.js';
import { engineState, id, line, shorthand } from './fields/word.js';

const commonFault = z.strictObject({
  fault: ref('faults'),
  /** how often an owner whose machine has it says so; by its rank in the list when left out */
  chance: z.number().gt(0).lt(1).optional(),
  note: line.optional(),
});

export const complaint = z.strictObject({
  id,
  name: line,
  when: when.optional(),
  /** what it says of whether the engine runs; nothing when left out */
  engine: engineState.optional(),
  /** what an owner says */
  ownerSays: z.array(line).min(1),
  /** checks in the order of information per minute */
  firstChecks: refs('checks').min(1),
  /** the commonest first */
  commonFaults: z.array(shorthand('fault', commonFault)).min(1),
  origin,
});

/** The standing first look at any machine, whatever the complaint. */
export const firstLook = z.strictObject({
  id,
  title: line,
  asks: line,
  when: when.optional(),
  checks: refs('checks').min(1),
  origin,
});

/** The cheap strong checks, in the order in which they split the field best. */
export const splitter = z.strictObject({ id, title: line, checks: refs('checks').min(1), origin });
