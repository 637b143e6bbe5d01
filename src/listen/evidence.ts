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
  witnesses.forEach((salience, i) => {
    const found = comb(salience, hz / salience.step, cylinders);
    sum += weights[i]! * worthOf(found) * found.alternation ** steepness;
  });
  return sum / 2;
}

/** Orders of a cycle rate that stand out, over all witnesses, in lines of full salience. */
export const linesOf = (witnesses: readonly Salience[], hz: number, { cylinders }: Cycle): number =>
  witnesses.reduce((sum, salience) => sum + comb(salience, hz / salience.step, cylinders).lines, 0);

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
  const explained = firingShare + otherShare * (0.7 + 0.3 * others);
  return firing * explained * all ** 0.3 * 10 ** (-firingBelowDb / 60) * (lines / (lines + fewLines));
}
