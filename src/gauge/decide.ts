import { GaugeError, requireConfidence, requireFinite, requireNotNegative } from './error.js';
import { chanceOf, figure } from './figure.js';
import { normalBelow } from './normal.js';
import { studentBelow } from './student.js';

export type Verdict = 'pass' | 'fail' | 'cannot-decide';

/** What is allowed, in the unit of the value. At least one side. */
export interface Limit {
  readonly min?: number | undefined;
  readonly max?: number | undefined;
}

export interface Measured {
  readonly value: number;
  /** standard uncertainty (k = 1), in the unit of the value; 0 compares exactly */
  readonly u: number;
  readonly limit: Limit;
  /** how sure a pass or a fail must be; 0.95 when left out */
  readonly confidence?: number | undefined;
  /** effective degrees of freedom of u; normal distribution when left out */
  readonly degreesOfFreedom?: number | undefined;
  /** only for the words */
  readonly unit?: string | undefined;
}

export interface Decision {
  readonly verdict: Verdict;
  /** chance that the true value lies within the limit */
  readonly probabilityOfConformity: number;
  /** distance from the value to the nearest limit: positive inside, negative outside */
  readonly margin: number;
  /** false when even a value in the middle of the limits could not pass with this uncertainty */
  readonly canEverPass: boolean;
  /** where the value lies, without the chances */
  readonly stands: string;
  /** the reason in a sentence or two */
  readonly why: string;
  /** verdict and reason */
  readonly words: string;
}

export const standardConfidence = 0.95;

/**
 * Whether a measured value meets a limit, fails it, or cannot be decided with this tool.
 *
 * Source: JCGM 106:2012, 7.3–7.5 and 8 (probability of conformity); ISO 14253-1:2017 (95 % by default, so a guard
 * band of 1.65u at a one-sided limit; from memory).
 * Method: the true value is taken as normal about the reading with standard deviation u (Student's t where degrees
 * of freedom are given). Pass: within both limits with at least the confidence. Fail: beyond one named limit with at
 * least the confidence. Anything else cannot be decided.
 * Validity: of parts whose true value lies outside the limit, at most 1 − confidence are passed. Of parts inside, at
 * most 1 − confidence a side are failed. Nothing is assumed about what parts usually measure.
 * Special cases: u = 0 compares exactly (to 1e-12), the limit itself conforms, and the words say that no uncertainty was given.
 * Throws GaugeError for no limit, limits that cross, u < 0, or a confidence outside 0.5…1.
 * Example: value −5.47 V, u 0.05 V, max −5.40 V → probability of conformity 0.919, cannot decide at 0.95.
 */
export function decide(measured: Measured): Decision {
  const confidence = check(measured);
  const odds = oddsOf(measured);
  const verdict = verdictOf(odds, confidence);
  const margin = marginOf(measured.value, measured.limit);
  const canEverPass = passesInTheMiddle(measured, confidence);
  const stands = standsWords(measured, margin);
  const why = `${stands} ${chancesOf(measured, { verdict, canEverPass }, odds.within, confidence)}`;
  return {
    verdict,
    probabilityOfConformity: odds.within,
    margin,
    canEverPass,
    stands,
    why,
    words: `${verdictWords[verdict]}: ${why}`,
  };
}

interface Odds {
  readonly below: number;
  readonly within: number;
  readonly above: number;
}

function check({ value, u, limit, confidence = standardConfidence, degreesOfFreedom }: Measured): number {
  requireFinite(value, 'value');
  requireNotNegative(u, 'u');
  const { min, max } = limit;
  if (min === undefined && max === undefined)
    throw new GaugeError('limit needs a min, a max or both.', 'limit', limit);
  if (min !== undefined) requireFinite(min, 'limit.min');
  if (max !== undefined) requireFinite(max, 'limit.max');
  if (min !== undefined && max !== undefined && min > max)
    throw new GaugeError(`limit.min ${min} stands above limit.max ${max}.`, 'limit', limit);
  requireConfidence(confidence);
  if (degreesOfFreedom !== undefined && !(degreesOfFreedom >= 1))
    throw new GaugeError(
      `degreesOfFreedom must be at least 1; got ${degreesOfFreedom}.`,
      'degreesOfFreedom',
      degreesOfFreedom,
    );
  return confidence;
}

function oddsOf({
  value,
  u,
  limit: { min, max },
  degreesOfFreedom = Number.POSITIVE_INFINITY,
}: Measured): Odds {
  if (u === 0) return exactOdds(value, min, max);
  const chance = (z: number) =>
    Number.isFinite(degreesOfFreedom) ? studentBelow(z, degreesOfFreedom) : normalBelow(z);
  const below = min === undefined ? 0 : chance((min - value) / u);
  const above = max === undefined ? 0 : chance((value - max) / u);
  // The complement is taken on the sum of tails, so that nearly certain conformity keeps its digits in the tails.
  return { below, above, within: Math.max(0, 1 - (below + above)) };
}

function exactOdds(value: number, min: number | undefined, max: number | undefined): Odds {
  const below = min !== undefined && exactlyBelow(value, min) ? 1 : 0;
  const above = max !== undefined && exactlyBelow(max, value) ? 1 : 0;
  return { below, above, within: 1 - below - above };
}

/** Below by more than binary rounding: 2.5640 − 2.5580 must not fall short of 0.0060. */
export function exactlyBelow(a: number, b: number): boolean {
  return b - a > 1e-12 * Math.max(Math.abs(a), Math.abs(b));
}

function verdictOf(odds: Odds, confidence: number): Verdict {
  if (odds.within >= confidence) return 'pass';
  // One side must be proven: a very coarse tool makes conformity unlikely without showing anything wrong.
  return Math.max(odds.below, odds.above) >= confidence ? 'fail' : 'cannot-decide';
}

function marginOf(value: number, { min, max }: Limit): number {
  return Math.min(
    min === undefined ? Number.POSITIVE_INFINITY : value - min,
    max === undefined ? Number.POSITIVE_INFINITY : max - value,
  );
}

function passesInTheMiddle(measured: Measured, confidence: number): boolean {
  const { min, max } = measured.limit;
  if (min === undefined || max === undefined) return true;
  return oddsOf({ ...measured, value: (min + max) / 2 }).within >= confidence;
}

export function standsWords({ value, u, unit, limit }: Measured, margin: number): string {
  const said = (x: number) => figure(x, u, unit);
  return `${said(value)} lies ${whereWords(margin, said)} (${limitWords(limit, said)}).`;
}

function chancesOf(
  { u, unit }: Measured,
  { verdict, canEverPass }: Pick<Decision, 'verdict' | 'canEverPass'>,
  within: number,
  confidence: number,
): string {
  if (u === 0) return exactWords;
  const chances = chanceWords(verdict, within, confidence, `u = ${figure(u, u, unit)}`);
  return `${chances}${canEverPass ? '' : coarse}`;
}

function whereWords(margin: number, said: (x: number) => string): string {
  const distance = said(Math.abs(margin));
  if (Number.parseFloat(distance) === 0) return 'on the limit';
  return `${distance} ${margin > 0 ? 'inside' : 'outside'} the limit`;
}

export const exactWords = 'No uncertainty was given, so this is an exact comparison.';

export function chanceWords(verdict: Verdict, within: number, confidence: number, u: string): string {
  const chance = `With ${u}, the chance that it conforms is ${chanceOf(within)}`;
  if (verdict !== 'cannot-decide') return `${chance}.`;
  return `${chance}; ${chanceOf(confidence)} one way or the other would decide.`;
}

export const verdictWords: Record<Verdict, string> = {
  pass: 'Pass',
  fail: 'Fail',
  'cannot-decide': 'Cannot decide with this tool',
};
const coarse = ' The tool is too coarse for these limits: no reading at all could pass.';

function limitWords({ min, max }: Limit, said: (x: number) => string): string {
  if (min === undefined) return `at most ${said(max ?? 0)}`;
  if (max === undefined) return `at least ${said(min)}`;
  const [low, high] = [said(min), said(max)];
  // the unit stands once, after the last
  return low === high ? `exactly ${high}` : `${low.split(' ')[0]} to ${high}`;
}
