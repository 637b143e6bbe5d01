import { type Comb, comb } from './comb.js';
import type { Cycle } from './engine-kind.js';
import type { Salience } from './salience.js';

/** The low band is a witness in full, each envelope a lesser one: valves and sparks tick in the high band too. */
const weights = [1, 0.5, 0.5];

/** How well a cycle rate fits all witnesses, 0 to 1. */
export function cycleEvidence(
  witnesses: readonly Salience[],
  hz: number,
  { cylinders, strokes }: Cycle,
): number {
  const steepness = cylinders > 1 ? 0 : strokes === 2 ? twoStrokeSteepness : fourStrokeSteepness;
  let sum = 0;
  // a plain loop: it is asked a million times a minute
  for (let i = 0; i < witnesses.length; i += 1) {
    const salience = witnesses[i]!;
    const found = comb(salience, hz / salience.step, cylinders);
    const worth = weights[i]! * worthOf(found);
    sum += steepness === 0 || found.alternation === 1 ? worth : worth * found.alternation ** steepness;
  }
  return sum / 2;
}

/** The same of one moment, by whichever slope of speed speaks best for the rate. */
export function bestEvidence(
  bent: readonly (readonly { readonly witnesses: readonly Salience[] }[])[],
  n: number,
  hz: number,
  cycle: Cycle,
): number {
  let best = 0;
  for (const frames of bent) best = Math.max(best, cycleEvidence(frames[n]!.witnesses, hz, cycle));
  return best;
}

/** Mean salience at odd and at even orders, firings left out, over all witnesses. */
export function parityOf(witnesses: readonly Salience[], hz: number, { cylinders }: Cycle) {
  const found = witnesses.map((salience) => comb(salience, hz / salience.step, cylinders));
  const mean = (of: 'odd' | 'even') => found.reduce((sum, each, i) => sum + weights[i]! * each[of], 0);
  return { odd: mean('odd'), even: mean('even') };
}

/** Orders of a cycle rate that stand out, over all witnesses, in lines of full salience. */
export const linesOf = (witnesses: readonly Salience[], hz: number, { cylinders }: Cycle): number =>
  witnesses.reduce((sum, salience) => sum + comb(salience, hz / salience.step, cylinders).lines, 0);

/** Share of what stands out that the orders of a cycle rate explain, over all witnesses, 0 to 1. */
export const shareOf = (witnesses: readonly Salience[], hz: number, { cylinders }: Cycle): number =>
  witnesses.reduce((sum, salience, i) => {
    const { firingShare, otherShare } = comb(salience, hz / salience.step, cylinders);
    return sum + (weights[i]! * (firingShare + otherShare)) / 2;
  }, 0);

/**
 * A two-stroke fires each turn, and a weaker line half-way is a cycle skipped; a four-stroke's lines half-way between
 * turns are its firings, and what stands on the whole turns comes from the crankshaft as well.
 */
const twoStrokeSteepness = 0.6;
const fourStrokeSteepness = 0.2;

/** Lines that a comb must gather before it is one. */
const fewLines = 1.5;

/**
 * Precision times recall: a rate too slow leaves firing orders over nothing, one too fast leaves lines unexplained.
 * Orders between firings explain in full only where they are many, as on an engine whose cylinders differ; where only
 * every other line would be a firing, the lines are the firings themselves. The firing orders are seldom far below
 * the strongest, and one line is no comb.
 */
function worthOf({ firing, all, firingShare, otherShare, others, firingBelowDb, lines }: Comb): number {
  if (firing === 0) return 0;
  const explained = firingShare + otherShare * (0.7 + 0.3 * others);
  return firing * explained * all ** 0.3 * 10 ** (-firingBelowDb / 60) * (lines / (lines + fewLines));
}
