import { z } from 'zod';
import { origin } from './fields/origin.js';
import { refs } from './fields/reference.js';
import { id, line } from './fields/word.js';

const chance = z.number().min(0).max(1);
const times = z.number().gt(0).max(10_000);

/** The questions of the intake that are answered with yes or no. */
export const answeredFacts = ['fuelLeftIn', 'tipped', 'struck', 'wrongFuel'] as const;

/** What one fact of the intake does to the odds of some faults. */
export const oddsShift = z
  .strictObject({
    id,
    faults: refs('faults').min(1),
    /** from so many months on, up to the next line */
    byStoredMonths: z
      .array(z.strictObject({ from: z.number().min(0), times }))
      .min(1)
      .refine(
        (steps) => steps.every(({ from }, i) => i === 0 || from > steps[i - 1]!.from),
        'the months do not rise from line to line',
      )
      .optional(),
    byAnswer: z.strictObject({ fact: z.enum(answeredFacts), yes: times, no: times }).optional(),
    words: line,
    origin,
  })
  .refine(
    ({ byStoredMonths, byAnswer }) => (byStoredMonths === undefined) !== (byAnswer === undefined),
    'say either "byStoredMonths" or "byAnswer"',
  );

/** How often a complaint is made because of a fault, by the fault's rank in the complaint's list. */
export const complaintChance = z.strictObject({
  id: z.literal('said-by-rank'),
  byRank: z.array(chance).min(1),
  fartherDown: chance,
  /** on a machine with none of the faults */
  saidAnyhow: z.number().gt(0).lt(1),
  words: line,
  origin,
});

/** Single figures of judgement, with the bounds that make sense of each. */
const bounds = {
  'doubtful-leaves': [0, 1],
  'spoiled-leaves': [0, 1],
  'release-unknown': [0, 1],
  'repair-fails': [0, 1],
  'comes-anew': [0, 1],
  'kin-share': [0, 1],
  'kin-alarm-share': [0, 1],
  'unnamed-suspect': [0, 1],
  'seen-false-alarm': [0, 1],
  'does-not-run-anyhow': [0, 1],
  'owner-errs-about-running': [0, 1],
  'first-look-weighs': [1, 100],
  'may-not-run': [0, 1],
  'instrument-lacking': [0, 1],
  'care-minutes-injury': [0, 60],
  'care-minutes-serious': [0, 60],
  'stops-the-engine': [0, 100],
  'left-alone-from-minutes': [0, 10_000],
  'left-alone-below': [0, 1],
  'comes-back-minutes': [0, 10_000],
  'missed-minutes': [0, 10_000],
  'danger-minutes': [0, 10_000],
  'needless-parts-minutes': [0, 10_000],
  'likely-from': [0, 1],
  'likely-raised': [1, 1000],
  'service-seen-from': [0, 1],
} as const satisfies Record<string, readonly [number, number]>;

export type JudgementId = keyof typeof bounds;
export const judgementIds = Object.keys(bounds) as JudgementId[];

export const judgement = z
  .strictObject({
    id: z.enum(judgementIds as [JudgementId, ...JudgementId[]]),
    value: z.number(),
    words: line,
    origin,
  })
  .superRefine(({ id: name, value }, context) => {
    const [low, high] = bounds[name];
    if (value < low || value > high)
      context.addIssue({
        code: 'custom',
        path: ['value'],
        message: `${value} is not within ${low} … ${high}`,
      });
  });
