import {
  chanceWords,
  type Decision,
  exactlyBelow,
  exactWords,
  standardConfidence,
  standsWords,
  verdictWords,
} from './decide.js';
import { GaugeError, requireConfidence, requireFinite, requireNotNegative } from './error.js';
import { figure } from './figure.js';
import { meanWidestRange, noiseRangeBelow } from './noise-range.js';
import { normalBelow } from './normal.js';

interface Picked {
  /** how many readings it was picked from */
  readonly count: number;
  readonly confidence?: number | undefined;
  readonly unit?: string | undefined;
}

export interface Spread extends Picked {
  /** largest less smallest, or the width of a zone */
  readonly spread: number;
  /** standard uncertainty of one reading, without the part common to all readings (it drops out of a difference) */
  readonly u: number;
  /** at most */
  readonly max: number;
  /**
   * Set when the readings were not taken independently (heights worked out from straightedge gaps): the largest
   * standard uncertainty of a difference between any two of them.
   */
  readonly uDifference?: number | undefined;
  /** the readings in groups of so many, the spread being the widest of the groups' own (taper: one group a direction) */
  readonly eachOf?: number | undefined;
}

export interface Extreme extends Picked {
  readonly value: number;
  /** standard uncertainty of one reading, with everything in it */
  readonly u: number;
  readonly limit: { readonly max: number } | { readonly min: number };
}

/**
 * Whether a quantity of the kind "largest less smallest" (taper, out-of-round, flatness, roundness) meets its limit.
 *
 * Such a quantity is picked from noise: it reads high even on a perfect part, so the plain normal rule would fail good
 * parts. Source: own derivation on the rule of JCGM 106:2012; order statistics of normal errors.
 * Method, for errors independent between readings with standard uncertainty u:
 *   pass when Φ((max − spread)/(√2·u)) ≥ confidence. The two places that truly lie farthest apart were read too, and
 *   the spread is at least their difference, whose standard uncertainty is √2·u.
 *   fail when the chance that errors alone span less than (spread − max) is ≥ confidence. The spread is at most the
 *   true one plus the span of the errors.
 * Validity: a part beyond the limit passes, and a part within it fails, at most 1 − confidence of the time, for any
 * shape of part; for zone widths as well, since a zone width is a weighted sum of differences.
 * Special cases: u = 0 compares exactly. With `uDifference` the fail side uses Bonferroni's bound over all pairs.
 * Example: spread 0.003, u 0.0003, 9 readings, max 0.002 → cannot decide (the plain rule would have said fail).
 */
export function decideSpread(given: Spread): Decision {
  const { spread, u, count, max } = given;
  requireNotNegative(spread, 'spread');
  if (count < 2) throw new GaugeError('A spread needs at least two readings.', 'count', count);
  requirePicked(given, max);
  const chances = (value: number) => (u === 0 ? exact(value, max) : spreadChances(given, max - value));
  return decisionOf(given, {
    value: spread,
    limit: { max },
    chances: chances(spread),
    canEverPass: chances(0).pass >= (given.confidence ?? standardConfidence),
    note: spreadNote(given),
  });
}

/**
 * Whether the largest (or smallest) of several readings meets its limit: greatest wear of a bore, thinnest place of a
 * crankpin.
 *
 * Source and reasoning as for `decideSpread`. Pass when Φ(margin/u) ≥ confidence: the worst place was read too. Fail
 * when Φ(−margin/u)ⁿ ≥ confidence: the largest of n errors may have carried it over. Errors common to all readings
 * only make this safer (Slepian's inequality), so u holds everything.
 * Example: largest 2.564 of 9, u 0.0003, max 2.563 → fail.
 */
export function decideExtreme(given: Extreme): Decision {
  const { value, u, count, limit } = given;
  requireFinite(value, 'value');
  const [low, high] = 'max' in limit ? [value, limit.max] : [limit.min, value];
  requirePicked(given, 'max' in limit ? limit.max : limit.min);
  return decisionOf(given, {
    value,
    limit,
    chances: u === 0 ? exact(low, high) : extremeChances(given, high - low),
    canEverPass: true,
    note: count > 1 && u > 0 ? ` It is the worst of ${count} readings; a fail allows for that.` : '',
  });
}

interface Chances {
  readonly pass: number;
  readonly fail: number;
}

/** Whether `low` does not stand above `high`. */
function exact(low: number, high: number): Chances {
  return exactlyBelow(high, low) ? { pass: 0, fail: 1 } : { pass: 1, fail: 0 };
}

function spreadChances({ u, uDifference, count, eachOf = count }: Spread, margin: number): Chances {
  const pass = normalBelow(margin / (uDifference ?? Math.SQRT2 * u));
  if (uDifference === undefined)
    return { pass, fail: noiseRangeBelow(-margin / u, eachOf) ** (count / eachOf) };
  return { pass, fail: Math.max(0, 1 - count * (count - 1) * normalBelow(margin / uDifference)) };
}

function extremeChances({ u, count }: Extreme, margin: number): Chances {
  return { pass: normalBelow(margin / u), fail: normalBelow(-margin / u) ** count };
}

function requirePicked(
  { count, confidence = standardConfidence, ...rest }: Picked & { u: number },
  bound: number,
) {
  requireNotNegative(rest.u, 'u');
  requireFinite(bound, 'limit');
  if (!Number.isInteger(count) || count < 1)
    throw new GaugeError(`count must be a whole number from 1; got ${count}.`, 'count', count);
  requireConfidence(confidence);
}

interface Outcome {
  readonly value: number;
  readonly limit: { readonly max: number } | { readonly min: number };
  readonly chances: Chances;
  readonly canEverPass: boolean;
  readonly note: string;
}

function decisionOf(
  { confidence = standardConfidence, u, unit }: Picked & { readonly u: number },
  { value, limit, chances, canEverPass, note }: Outcome,
): Decision {
  const verdict = chances.pass >= confidence ? 'pass' : chances.fail >= confidence ? 'fail' : 'cannot-decide';
  const margin = 'max' in limit ? limit.max - value : value - limit.min;
  const said = (x: number) => figure(x, u, unit);
  const stands = standsWords({ value, u, unit, limit }, margin);
  const chance =
    u === 0 ? exactWords : chanceWords(verdict, chances.pass, confidence, `u = ${said(u)} a reading`);
  const why = `${stands} ${chance}${note}${canEverPass ? '' : tooCoarse}`;
  const words = `${verdictWords[verdict]}: ${why}`;
  return { verdict, probabilityOfConformity: chances.pass, margin, canEverPass, stands, why, words };
}

const tooCoarse = ' The tool is too coarse for this limit: even a perfect part could not pass.';

function spreadNote({ count, u, unit, uDifference, eachOf = count }: Spread): string {
  if (u === 0 || uDifference !== undefined) return '';
  const shown = figure(meanWidestRange(eachOf, count / eachOf) * u, u, unit);
  const groups = eachOf === count ? '' : ` in groups of ${eachOf}`;
  return ` A perfect part would show about ${shown} over ${count} readings${groups}.`;
}
