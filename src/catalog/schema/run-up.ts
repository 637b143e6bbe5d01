import { z } from 'zod';
import { kinds } from '../../quantity/index.js';
import { figure } from './fields/figure.js';
import { needs } from './fields/needs.js';
import { origin } from './fields/origin.js';
import { ref, refs } from './fields/reference.js';
import { when } from './fields/when.js';
import { engineDuring, id, line, words } from './fields/word.js';

export const runUpPhases = [
  'before-fuel',
  'base-settings',
  'static-governor',
  'first-start',
  'warm-up',
  'carburetor',
  'governed-speed',
  'hunting',
  'load-test',
  'heat-and-leak',
  'stop-checks',
  'after-heat',
  'break-in',
] as const;

/** Packs bring steps of every phase: the run-up goes through its phases, and within one in the order of the packs. */
export const inPhases = <Step extends { readonly phase: string }>(steps: readonly Step[]): Step[] =>
  steps.toSorted((a, b) => place(a) - place(b));

const place = ({ phase }: { readonly phase: string }): number =>
  (runUpPhases as readonly string[]).indexOf(phase);

/** One act of the run-up, in order. */
export const runUpStep = z.strictObject({
  id,
  phase: z.enum(runUpPhases),
  title: line,
  words: words.optional(),
  when: when.optional(),
  /** what the engine does meanwhile; it stands still when left out */
  engine: engineDuring.optional(),
  /** what must be so for it, or it cannot be done */
  needs: needs.optional(),
  /** shown before the act */
  cautions: refs('cautions').optional(),
  answer: z.enum(['done', 'reading']),
  kind: z.enum(kinds).optional(),
  figures: z.array(figure).optional(),
  /** a limit that holds on every machine this step is for, whatever its sheet says */
  rule: figure.optional(),
  measurement: ref('measurements').optional(),
  /** the line of the maker's sheet that the reading is held against */
  spec: ref('specs').optional(),
  /** other lines of the maker's sheet that the person needs before their eyes */
  alsoSpecs: refs('specs').optional(),
  check: ref('checks').optional(),
  /** how long the engine must have run before it */
  runMinutes: z.number().gt(0).optional(),
  /** whoever signs it has gone through every gate of the assembly */
  provesAssembly: z.literal(true).optional(),
  /** asked for outright before the machine leaves */
  barsHandOver: z.literal(true).optional(),
  origin,
});

/** A number that is written down before the machine leaves. */
export const acceptance = z.strictObject({
  id,
  title: line,
  when: when.optional(),
  kind: z.enum([...kinds, 'count', 'words']),
  unit: z.string().optional(),
  measurement: ref('measurements').optional(),
  spec: ref('specs').optional(),
  check: ref('checks').optional(),
  figures: z.array(figure).optional(),
  /** what a recording made after the work tells of it */
  heard: z.enum(['pulls, cold', 'pulls, hot', 'speed']).optional(),
  origin,
});

/** What is due next, and when. */
export const nextDue = z.strictObject({
  id,
  what: line,
  due: line,
  hours: z.strictObject({ from: z.number(), to: z.number() }).optional(),
  months: z.number().optional(),
  when: when.optional(),
  needs: needs.optional(),
  origin,
});

/** A way to lay the machine up. */
export const layUp = z.strictObject({
  id,
  name: line,
  steps: z.array(line).min(1),
  note: line.optional(),
  origin,
});
