import { z } from 'zod';
import { origin } from './origin.js';
import { when } from './when.js';
import { id, line, shorthand } from './word.js';

export const complaint = z.strictObject({
  id,
  name: line,
  when: when.optional(),
  /** what an owner says */
  ownerSays: z.array(line).min(1),
  /** checks in the order of information per minute */
  firstChecks: z.array(id).min(1),
  /** the commonest first */
  commonFaults: z.array(shorthand('fault', z.strictObject({ fault: id, note: line.optional() }))).min(1),
  origin,
});

/** The standing first look at any machine, whatever the complaint. */
export const firstLook = z.strictObject({
  id,
  title: line,
  asks: line,
  when: when.optional(),
  checks: z.array(id).min(1),
  origin,
});

/** The cheap strong checks, in the order in which they split the field best. */
export const splitter = z.strictObject({ id, title: line, checks: z.array(id).min(1), origin });
