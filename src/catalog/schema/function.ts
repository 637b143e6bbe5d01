import { z } from 'zod';
import { origin } from './fields/origin.js';
import { outcomeOf, ref } from './fields/reference.js';
import { when } from './fields/when.js';
import { id, line, word } from './fields/word.js';

const chance = z.number().gt(0).lt(1);

/** A fault that spoils the function: how often it leaves it in which state. */
const spoiler = z.strictObject({
  fault: ref('faults'),
  leaves: z.record(word(), chance),
  when: when.optional(),
  note: line.optional(),
});

/** A check that reads it: how often one of these outcomes is seen where the function stands in this state. */
const reader = z.strictObject({
  check: ref('checks'),
  state: word(),
  outcomes: z.array(outcomeOf('check')).min(1),
  chance,
});

/** A complaint that comes of it: how often an owner says so where the function stands in this state. */
const complained = z.strictObject({ complaint: ref('complaints'), state: word(), chance });

/**
 * What an engine needs in order to run: faults spoil it, checks read it, so that a check speaks of faults that nobody has
 * linked with it one by one.
 */
export const engineFunction = z
  .strictObject({
    id,
    name: line,
    /** the good one first, then from bad to worst */
    states: z.array(z.strictObject({ id, words: line })).min(2),
    spoiledBy: z.array(spoiler).min(1),
    readBy: z.array(reader),
    saidBy: z.array(complained).optional(),
    /** by state: how often such an engine does not run */
    keepsFromRunning: z.record(word(), chance).optional(),
    origin,
  })
  .superRefine(({ states, spoiledBy, readBy, saidBy = [], keepsFromRunning = {} }, context) => {
    const bad = states.slice(1).map((s) => s.id);
    const known = (name: string, path: (string | number)[]): void => {
      if (!bad.includes(name))
        context.addIssue({
          code: 'custom',
          path,
          message: `"${name}" is none of its bad states: ${bad.join(', ')}`,
        });
    };
    for (const [i, { leaves }] of spoiledBy.entries()) {
      for (const name of Object.keys(leaves)) known(name, ['spoiledBy', i, 'leaves']);
      if (Object.values(leaves).reduce((a, b) => a + b, 0) > 1)
        context.addIssue({
          code: 'custom',
          path: ['spoiledBy', i],
          message: 'its chances add up to more than 1',
        });
    }
    for (const [i, { state }] of readBy.entries()) known(state, ['readBy', i, 'state']);
    for (const [i, { state }] of saidBy.entries()) known(state, ['saidBy', i, 'state']);
    for (const name of Object.keys(keepsFromRunning)) known(name, ['keepsFromRunning']);
  });
