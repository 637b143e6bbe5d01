import type { Salience } from './salience.js';

/** What a comb of cycle orders, every `cylinders`th of them a firing order, makes of a spectrum. All are 0 to 1. */
export interface Comb {
  /** mean salience at the firing orders */
  readonly firing: number;
  /** mean salience at all orders */
  readonly all: number;
  /** mean salience at the orders that are neither firing nor half-way between firings */
  readonly others: number;
  /** share of the salience that firing orders explain, and that all the other orders explain */
  readonly firingShare: number;
  readonly otherShare: number;
  /** salience of all orders together, in lines of full salience */
  readonly lines: number;
  /** salience at every second firing, from the first, over that at the others; at most 1 */
  readonly alternation: number;
  /** how far the strongest firing order lies below the strongest order, in decibels, 0 or more */
  readonly firingBelowDb: number;
}

/** Half the width of a line under a Hann window, in bins. */
const lineHalfWidth = 1.5;

export function salienceAt({ values }: Salience, bin: number): number {
  const i = Math.floor(bin);
  const t = bin - i;
  return i + 1 < values.length ? values[i]! * (1 - t) + values[i + 1]! * t : 0;
}

/**
 * Lines at multiples of `spacing`, in bins.
 *
 * Method: teeth from the lowest to the highest frequency at which anything stands out. What chance would put under so
 * dense a comb is taken off the shares.
 */
export function comb(salience: Salience, spacing: number, cylinders: number): Comb {
  const { mass, lowBin, highBin, levelsDb } = salience;
  const last = Math.max(cylinders, Math.floor((highBin + 1) / spacing));
  const first = (0.5 * lowBin) / spacing;
  const half = cylinders % 2 === 0 && cylinders > 2 ? cylinders / 2 : cylinders;
  const sums = { firing: 0, other: 0, odd: 0, first: 0, second: 0 };
  const counts = { firing: 0, other: 0, odd: 0 };
  let loudestFiring = Number.NEGATIVE_INFINITY;
  let loudestOther = Number.NEGATIVE_INFINITY;
  for (let order = 1; order <= last; order += 1) {
    const value = salienceAt(salience, order * spacing);
    const counted = order < first ? 0 : 1;
    const heard = value > 0.1 ? levelsDb[Math.round(order * spacing)]! : Number.NEGATIVE_INFINITY;
    if (order % cylinders === 0) {
      sums.firing += value;
      if ((order / cylinders) % 2 === 1) sums.first += value;
      else sums.second += value;
      if (heard > loudestFiring) loudestFiring = heard;
      counts.firing += counted;
    } else {
      sums.other += value;
      if (heard > loudestOther) loudestOther = heard;
      counts.other += counted;
    }
    if (order % half !== 0) {
      sums.odd += counted * value;
      counts.odd += counted;
    }
  }
  const found = mass > 0 ? Math.min(1, (sums.firing + sums.other) / mass) : 0;
  const chance = Math.min(0.6, lineHalfWidth / spacing);
  const honest = found > 0 ? Math.max(0, (found - chance) / (1 - chance)) / (sums.firing + sums.other) : 0;
  return {
    firing: ratio(sums.firing, counts.firing),
    all: ratio(sums.firing + sums.other, counts.firing + counts.other),
    others: ratio(sums.odd, counts.odd),
    firingShare: sums.firing * honest,
    otherShare: sums.other * honest,
    lines: sums.firing + sums.other,
    alternation: Math.min(1, sums.second > 0 ? sums.first / sums.second : 1),
    firingBelowDb: Math.max(0, Math.min(60, loudestOther - loudestFiring)) || 0,
  };
}

const ratio = (sum: number, count: number): number => (count > 0 ? Math.min(1, sum / count) : 0);
