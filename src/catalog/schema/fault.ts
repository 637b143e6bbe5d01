import { z } from 'zod';
import { origin } from './fields/origin.js';
import { place } from './fields/place.js';
import { ref, refs } from './fields/reference.js';
import { architecture, when } from './fields/when.js';
import { id, line, minutes, strength, words } from './fields/word.js';

const per100 = z.number().min(0).max(100);

export const fault = z.strictObject({
  id,
  /** a mechanic's one line */
  name: line,
  /** the machines that can have it */
  when: when.optional(),
  /** present in how many of 100 neglected machines of a mixed intake; several at once is normal */
  presentPer100: per100,
  /** main cause of the hard start in how many of 100 hard-start machines; over all faults they add up to 100 */
  mainCausePer100HardStarts: per100,
  repair: line,
  parts: z.array(line),
  /** active minutes after access */
  repairMinutes: minutes,
  repairMinutesTo: minutes.optional(),
  repairMinutesOn: z.partialRecord(architecture, minutes).optional(),
  /** done at most visits whether it is wanted or not: offered to the owner, and counted only where he takes it */
  service: z.strictObject({ offer: line, done: line }).optional(),
  /** waiting that needs nobody */
  repairWait: line.optional(),
  /** 0 none, 1 minor, 2 injury or fire possible, 3 serious */
  safety: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)]),
  offFirst: z.array(place),
  /** faults that this one brings about if it is left */
  causes: z
    .array(z.strictObject({ fault: ref('faults'), strength, when: when.optional(), note: line.optional() }))
    .optional(),
  /** the machine does its work badly with it: looked for wherever its work is complained of, beside a first cause too */
  spoilsWork: z.literal(true).optional(),
  /** why the machine must not be handed over while this stands */
  blocksHandOver: line.optional(),
  note: words.optional(),
  origin,
});

/** How often faults are present on machines with a history: stands in place of the mixed-intake figure. */
export const prior = z.strictObject({
  id,
  when,
  faults: refs('faults').min(1),
  /** with several faults: at least one of them is present in so many of 100 */
  presentPer100: per100,
  words: line,
  origin,
});

/** How many of 100 machines of the mixed intake, for which the frequencies stand, are of an architecture. */
export const intakeShare = z.strictObject({ id: architecture, per100, origin });

/** The chance of an outcome given the fault, for a link of a strength. */
export const strengthChance = z.strictObject({ id: strength, chance: z.number().gt(0).lt(1), origin });

/** Faults that show the same face, and what tells them apart. */
export const faultLookAlike = z.strictObject({
  id,
  faults: refs('faults').min(1),
  /** the common sign */
  sign: line,
  /** set when a healthy machine shows the sign too */
  alsoNormal: line.optional(),
  tellApart: refs('checks').min(1),
  origin,
});
