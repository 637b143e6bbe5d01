/** How far one thing not known moves the logarithm of a result, at two standard uncertainties either way (k = 2). */
export interface BandShare {
  readonly what: string;
  readonly down: number;
  readonly up: number;
}

/** low and high at k = 2 */
export interface Band {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * A share from the logarithms of what the result becomes at both ends, over the likely one. A move that helps one way
 * hurts the other; where both hurt, only the larger harm counts, and so for gains.
 */
export const shareOf = (what: string, ends: readonly number[]): BandShare => ({
  ...{ what, down: Math.max(0, -Math.min(...ends)), up: Math.max(0, ...ends) },
});

export const evenShare = (what: string, ln: number): BandShare => ({ what, down: 2 * ln, up: 2 * ln });

export const widestFirst = (shares: readonly BandShare[]): readonly BandShare[] =>
  [...shares].sort((p, q) => q.down + q.up - p.down - p.up);

/**
 * The band of a result from its shares: the moves down added in quadrature for the low end, those up for the high end.
 *
 * Source: the GUM's law of propagation (JCGM 100:2008, 5.1.2) in the logarithm, with differences at k = 2 in place of
 * derivatives, each side for itself. Example: 100 and shares of 0.3 and 0.4 down, 0.3 up: from 60.7 to 135.
 */
export function bandOf(likely: number, shares: readonly BandShare[]): Band {
  const side = (of: 'down' | 'up') => Math.exp(Math.hypot(...shares.map((share) => share[of])));
  return { low: likely / side('down'), likely, high: likely * side('up') };
}

/** A value moved by so many of its standard uncertainties (`sign` says how many, and which way), of its logarithm … */
export const byLn = (ln: number) => (value: number, sign: number) => value * Math.exp(sign * ln);
/** … or of itself. */
export const byStep = (step: number) => (value: number, sign: number) => value + sign * step;
