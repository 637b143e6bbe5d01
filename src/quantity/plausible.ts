import { listed } from '../phrase/index.js';
import { of, to } from './convert.js';
import { QuantityError } from './error.js';
import type { Quantity } from './quantity.js';
import { show } from './show.js';

export interface PlausibleBounds {
  readonly low: Quantity;
  readonly high: Quantity;
  /** what the bounds belong to, as a noun phrase: "a 5/16-18 bolt"; left out, the place where it is asked */
  readonly because?: string;
  /** ids of units a slip of the pen may have meant, the likeliest first */
  readonly likelyUnits: readonly string[];
}

/**
 * The quantity itself, when it lies within bounds the caller knows; else QuantityError 'implausible', which says
 * the bound and the likely intended reading: the same number in another unit that falls inside the bounds.
 * Throws QuantityError 'kind-mismatch' for bounds of another kind.
 *
 * Example: 140 ft-lb against at most 25 ft-lb: "140 ft-lb is far above what a 5/16-18 bolt takes (at most
 * 25 ft-lb); 140 in-lb would be plausible".
 */
export function requirePlausible<Q extends Quantity>(quantity: Q, bounds: PlausibleBounds): Q {
  const value = to(quantity, quantity.unit);
  const low = to(bounds.low, quantity.unit);
  const high = to(bounds.high, quantity.unit);
  if (value >= low && value <= high) return quantity;
  const over = value > high;
  const bound = over ? high : low;
  const given = show(quantity);
  const takes = bounds.because === undefined ? 'can be meant here' : `${bounds.because} takes`;
  const side = `${isFar(value, bound) ? 'far ' : ''}${over ? 'above' : 'below'} what ${takes}`;
  throw new QuantityError(
    'implausible',
    `${given} is ${side} (at ${over ? 'most' : 'least'} ${inWords(rounded(bound), quantity.unit)})`,
    {
      text: quantity.written ?? given,
      wanted: `${rounded(low)} to ${inWords(rounded(high), quantity.unit)}`,
      given,
      hint: likelyReading(quantity, bounds),
    },
  );
}

const inWords = (value: number, unit: string) => (unit === '1' ? String(value) : `${value} ${unit}`);

/** Off by a factor of two or more, or on the other side of zero. */
function isFar(value: number, bound: number): boolean {
  return !(value / bound > 0.5 && value / bound < 2);
}

function rounded(value: number): number {
  return Number(value.toPrecision(3));
}

function likelyReading(quantity: Quantity, { low, high, likelyUnits }: PlausibleBounds): string | undefined {
  // the number as the person has it in mind, free of the noise of conversion
  const number = Number(to(quantity, quantity.unit).toPrecision(12));
  const fitting = likelyUnits
    .filter((unit) => unit !== quantity.unit)
    .map((unit) => of(number, unit))
    .filter(({ kind, si }) => kind === quantity.kind && si >= low.si && si <= high.si);
  if (fitting.length === 0) return undefined;
  return `${listed(
    fitting.map((each) => inWords(number, each.unit)),
    'or',
  )} would be plausible`;
}
