import { z } from 'zod';
import { origin } from './fields/origin.js';
import { refs } from './fields/reference.js';
import { when } from './fields/when.js';
import { id, line, minutes, shorthand, words } from './fields/word.js';

export const stageIds = [
  'intake',
  'findings',
  'worth-it',
  'parts',
  'teardown',
  'measure',
  'assembly',
  'run-up',
  'hand-over',
] as const;
export const stage = z.enum(stageIds);
export type StageId = (typeof stageIds)[number];

const span = z.strictObject({ from: minutes, to: minutes });

/** The work that a bench plan takes from the trade's usual minutes. */
const benchTasks = [
  'take in',
  'find the fault',
  'quote',
  'order',
  'clean',
  'measure',
  'first start',
  'working test',
  'hand over',
] as const;
export type BenchTask = (typeof benchTasks)[number];

/** One piece of the whole job as the trade does it, under the stage it belongs to. */
export const stagePart = z.strictObject({
  id,
  name: line,
  /** left out for what runs through all stages */
  stage: stage.optional(),
  goal: words,
  decisions: words,
  /** the piece of work on the bench plan to whose minutes it adds */
  planned: z.enum(benchTasks).optional(),
  goesWrong: z.array(line).min(1),
  forgotten: z.array(line).min(1),
  activeMinutes: z.array(z.strictObject({ ...span.shape, of: line.optional() })),
  /** adds to all stages, in percent */
  addsPercent: span.optional(),
  wait: line.optional(),
  origin,
});

/** What a whole job of a kind takes. */
export const jobTotal = z.strictObject({ id, name: line, active: span, origin });

/** Not on before this is true. */
export const gate = z.strictObject({
  id,
  name: line,
  stage,
  /** the machines on which it is asked */
  when: when.optional(),
  /** components that must be in for the gate to be asked */
  after: refs('components'),
  /** each on the machines that have it */
  demands: z.array(shorthand('words', z.strictObject({ words: line, when: when.optional() }))).min(1),
  /** pictures wanted once it is passed */
  views: z.array(line).min(1).optional(),
  measurements: refs('measurements').optional(),
  checks: refs('checks').optional(),
  origin,
});
