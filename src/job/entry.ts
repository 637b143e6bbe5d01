import { z } from 'zod';
import { architectures, stageIds } from '../catalog/index.js';
import { materials } from '../gauge/index.js';
import { kinds, originKinds } from '../quantity/index.js';

/**
 * The log: `Entry = { id, job, at, rank?, spoken?, by, kind, v, body }`. Each says what someone saw, measured, decided or did.
 * A wrong entry is struck by a later one, never erased. `id` is made by the device that wrote it (UUIDv7), so
 * sending twice changes nothing. Order within a log: see `placeOf`.
 */

const words = z.string().max(20_000);
const line = z.string().min(1).max(400);
/** word-with-hyphens: our own handles for components, parts, joints, steps, tools */
const handle = z.string().regex(/^[a-z0-9][a-z0-9.-]{0,79}$/, 'a handle is lower-case words with hyphens');
/** ids are UUIDs in small letters (RFC 9562, section 4: read in either case) */
const lineId = z.string().min(1).max(64).toLowerCase();
/** seconds; two minutes of talk and what a slow machine adds to them */
const longestSpokenS = 150;
const yesNo = z.enum(['yes', 'no', 'unknown']);

/** A number as the person wrote it beside the parsed quantity; `readEntry` refuses one whose parts disagree. */
export const writtenSchema = z.object({
  written: z.string().min(1).max(80),
  kind: z.enum(kinds),
  si: z.number(),
  unit: z.string().min(1).max(20),
});
export type Written = z.infer<typeof writtenSchema>;

const moneySchema = z.object({ amount: z.number().min(0).max(1e7), currency: z.string().max(8) });

const originSchema = z.object({ from: z.enum(originKinds), detail: z.string().max(400).optional() });

const digestSchema = z.string().regex(/^[0-9a-f]{64}$/);

/** A piece of a picture, in its pixels. */
const cutSchema = z.object({
  picture: digestSchema,
  x: z.number().min(0),
  y: z.number().min(0),
  width: z.number().positive(),
  height: z.number().positive(),
});

export const stages = stageIds;
export type Stage = (typeof stages)[number];

/** Each of the holes 1 to n, once. */
function isOrderOf(order: readonly number[], n: number): boolean {
  return order.length === n && new Set(order).size === n && order.every((hole) => hole <= n);
}

const fastenerSchema = z.object({
  /** "nut", "bolt", "screw", "clip" */
  what: line,
  /** "1/4-20", "M6" */
  size: z.string().max(40).optional(),
  length: z.string().max(40).optional(),
  /** which hole, when lengths differ */
  hole: z.string().max(80).optional(),
  count: z.number().int().min(1).max(200),
});
export type Fastener = z.infer<typeof fastenerSchema>;

const limitSchema = z
  .object({ min: writtenSchema.optional(), max: writtenSchema.optional(), origin: originSchema })
  .refine(
    ({ min, max }) => !min || !max || (min.kind === max.kind && min.si <= max.si),
    'the lower limit is not below the upper',
  );
export type Limit = z.infer<typeof limitSchema>;

/** One schema a kind. A new kind is a compile error until the fold and the readers handle it. */
export const bodies = {
  /** a machine enters the shop and gets its tag */
  open: z.object({
    tag: z.number().int().min(1).max(999_999),
    title: z.string().max(120),
    invented: z.boolean().optional(),
  }),
  /** facts as told or seen; a later entry overrides field by field */
  intake: z.object({
    machine: z.string().max(200).optional(),
    /** what it drives, by the catalog’s id, or "unknown" */
    use: handle.optional(),
    /** what else it drives */
    alsoUses: z.array(handle).max(12).optional(),
    owner: z.string().max(200).optional(),
    contact: z.string().max(200).optional(),
    /** the owner's own words */
    complaint: words.optional(),
    /** complaint ids of the catalog */
    complaints: z.array(handle).max(30).optional(),
    architecture: z.enum([...architectures, 'unknown']).optional(),
    ignition: z.enum(['points', 'solid-state', 'unknown']).optional(),
    fuelSystem: z.enum(['float-bowl', 'diaphragm', 'unknown']).optional(),
    shaft: z.enum(['vertical', 'horizontal', 'unknown']).optional(),
    governor: z.enum(['air-vane', 'flyweight', 'none', 'unknown']).optional(),
    starter: z.enum(['rope', 'electric', 'unknown']).optional(),
    /** answers to the catalog's questions about how this engine differs from others of its kind */
    variants: z.record(handle, z.boolean()).optional(),
    storedMonths: z.number().min(0).max(1200).optional(),
    fuelLeftIn: yesNo.optional(),
    tipped: yesNo.optional(),
    struck: yesNo.optional(),
    wrongFuel: yesNo.optional(),
    tried: words.optional(),
    missing: words.optional(),
    consent: z.object({ given: z.boolean(), by: z.string().max(200), how: z.string().max(200) }).optional(),
    stopLimit: moneySchema.optional(),
    /** what the machine is worth to its owner when it runs */
    worthRunning: moneySchema.optional(),
    /** the day on which the owner was told it would be ready */
    promised: z.iso.date().optional(),
  }),
  identity: z.discriminatedUnion('how', [
    z.object({
      how: z.literal('plate'),
      /** plate scheme id of the catalog, if one matched */
      scheme: handle.optional(),
      where: z.string().max(200),
      written: line,
      reads: z
        .array(z.object({ part: line, value: z.string().max(80), meaning: z.string().max(400) }))
        .max(40),
    }),
    z.object({
      how: z.literal('measured'),
      bore: writtenSchema,
      stroke: writtenSchema,
      shaft: writtenSchema.optional(),
      leavesOpen: words,
    }),
    z.object({ how: z.literal('not-found'), looked: z.array(line).max(40) }),
  ]),
  /** one line of the maker's spec sheet, confirmed */
  spec: z.object({
    /** spec vocabulary id of the catalog, or a handle of our own */
    spec: handle,
    label: line,
    /** the line as pasted or typed */
    line: line,
    value: writtenSchema.optional(),
    /** for a range such as .003-.005 in: the upper end; `value` is the lower */
    upTo: writtenSchema.optional(),
    /** for values that are words: "SAE 30" */
    text: z.string().max(200).optional(),
    origin: originSchema,
    /** where it stands in a photograph of the sheet that is in this job's log, in that picture's pixels */
    cut: cutSchema.optional(),
  }),
  observation: z.object({
    /** check id of the catalog, when it is one of its checks */
    check: handle.optional(),
    title: line,
    outcomes: z.array(z.string().max(200)).max(12),
    /** a number typed into the check, as it was written: the outcome follows from it on this engine */
    value: z.string().min(1).max(80).optional(),
    words: words.optional(),
    doubtful: z.boolean().optional(),
    /** cold/hot, choke, pull speed: a result without conditions cannot be compared later */
    conditions: z.string().max(400).optional(),
  }),
  measurement: z
    .object({
      /** measurement id of the catalog or a handle of our own */
      measure: handle,
      title: line,
      value: writtenSchema,
      /** shop instrument */
      instrument: handle.optional(),
      place: z.string().max(120).optional(),
      direction: z.string().max(120).optional(),
      temperature: writtenSchema.optional(),
      /** what the part is made of: with its temperature it brings a length to 20 °C */
      material: z.enum(materials).optional(),
      /** on a face: where, in millimeters in its plane */
      spot: z.object({ xMm: z.number(), yMm: z.number() }).optional(),
      limit: limitSchema.optional(),
      phase: z.enum(['as-found', 'after']).optional(),
    })
    .refine(
      ({ value, limit }) => [limit?.min, limit?.max].every((bound) => !bound || bound.kind === value.kind),
      {
        path: ['limit'],
        message: 'a limit is of the same kind as the reading',
      },
    ),
  photograph: z.object({
    picture: z
      .object({
        sha256: digestSchema,
        mime: z.enum(['image/jpeg', 'image/png', 'image/webp']),
        bytes: z.number().int().min(1),
        width: z.number().int().min(1),
        height: z.number().int().min(1),
      })
      .optional(),
    /** film counts too: named by file and times, nothing is uploaded */
    clip: z.object({ file: line, from: z.string().max(20), to: z.string().max(20) }).optional(),
    /** a picture out of a film: which one, how far into it, and when that was by the bench's clock */
    still: z
      .object({ film: line, seconds: z.number().min(0).max(1e6), at: z.iso.datetime({ offset: true }) })
      .optional(),
    caption: z.string().max(400),
    stage: z.enum(stages),
    /** what it shows: a view the step asked for, a component, a step */
    about: z.string().max(120).optional(),
    when: z.enum(['before', 'during', 'after']),
    /** the line of which it says anew what the picture shows */
    insteadOf: lineId.optional(),
  }),
  decision: z.object({
    about: z.enum(['machine', 'component', 'part', 'measurement', 'fault', 'safety']),
    /** handle of the thing; the job itself for `machine` */
    which: handle.optional(),
    title: line,
    /** repair, part-repair, donor, scrap, reuse, renew, recondition, provisional, declined … */
    choice: handle,
    reason: words,
    amount: z.object({ amount: z.number(), currency: z.string().max(8) }).optional(),
    /** for provisional: what brings it back */
    until: z.string().max(200).optional(),
  }),
  part: z.object({
    part: handle,
    name: line,
    count: z.number().int().min(1).max(1000),
    state: z.enum(['wanted', 'ordered', 'arrived', 'mismatch', 'fitted', 'dropped']),
    number: z.string().max(80).optional(),
    supplier: z.string().max(120).optional(),
    /** the offer it was ordered by */
    offer: handle.optional(),
    price: moneySchema.optional(),
    due: z.iso.date().optional(),
    /** the component it goes with: while it is late, that component cannot go back */
    component: handle.optional(),
    /** oil, cleaner, thread sealant: used up, not fitted */
    consumable: z.boolean().optional(),
    words: words.optional(),
  }),
  /** something that a supplier sells and that serves this job: one part, several of it, or a kit */
  offer: z.object({
    offer: handle,
    name: line,
    supplier: handle,
    price: moneySchema,
    /** part handle to number; a kit holds several */
    contains: z.record(handle, z.number().int().min(1).max(1000)),
    /** from so many of it on, each costs that price */
    breaks: z
      .array(z.object({ from: z.number().int().min(2), price: z.number().min(0) }))
      .max(10)
      .optional(),
    leadDays: z.number().min(0).max(1000).optional(),
    number: z.string().max(80).optional(),
    /** how sure it is that it fits this engine */
    fit: z.enum(['sure', 'likely', 'unsure']),
    withdrawn: z.boolean().optional(),
  }),
  /** what the taking apart must reach: a component, because of a fault, a measurement or a part to renew */
  goal: z.object({
    component: handle,
    title: line,
    why: z.string().max(400),
    state: z.enum(['wanted', 'dropped']),
  }),
  /** how this engine differs from the catalog's component graph of its kind */
  differs: z.discriminatedUnion('how', [
    z.object({
      how: z.literal('added'),
      component: handle,
      name: line,
      minutes: z.number().gt(0).max(10_000),
      before: z.array(handle).max(40),
    }),
    z.object({ how: z.literal('absent'), component: handle }),
    z.object({ how: z.literal('there'), component: handle }),
    z.object({ how: z.literal('waits-for'), component: handle, before: z.array(handle).max(40) }),
    z.object({ how: z.literal('minutes'), component: handle, minutes: z.number().gt(0).max(10_000) }),
    z.object({ how: z.literal('fasteners'), component: handle, fasteners: z.array(fastenerSchema).max(40) }),
  ]),
  /** one cleaning of one part with one agent; the latest line of a handle tells how far it is */
  cleaning: z.object({
    cleaning: handle,
    title: line,
    component: handle.optional(),
    /** material and agent ids of the catalog */
    materials: z.array(handle).min(1).max(12),
    agent: handle,
    state: z.enum(['planned', 'soaking', 'drying', 'done', 'dropped']),
    soakMinutes: z.number().min(0).max(20_000).optional(),
    dryMinutes: z.number().min(0).max(20_000).optional(),
    words: words.optional(),
  }),
  step: z.object({
    step: handle,
    stage: z.enum(['teardown', 'assembly']),
    title: line,
    component: handle.optional(),
    /** pieces that leave as one, or a piece that comes off a second time under another handle */
    components: z.array(handle).min(1).max(40).optional(),
    state: z.enum(['planned', 'done', 'dropped']),
    fasteners: z.array(fastenerSchema).max(20).optional(),
    /** where the pieces and fasteners lie */
    bag: z.string().max(40).optional(),
    /** openings plugged / unplugged by this step */
    plugged: z.array(line).max(20).optional(),
    unplugged: z.array(line).max(20).optional(),
    /** teardown: wanted pictures that were not taken, and why */
    unseen: z
      .array(z.object({ view: line, reason: line }))
      .max(20)
      .optional(),
    /** assembly: which teardown step it puts back */
    putsBack: handle.optional(),
    /** assembly: what was proved before it closed */
    checked: z.array(line).max(40).optional(),
    words: words.optional(),
  }),
  /** a group of fasteners that is tightened together: where the holes are, how tight, in which order */
  joint: z
    .object({
      joint: handle,
      name: line,
      /** millimetres in the plane of the face, seen from the wrench; hole n is holes[n-1] */
      holes: z
        .array(z.object({ xMm: z.number(), yMm: z.number() }))
        .min(1)
        .max(64),
      thread: z.string().max(40).optional(),
      target: writtenSchema,
      targetOrigin: originSchema,
      /** parts of the target, ascending, the last is 1: [0.5, 1] or [0.3, 0.7, 1] */
      passes: z.array(z.number().gt(0).max(1)).min(1).max(6),
      finalRound: z.boolean(),
      /** hole numbers going round in turn, for the final round; the tightening order when left out */
      around: z.array(z.number().int().min(1)).min(1).max(64).optional(),
      /** hole numbers in tightening order */
      order: z.array(z.number().int().min(1)).min(1).max(64),
      orderOrigin: originSchema,
      wrench: handle.optional(),
      condition: z.string().max(120).optional(),
      /** a word under the drawing that tells which way round it is: "exhaust side" */
      bottomEdge: z.string().max(40).optional(),
    })
    .refine((j) => j.target.kind === 'torque' && j.target.si > 0, {
      path: ['target'],
      message: 'a joint is tightened to a torque above zero',
    })
    .refine((j) => j.passes.at(-1) === 1 && j.passes.every((p, i) => i === 0 || p > j.passes[i - 1]!), {
      path: ['passes'],
      message: 'the passes rise and end at 1, the full torque',
    })
    .refine((j) => [j.order, j.around ?? j.order].every((order) => isOrderOf(order, j.holes.length)), {
      path: ['order'],
      message: 'an order names each hole once',
    }),
  torque: z.object({
    joint: handle,
    hole: z.number().int().min(1),
    /** its number wherever it is named: its place in the tightening order; worked out by the fold for a line that was written before it was kept */
    bolt: z.number().int().min(1).optional(),
    /** 1-based; the final round is passes.length + 1 */
    pass: z.number().int().min(1),
    set: writtenSchema.refine((w) => w.kind === 'torque', 'torque wanted'),
    wrench: handle.optional(),
    result: z.enum(['clicked', 'turned without rising', 'stopped']),
  }),
  'run-up': z.object({
    item: handle,
    title: line,
    result: z.enum(['ok', 'not-ok', 'reading', 'not-applicable']),
    value: writtenSchema.optional(),
    words: words.optional(),
  }),
  /**
   * What was heard in one recording of the running engine. The sound stays where it is; like any instrument's
   * reading, what it said is kept: speeds in rpm, times in seconds from the start of the recording.
   */
  recording: z.object({
    recording: handle,
    /** the file's name, or "microphone" */
    name: line,
    phase: z.enum(['before', 'after']),
    temperature: z.enum(['cold', 'hot', 'unknown']),
    strokes: z.union([z.literal(2), z.literal(4)]),
    cylinders: z.number().int().min(1).max(16),
    seconds: z.number().gt(0).max(7200),
    /** absent when no stable period was heard; `says` tells why */
    mean: z.object({ rpm: z.number().gt(0), u: z.number().min(0) }).optional(),
    /** other speeds that the sound would fit as well */
    rivalsRpm: z.array(z.number().gt(0)).max(8),
    says: words,
    track: z.array(z.object({ t: z.number().min(0), rpm: z.number().gt(0), u: z.number().min(0) })).max(1200),
    starts: z
      .object({
        attempts: z.number().int().min(0),
        caught: z.boolean(),
        /** from the first attempt to the beginning of the steady run */
        secondsToSteady: z.number().min(0).optional(),
      })
      .optional(),
    /** from letting go until it stood, seconds with standard uncertainty; absent where the sound does not tell */
    stop: z.object({ from: z.number().min(0), seconds: z.number().gt(0), u: z.number().min(0) }).optional(),
    /** of a blade on the shaft, while it ran down: the beat once a turn over that of its two ends */
    beat: z.object({ beats: z.boolean(), share: z.number().min(0), u: z.number().min(0) }).optional(),
    /** what a belt turned beside it, and the share of its speed that the belt lost against the ratio that was said */
    shaft: z
      .object({
        rpm: z.number().gt(0),
        ratio: z.number().gt(0),
        slip: z.number().min(-1).max(1),
        u: z.number().min(0),
      })
      .optional(),
    segments: z
      .array(
        z.object({
          from: z.number().min(0),
          to: z.number().min(0),
          rpm: z.number().gt(0),
          u: z.number().min(0),
          huntingHz: z.number().min(0).optional(),
          huntingRpm: z.number().min(0).optional(),
          missedShare: z.number().min(0).max(1).optional(),
        }),
      )
      .max(60),
    marks: z.array(z.object({ t: z.number().min(0), what: line })).max(60),
  }),
  /** a stage closed, found not to be needed, or taken up again */
  stage: z.object({
    stage: z.enum(stages),
    state: z.enum(['finished', 'not-needed', 'reopened']),
    reason: z.string().max(400),
  }),
  note: z.object({ words: words.min(1), stage: z.enum(stages).optional() }),
  /** words spoken at the bench, kept as the sound they are, beside what was in hand */
  'spoken-note': z.object({
    sound: z.object({
      sha256: z.string().regex(/^[0-9a-f]{64}$/),
      mime: z.literal('audio/wav'),
      bytes: z.number().int().min(1),
      seconds: z.number().gt(0).max(longestSpokenS),
    }),
    stage: z.enum(stages),
    /** what was in hand: the step, the bolt; left out where it was the sheet as a whole */
    about: line.optional(),
  }),
  strike: z.object({ entry: lineId, reason: z.string().max(400) }),
  'hand-over': z.object({
    receivedBy: z.string().max(200),
    told: words.optional(),
    /** unsafe or advised work the owner declined, in writing */
    declined: z.array(line).max(40),
    nextDue: z.array(z.object({ what: line, when: z.string().max(120) })).max(40),
  }),
  // the shop's own log has the same form
  wrench: z.object({
    tool: handle,
    name: line,
    min: writtenSchema,
    max: writtenSchema,
    /** ± percent of reading */
    accuracyPercent: z.number().gt(0).max(50),
    retired: z.boolean().optional(),
  }),
  instrument: z.object({
    tool: handle,
    name: line,
    resolution: writtenSchema,
    /** expanded, k = 2 */
    uncertainty: writtenSchema,
    /** what it shows on its standard less what the standard is; taken off every reading */
    zeroError: writtenSchema.optional(),
    retired: z.boolean().optional(),
  }),
  supplier: z.object({
    supplier: handle,
    name: line,
    /** smallest order taken, goods only, in the shop's currency */
    minimum: z.number().min(0).max(1e6).optional(),
    /** shipping by the goods ordered: the tier with the greatest `from` not above them */
    shipping: z.array(z.object({ from: z.number().min(0), cost: z.number().min(0) })).max(12),
    retired: z.boolean().optional(),
  }),
  /** what several jobs share: a soak tank, an ultrasonic bath, a press, bench places */
  place: z.object({
    place: handle,
    name: line,
    capacity: z.number().int().min(1).max(100),
    retired: z.boolean().optional(),
  }),
  /** a catalog pack of the shop's own, as it was written */
  pack: z.object({ pack: handle, text: z.string().max(400_000), removed: z.boolean().optional() }),
  /** whether a finished job counts among the shop's own frequencies */
  learning: z.object({ job: lineId, counted: z.boolean(), reason: z.string().max(400) }),
  setting: z.object({
    key: z.enum([
      'shop-name',
      'shop-address',
      'units',
      'currency',
      'hour-rate',
      'next-due-note',
      /** "08:00-17:00" */
      'working-hours',
      /** what a day of waiting for a part is worth, in the shop's currency */
      'delay-per-day',
      /** "on" or "off": whether the shop's own frequencies speak beside the catalog's */
      'own-frequencies',
      /** "kept": pictures keep what the camera wrote beside them; anything else: it is taken out on the device */
      'picture-origin',
      /** the bars of the shop's print of the mat as measured, of 100 and 200 mm: "100.1 mm" */
      'mat-bar-100',
      'mat-bar-200',
    ]),
    value: z.string().max(400),
  }),
} as const;

export type EntryKind = keyof typeof bodies;
export type Body<K extends EntryKind> = z.infer<(typeof bodies)[K]>;
export type EntryOf<K extends EntryKind> = {
  readonly id: string;
  readonly job: string;
  readonly at: string;
  readonly rank?: number;
  readonly spoken?: true;
  readonly by: string;
  readonly kind: K;
  readonly v: number;
  readonly body: Body<K>;
};
/** An entry whose kind this version knows. */
export type Entry = { [K in EntryKind]: EntryOf<K> }[EntryKind];
/** What is stored and sent: the kind may be one a newer version writes. */
export interface RawEntry {
  readonly id: string;
  readonly job: string;
  readonly at: string;
  /** where the line stands in its log, in milliseconds, when that is not where `at` says: see `placeOf` */
  readonly rank?: number;
  /** said aloud and heard by the program; nothing else is worked out of it */
  readonly spoken?: true;
  readonly by: string;
  readonly kind: string;
  readonly v: number;
  readonly body: unknown;
}

/** The shop's own log stands under this job id. */
export const shopLog = 'shop';
