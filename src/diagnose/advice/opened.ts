import type { Check, Component } from '../../catalog/index.js';
import type { ExactInference } from '../../infer/index.js';
import type { Machine } from '../machine/machine.js';
import { isActedOn, type Stakes } from './stakes.js';
import { weighedFaults } from './weighed.js';

/** Repairs that would be made as things stand. */
export interface ActedOn {
  readonly id: string;
  readonly probability: number;
  readonly stakes: Stakes;
  /** what comes off for it */
  readonly opens: ReadonlySet<string>;
}

export function actedOn(machine: Machine, inference: ExactInference): ActedOn[] {
  const place = new Map(inference.faults.map((id, i) => [id, i]));
  return weighedFaults(machine, inference)
    .map((w) => ({ ...w, probability: inference.posterior[place.get(w.now)!]! }))
    .filter((w) => isActedOn(w.probability, w.stakes));
}

/** The catalog's frequencies may be so many times off in a shop: a repair is weighed as if the odds for it were so much less. */
const oddsOff = 3;
/** From here on a look would only say it again: one at the fault itself, and one at something that it shows. */
const sure = { seen: 0.97, shown: 0.8 };

export interface Confirming {
  /** the minutes that the look costs beside what comes off for the repair anyway */
  readonly minutes: number;
  /** minutes of needless work that it saves */
  readonly saves: number;
}

/**
 * What a look is worth before the repairs that would be made: it shows one of their faults itself, or would show it, and
 * what comes off for the repair is paid for. Undefined where it speaks of none of them.
 */
export function confirmingLook(
  check: Check,
  { minutes, comesOff }: { readonly minutes: number; readonly comesOff: readonly Component[] },
  repairs: readonly ActedOn[],
): Confirming | undefined {
  const shows = (id: string, strength: 'seen' | 'strong'): boolean =>
    check.links.some(
      (l) => l.fault === id && (l.strength === strength || check.differentialOf !== undefined),
    );
  const meant = repairs.filter(
    ({ id, probability: p }) =>
      (p < sure.seen && shows(id, 'seen')) || (p < sure.shown && shows(id, 'strong')),
  );
  if (meant.length === 0) return undefined;
  const opened = new Set(meant.flatMap((r) => [...r.opens]));
  const beside = comesOff.reduce((left, c) => (opened.has(c.id) ? left - c.minutesOff : left), minutes);
  const saves = meant.reduce((sum, { probability: p, stakes }) => {
    const absent = (oddsOff * (1 - p)) / (p + oddsOff * (1 - p));
    return sum + absent * stakes.needless;
  }, 0);
  return { minutes: beside, saves };
}
