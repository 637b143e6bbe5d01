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
  /** mean salience at the odd and at the even orders, firings left out */
  readonly odd: number;
  readonly even: number;
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
  const lowest = (0.5 * lowBin) / spacing;
  const half = cylinders % 2 === 0 && cylinders > 2 ? cylinders / 2 : cylinders;
  let [firing, odd, even, between, first, second] = [0, 0, 0, 0, 0, 0];
  const counts = { firing: 0, odd: 0, even: 0, between: 0 };
  let [other, loudestFiring, loudestOther] = [0, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let order = 1, toFiring = cylinders, fired = 0; order <= last; order += 1) {
    const value = salienceAt(salience, order * spacing);
    const counted = order < lowest ? 0 : 1;
    const heard = value > 0.1 ? levelsDb[Math.round(order * spacing)]! : Number.NEGATIVE_INFINITY;
    toFiring -= 1;
    if (toFiring === 0) {
      toFiring = cylinders;
      fired += 1;
      firing += value;
      if (fired % 2 === 1) first += value;
      else second += value;
      if (heard > loudestFiring) loudestFiring = heard;
      counts.firing += counted;
    } else {
      other += value;
      if (heard > loudestOther) loudestOther = heard;
      if (counted === 1 && order % 2 === 1) {
        odd += value;
        counts.odd += 1;
      } else if (counted === 1) {
        even += value;
        counts.even += 1;
      }
    }
    if (counted === 1 && order % half !== 0) {
      between += value;
      counts.between += 1;
    }
  }
  const found = mass > 0 ? Math.min(1, (firing + other) / mass) : 0;
  const chance = Math.min(0.6, lineHalfWidth / spacing);
  const honest = found > 0 ? Math.max(0, (found - chance) / (1 - chance)) / (firing + other) : 0;
  return {
    firing: ratio(firing, counts.firing),
    all: ratio(firing + other, counts.firing + (counts.odd + counts.even)),
    others: ratio(between, counts.between),
    firingShare: firing * honest,
    otherShare: other * honest,
    lines: firing + other,
    alternation: Math.min(1, second > 0 ? first / second : 1),
    odd: ratio(odd, counts.odd),
    even: ratio(even, counts.even),
    firingBelowDb: Math.max(0, Math.min(60, loudestOther - loudestFiring)) || 0,
  };
}

const ratio = (sum: number, count: number): number => (count > 0 ? Math.min(1, sum / count) : 0);
