import { z } from 'zod';
import { origin } from './fields/origin.js';
import { ref, refs } from './fields/reference.js';
import { architecture, when } from './fields/when.js';
import { id, line, minutes, shorthand, words } from './fields/word.js';

const fastener = z
  .strictObject({
    /** "bolt", "nut", "screw", "clip", "press fit" */
    what: line,
    count: z.number().int().min(1).optional(),
    countTo: z.number().int().min(2).optional(),
    /** usual thread; several where the usual ones differ */
    sizes: z.array(line).min(1).optional(),
    /** counted per valve, per end */
    each: line.optional(),
    lengthsDiffer: z.literal(true).optional(),
    note: line.optional(),
  })
  .refine(
    ({ count, countTo }) => countTo === undefined || (count !== undefined && count < countTo),
    '"countTo" is not above "count"',
  );

const wait = z.strictObject({ minutes, words: line });

export const component = z.strictObject({
  /** unique within its architecture; the same thing has the same id on every architecture */
  id,
  architecture,
  name: line,
  comesOffAs: z.enum([
    'alone',
    'action',
    'assembly',
    'group',
    'pair',
    'set',
    'stack',
    'per valve',
    'with another',
    'machine work',
    'base',
  ]),
  comesOffNote: line.optional(),
  /** what must be off or done first */
  before: z.array(
    shorthand('component', z.strictObject({ component: ref('components'), when: when.optional() })),
  ),
  fasteners: z.array(fastener),
  oneTimeParts: z.array(line),
  reassemblyChecks: z.array(
    shorthand(
      'words',
      z.strictObject({
        words: line,
        measurement: ref('measurements').optional(),
        spec: ref('specs').optional(),
        /** somebody can be hurt where it is not so: looked at and said by itself, never taken for granted */
        safety: z.literal(true).optional(),
      }),
    ),
  ),
  torqueClass: ref('torqueClasses'),
  /** the spec that says how tight */
  torqueSpec: ref('specs').optional(),
  /** held by bolts of this piece too: they are tightened once both are on, to that piece's torque */
  sharesBoltsOf: ref('components').optional(),
  /** active minutes to take it off once everything before it is off */
  minutesOff: minutes,
  /** pictures wanted before it comes off */
  views: z.array(line).optional(),
  /** ports that stand open when it is off */
  opens: refs('ports').optional(),
  lookAlikes: refs('lookAlikes').optional(),
  /** what a bath that takes it whole touches, whatever part of it is meant */
  madeOf: refs('materials').min(1).optional(),
  /** penetrant before it is touched: minutes to wait, and where it goes */
  soak: wait.optional(),
  /** not while the engine is warm: minutes to wait after it ran */
  cool: wait.optional(),
  /** on the way back */
  lubricant: line.optional(),
  sealant: line.optional(),
  wayRound: line.optional(),
  /** fitted only on such machines */
  onlyOn: when.optional(),
  /** not on every engine of its kind: not known until someone looked */
  sometimes: z.literal(true).optional(),
  /** off by itself it keeps an engine from this, and all after it; from running, when left out */
  whileOff: z.enum(['cannot turn', 'cannot be pulled', 'must not run', 'runs']).optional(),
  /** what is gone with it: an engine with this off has none. squeeze: the plug is out */
  holds: z.enum(['fuel', 'oil', 'squeeze']).optional(),
  note: words.optional(),
  /** worksheets of the desk that work something out of it, each by the question that it answers at the bench */
  workOut: z.array(z.strictObject({ worksheet: line, words: line })).optional(),
  origin,
});

/** Pieces that commonly leave as one. */
export const assembly = z.strictObject({
  id,
  architecture,
  name: line,
  components: refs('components').min(2),
  when: when.optional(),
  /** active minutes to take it off whole; its slowest piece by hand when left out */
  minutesOff: minutes.optional(),
  /** the components whose fasteners come undone for it; those of the others stay done up. All when left out */
  heldBy: refs('components').optional(),
  /** what stays unseen inside */
  hides: line.optional(),
  origin,
});

/** A way one engine differs from another of its architecture, as a question to the person at the bench. */
export const variant = z.strictObject({
  id,
  asks: line,
  architectures: z.array(architecture).min(1),
  /** taken to hold until someone looks */
  usual: z.boolean(),
  words: words.optional(),
  origin,
});

/** An opening that lets dirt in while it stands open. */
export const port = z.strictObject({
  id,
  name: line,
  architectures: z.array(architecture).min(1),
  plugWith: line,
  origin,
});

export const torqueClass = z.strictObject({
  id,
  name: line,
  usedOn: line,
  range: z
    .strictObject({ from: z.number(), to: z.number(), unit: z.enum(['in-lb', 'ft-lb']), origin })
    .optional(),
  anchors: z.array(
    z.strictObject({
      what: line,
      from: z.number(),
      to: z.number().optional(),
      unit: z.enum(['in-lb', 'ft-lb']),
      origin,
    }),
  ),
  origin,
});

/** Parts that pass for one another, parts that fit the wrong way round, things left in. */
export const lookAlike = z.strictObject({
  id,
  name: line,
  kind: z.enum(['look-alike', 'one way round', 'left in']),
  /** the two that pass for one another, by name */
  pair: z.tuple([line, line]).optional(),
  tell: words,
  harm: line,
  origin,
});
