import type { Origin } from '../../quantity/index.js';
import { type Answer, type Extra, verdict as plainVerdict } from '../../worksheet/index.js';
import { notThisEngines } from '../class-figures.js';
import type { Decision } from '../decide.js';

/** A verdict with its reason; the origin says whose limit it was, and a class limit is marked in plain sight. */
export function verdict(
  id: string,
  label: string,
  { verdict: decided, why }: Decision,
  origin: Origin,
  extra: Pick<Extra, 'picture'> = {},
): Answer {
  const note = origin.from === 'rule of thumb' ? `the limit is ${notThisEngines}` : undefined;
  return plainVerdict(id, label, decided, why, origin, { note, ...extra });
}
