import type { Origin } from '../../quantity/index.js';
import { type Answer, computed, type Extra, verdict as plainVerdict } from '../../worksheet/index.js';
import { notThisEngines } from '../class-figures.js';
import { type Decision, decide } from '../decide.js';
import type { UsedLimit } from './fields.js';

type WithPicture = Pick<Extra, 'picture'>;

/**
 * A verdict with its reason; the origin says whose limit it was. A figure of the class decides nothing about one engine:
 * how the reading stands to it is said, and that it is not known whether that is right here.
 */
export function verdict(
  id: string,
  label: string,
  { verdict: decided, stands, why }: Decision,
  origin: Origin,
  extra: WithPicture = {},
): Answer {
  if (origin.from !== 'rule of thumb') return plainVerdict(id, label, decided, why, origin, extra);
  const text = `class figure only: ${stands} Only this engine’s own limit decides.`;
  return plainVerdict(id, label, 'cannot-decide', text, origin, {
    note: `the limit is ${notThisEngines}`,
    ...extra,
  });
}

/** What cannot be right with any limit, in words. */
export const failing = (id: string, label: string, text: string, extra: WithPicture = {}): Answer =>
  plainVerdict(id, label, 'fail', text, computed('what goes together has room to move'), extra);

interface Fit {
  readonly value: number;
  readonly u: number;
  readonly unit: string;
}

/**
 * A clearance held against its limit: less than nothing surely fails, whatever the limit, and without a least allowed
 * nothing stands for it. `tight` says what a clearance below nothing means.
 */
export function fitVerdict(
  [id, label]: readonly [id: string, label: string],
  { value, u, unit }: Fit,
  { limit, origin }: UsedLimit,
  tight: string,
): Answer {
  const together = decide({ value, u, unit, limit: { min: 0 } });
  if (together.verdict === 'fail') return failing(id, label, tight);
  return verdict(id, label, decide({ value, u, unit, limit: { ...limit, min: limit.min ?? 0 } }), origin);
}
