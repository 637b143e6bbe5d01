import { z } from 'zod';
import { band } from './fields/figure.js';
import { needs, says } from './fields/needs.js';
import { origin } from './fields/origin.js';
import { place } from './fields/place.js';
import { outcomeOf, ref, refs } from './fields/reference.js';
import { architecture, when } from './fields/when.js';
import { engineDuring, engineState, id, line, minutes, strength, words } from './fields/word.js';

const outcome = z.strictObject({
  id,
  words: line,
  /** the part of the scale that is this outcome, where the check ends in a number */
  band: band.optional(),
  /** outcomes of this check that cannot be seen beside it: when it was seen they are not known, instead of cleared */
  hides: z.array(outcomeOf()).min(1).optional(),
  /** what it says of whether the engine runs at all */
  engine: engineState.optional(),
  /** what it says of pieces and of what is in the engine */
  says: says.optional(),
  /** a healthy engine with one of these variants shows it as well */
  usualWith: refs('variants').min(1).optional(),
  note: line.optional(),
});

const link = z.preprocess(
  (value) => {
    if (typeof value !== 'object' || value === null || !('outcome' in value)) return value;
    const { outcome, ...rest } = value;
    return { ...rest, outcomes: Array.isArray(outcome) ? outcome : [outcome] };
  },
  z.strictObject({
    /** given the fault, one of these outcomes is seen with this strength */
    outcomes: z.array(outcomeOf()).min(1),
    fault: ref('faults'),
    strength,
    /** counts only on a machine with one of these complaints: what a good result says when the engine runs badly */
    withComplaint: refs('complaints').min(1).optional(),
    when: when.optional(),
    note: line.optional(),
    /** set where it differs from the check's */
    origin: origin.optional(),
  }),
);

/** A check repeated with one suspect taken out of the way. */
const differential = z.strictObject({
  /** the check it repeats */
  check: ref('checks'),
  /** outcomes of that check after which the repeat says anything */
  after: z.array(outcomeOf('check')).min(1),
  /** what is taken out of the way */
  bypass: line,
  /** the faults that are taken out of the way */
  bypasses: refs('faults').min(1),
  /** functions that are taken out of the way as a whole */
  bypassesFunctions: refs('functions').optional(),
  /** outcomes that accuse what was bypassed */
  changed: z.array(outcomeOf()).min(1),
  /** the outcome that clears it */
  unchanged: outcomeOf(),
});

/** What a number typed into the check means on such an engine. */
const valueScale = z.strictObject({
  when: when.optional(),
  unit: line,
  bands: z
    .array(z.strictObject({ outcome: outcomeOf(), from: z.number().optional(), to: z.number().optional() }))
    .min(2),
});

const checkFields = z.strictObject({
  id,
  title: line,
  when: when.optional(),
  /** what must be so for it beyond that, or it cannot be made */
  needs: needs.optional(),
  /** the state the engine must be in */
  engine: engineDuring,
  /** it says something on an engine that cannot be turned, too */
  whenLocked: z.literal(true).optional(),
  /** advised only on an engine that would not run, was repaired and has not been tried since; then before all others */
  afterRepair: z.literal(true).optional(),
  /** the check in whose course it is made */
  during: ref('checks').optional(),
  /**
   * ladder: one scale, healthy first, exactly one outcome is seen.
   * kinds: the first outcome is healthy, the others are different things; one is seen unless `several`.
   */
  reads: z.enum(['ladder', 'kinds']),
  several: z.literal(true).optional(),
  outcomes: z.array(outcome).min(2),
  /** numbers that it takes; the first scale that holds on the engine counts, then the bands of the outcomes */
  values: z.array(valueScale).optional(),
  /** beyond these a typed number is a slip of the pen */
  believed: z
    .strictObject({ low: z.number(), high: z.number(), unit: line, origin })
    .refine(({ low, high }) => low < high, '"low" is not below "high"')
    .optional(),
  /** what a number says of the limit of the maker's sheet, where there is one: it comes before every scale */
  byLimit: z.strictObject({ inside: outcomeOf(), below: outcomeOf(), above: outcomeOf() }).optional(),
  minutes,
  minutesOn: z.partialRecord(architecture, minutes).optional(),
  instruments: z.array(line),
  needsOff: z.array(place),
  /** chance of an outcome other than the first on a machine that has none of the faults */
  falseAlarm: z.number().gt(0).lt(1),
  links: z.array(link),
  /** checks that say nothing, or less, once this one is done */
  destroys: refs('checks').optional(),
  cautions: refs('cautions').optional(),
  differentialOf: differential.optional(),
  /** the measurement that stands behind the outcome */
  measurement: ref('measurements').optional(),
  note: words.optional(),
  origin,
});
type CheckFields = z.infer<typeof checkFields>;

export const check = checkFields.superRefine((value, context) => {
  for (const { path, message } of contradictions(value)) context.addIssue({ code: 'custom', path, message });
});

interface Contradiction {
  readonly path: (string | number)[];
  readonly message: string;
}

/** What a check says that it cannot mean. */
function contradictions(value: CheckFields): Contradiction[] {
  const ids = value.outcomes.map((each) => each.id);
  return [
    ...(new Set(ids).size < ids.length
      ? [{ path: ['outcomes'], message: 'two outcomes have the same id' }]
      : []),
    ...(value.several && value.reads === 'ladder'
      ? [{ path: ['several'], message: 'a ladder has one outcome at a time' }]
      : []),
    ...value.outcomes.flatMap((each, index) => wrongHides(value, each, index)),
    ...value.links.flatMap((_, index) => blamesHealthy(value, index)),
  ];
}

/** Only where several outcomes may be seen together can one hide another. */
function wrongHides(
  { several }: CheckFields,
  { id: own, hides = [] }: CheckFields['outcomes'][number],
  index: number,
): Contradiction[] {
  const path = ['outcomes', index, 'hides'];
  if (hides.length > 0 && !several)
    return [{ path, message: 'only one outcome is seen at a time: nothing is hidden' }];
  if (hides.includes(own)) return [{ path, message: 'an outcome does not hide itself' }];
  return [];
}

/** A healthy outcome accuses only where a complaint stands against it, or where a suspect was bypassed. */
function blamesHealthy({ outcomes, links, differentialOf }: CheckFields, index: number): Contradiction[] {
  const healthy = outcomes[0]!.id;
  const entry = links[index]!;
  if (differentialOf || entry.withComplaint || !entry.outcomes.includes(healthy)) return [];
  const message = `"${healthy}" is the healthy outcome: it raises a fault only with a complaint (withComplaint)`;
  return [{ path: ['links', index], message }];
}

/** Checks that read the same thing twice: counting each in full double-counts. */
export const checkKin = z.strictObject({ id, checks: refs('checks').min(2), reads: line, origin });

/** Evidence that the next action destroys: look first. */
export const evidence = z.strictObject({
  id,
  look: line,
  /** checks that read it */
  checks: refs('checks').optional(),
  measurements: refs('measurements').optional(),
  destroyedBy: z.strictObject({
    words: line,
    checks: refs('checks').optional(),
    /** taking these off */
    components: refs('components').optional(),
    agents: refs('agents').optional(),
  }),
  origin,
});
