/** What a number is read in, in one unit: the steps of its scale and what is believed. */
export interface Scale {
  readonly step: number;
  readonly low: number;
  readonly high: number;
}

/** So many numbers leave room for "go higher", "go lower" and "go back" among eight phrases. */
export const mostNumbers = 5;

/**
 * What the tools of a bench are read in, and no finer. A unit that is not here is typed, and so is what lies between two steps:
 * digits that may be any are not told well enough (docs/voice.md).
 */
export const steps: Readonly<Record<string, number>> = {
  ...{ in: 0.001, mm: 0.05, psi: 5, kPa: 50, rpm: 50, '%': 5, inH2O: 1, s: 5 },
};

const digits = 'zero one two three four five six seven eight nine'.split(' ');

/** "115" → "one one five", "0.015" → "point zero one five", "5" → "zero five": two words at least, said and said back alike. */
export function numberAloud(number: string): string {
  const bare = number.replace(/^0(?=\.)/, '').padStart(2, '0');
  return [...bare].map((sign) => (sign === '.' ? 'point' : digits[Number(sign)]!)).join(' ');
}

/**
 * The few numbers that are listened for: those of the scale nearest to a nominal, rising, and `page` of as many farther up
 * or down. Fewer at the ends of what is believed, and none beyond them. "120 psi": 110, 115, 120, 125, 130.
 */
export function numbersNear({ step, low, high }: Scale, nominal: number, page = 0): string[] {
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  const middle = Math.round(nominal / step) + mostNumbers * page;
  return Array.from({ length: mostNumbers }, (_, n) => middle - Math.floor(mostNumbers / 2) + n)
    .filter((at) => at >= 0 && at * step >= low - step / 1e3 && at * step <= high + step / 1e3)
    .map((at) => (at * step).toFixed(decimals));
}
