import { type Decision, decide } from './decide.js';
import { GaugeError, requireFinite, requireNotNegative, requirePositive } from './error.js';
import { figure } from './figure.js';
import { normalQuantile } from './normal.js';

/** Everything in one unit of length. Cold, valves lapped, crank where the maker's sheet wants it. */
export interface ValveClearance {
  readonly measured: number;
  /** standard uncertainty of the measurement */
  readonly u: number;
  readonly min: number;
  readonly max: number;
  readonly confidence?: number | undefined;
  readonly unit?: string | undefined;
}

/** What is done to a side valve: grinding the stem end only ever opens the clearance. */
export interface StemAnswer {
  readonly action: 'leave' | 'measure better' | 'shorten stem' | 'cut seat or fit another valve';
  readonly now: Decision;
  /** stock off the stem end that brings the clearance to the middle of the range; 0 unless the action is to shorten */
  readonly remove: number;
  /** take off no more than this before measuring again: it cannot overshoot the range's top */
  readonly firstCut: number;
  readonly words: string;
}

/**
 * How much to take off the stem end of a side valve with too little clearance.
 *
 * Source: common practice (stem ends are ground square, a little at a time); the arithmetic is plain: clearance grows by
 * what the stem loses.
 * Method: aim at the middle of the range. The first cut is half of that, and never so much that the clearance could
 * pass the top of the range with more than 1 − confidence: stock does not grow back.
 * Special cases: too wide is never answered by grinding the stem; the seat is cut (the valve drops and the clearance
 * closes) or another valve fitted. A clearance the feelers cannot decide is left until it is measured better. A nil
 * clearance hides how tight it is: the valve may be held off its seat, so the cut is only the first.
 * Throws GaugeError for a range that is empty or negative.
 * Example: 0.002 in, u 0.0005, range 0.005 … 0.007 → remove 0.004, first cut 0.002.
 */
export function stemShortening(given: ValveClearance): StemAnswer {
  const { measured, u, min, max, confidence = 0.95, unit } = given;
  requireRange(given);
  const now = decide({ value: measured, u, limit: { min, max }, confidence, unit });
  if (now.verdict === 'pass') return answer('leave', now, 0, 0, 'Inside the range: leave the stem alone.');
  const middle = (min + max) / 2;
  if (measured > max || (now.verdict === 'cannot-decide' && measured >= middle)) return wideOrUnclear(now);
  if (now.verdict === 'cannot-decide' && measured >= min)
    return answer(
      'measure better',
      now,
      0,
      0,
      'Perhaps tight, perhaps not: measure again before taking stock off.',
    );
  return shorten(given, now, middle - measured);
}

function requireRange({ measured, u, min, max }: ValveClearance): void {
  requireNotNegative(measured, 'measured');
  requireNotNegative(u, 'u');
  requireNotNegative(min, 'min');
  if (Number.isNaN(max)) throw new GaugeError('Give both the least and the most allowed.', 'max');
  if (!(requireFinite(max, 'max') > min))
    throw new GaugeError(`The range ${min} to ${max} is empty.`, 'max', max);
}

function wideOrUnclear(now: Decision): StemAnswer {
  if (now.verdict === 'cannot-decide')
    return answer(
      'measure better',
      now,
      0,
      0,
      'Perhaps wide, perhaps not: measure again. Grinding the stem would only widen it.',
    );
  return answer(
    'cut seat or fit another valve',
    now,
    0,
    0,
    'Too wide: never grind the stem. Cutting the seat lets the valve drop and closes the clearance; or fit another valve.',
  );
}

function shorten(
  { measured, u, max, confidence = 0.95, unit }: ValveClearance,
  now: Decision,
  remove: number,
): StemAnswer {
  const safe = Math.max(0, max - normalQuantile(confidence) * u - measured);
  const firstCut = Math.min(remove / 2, safe);
  const said = (x: number) => figure(x, u, unit);
  const nil =
    measured === 0
      ? ' No clearance at all: the valve may be held off its seat, so expect more to come off.'
      : '';
  return answer(
    'shorten stem',
    now,
    remove,
    firstCut,
    `Take ${said(remove)} off in all, ${said(firstCut)} first, square; clean, fit and measure again.${nil}`,
  );
}

function answer(
  action: StemAnswer['action'],
  now: Decision,
  remove: number,
  firstCut: number,
  words: string,
): StemAnswer {
  return { action, now, remove, firstCut, words };
}

/** What a cut did, once the clearance was measured again. */
export interface CutCheck {
  readonly before: number;
  readonly removed: number;
  readonly after: number;
  /** standard uncertainty of each clearance */
  readonly u: number;
}

/**
 * Whether the clearance grew by what came off the stem. If not, something else moved: stem end not square, burr, cam
 * not on its base circle, valve not seated. Source: plain arithmetic; two readings, so √2·u, at k = 2.
 * Example: 0.002 before, 0.002 off, 0.004 after → agrees.
 */
export function cutAgrees({ before, removed, after, u }: CutCheck): { agrees: boolean; unexplained: number } {
  requireNotNegative(removed, 'removed');
  const unexplained = requireFinite(after, 'after') - requireFinite(before, 'before') - removed;
  return {
    agrees: Math.abs(unexplained) <= 2 * Math.SQRT2 * requireNotNegative(u, 'u') + 1e-12,
    unexplained,
  };
}

export interface Adjuster extends ValveClearance {
  /** travel of the adjuster for one turn */
  readonly pitch: number;
  /** valve-side arm over push-rod-side arm of the rocker */
  readonly rockerRatio: number;
  /** where the adjuster sits: a screw over the push rod, or the nut the rocker pivots on */
  readonly at: 'push rod' | 'pivot' | 'valve';
}

export interface AdjusterAnswer {
  readonly action: 'leave' | 'open' | 'close';
  readonly now: Decision;
  /** turns of the adjuster, away from the valve for 'open' */
  readonly turns: number;
  readonly degrees: number;
  readonly words: string;
}

/**
 * How far to turn a rocker adjuster to bring the clearance to the middle of its range.
 *
 * Source: lever geometry. One unit at the push rod moves the valve end by the ratio r; one at the pivot by 1 + r; one at
 * the valve by 1. Validity: small angles.
 * Special case: inside the range, nothing is turned. The lock nut moves the setting, so it is measured again after locking.
 * Example: 0.05 mm, range 0.08 … 0.12, pitch 0.75 mm, ratio 1.3, at the push rod → open 0.0513 turn, 18.5°.
 */
export function adjusterTurn(given: Adjuster): AdjusterAnswer {
  requireRange(given);
  const { measured, u, min, max, confidence, unit } = given;
  const now = decide({ value: measured, u, limit: { min, max }, confidence, unit });
  const change = (min + max) / 2 - measured;
  const gain = gains[given.at](requirePositive(given.rockerRatio, 'rockerRatio'));
  const turns = Math.abs(change) / (gain * requirePositive(given.pitch, 'pitch'));
  if (now.verdict === 'pass')
    return { action: 'leave', now, turns: 0, degrees: 0, words: 'Inside the range: leave it.' };
  const action = change > 0 ? 'open' : 'close';
  const degrees = 360 * turns;
  const doubt =
    now.verdict === 'cannot-decide'
      ? 'The feelers cannot tell, but setting it to the middle costs nothing: '
      : '';
  return {
    action,
    now,
    turns,
    degrees,
    words: `${doubt}${action} by ${degrees.toFixed(0)}°, lock, measure again.`,
  };
}

const gains: Record<Adjuster['at'], (ratio: number) => number> = {
  'push rod': (ratio) => ratio,
  pivot: (ratio) => 1 + ratio,
  valve: () => 1,
};
