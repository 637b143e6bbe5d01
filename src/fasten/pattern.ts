import { plural } from '../phrase/index.js';
import type { Point } from '../worksheet/index.js';
import { centerOut } from './center-out.js';
import { FastenError } from './error.js';
import { figure } from './figure.js';
import { gaps, goRound, type Place } from './going-round.js';
import { type Circle, centroid, distanceMm, fitCircle, slenderness } from './plane.js';
import { crossByRule, legacyCrossPatterns } from './round-pattern.js';
import { commonPractice, sources } from './sources.js';

export const patternRules = [
  'single bolt',
  'straight pair',
  'three in turn',
  'round cross pattern',
  'straight line, center-out',
  'center-out crosswise',
] as const;
export type PatternRule = (typeof patternRules)[number];

export interface TighteningOrder {
  /** hole numbers, 1-based, in tightening order */
  readonly order: readonly number[];
  /** hole numbers going round in turn from the first bolt, for a final round */
  readonly around: readonly number[];
  readonly rule: PatternRule;
  readonly why: string;
  readonly source: string;
}

export interface PatternOptions {
  /** hole to begin with on a round flange; the other patterns begin at the center. Hole 1 if left out */
  readonly start?: number;
  /** holes are on a circle when their scatter from it stays under this part of the radius */
  readonly circleTolerance?: number;
}

/** No gap this wide in a round flange: holes along an arc are no flange. */
const widestGapRad = (150 * Math.PI) / 180;
/** Gaps within this part of the even gap: the flange counts as evenly drilled. */
const evenness = 0.25;
/** Width over length below which holes count as lying on a line. */
const lineSlenderness = 0.02;

function requireHoles(points: readonly Point[]): void {
  if (points.length === 0)
    throw new FastenError('holes: at least one hole is needed; none was given', 'holes');
  points.forEach(({ xMm, yMm }, i) => {
    if (!(Number.isFinite(xMm) && Number.isFinite(yMm))) {
      throw new FastenError(`holes: hole ${i + 1} has no place (${xMm}, ${yMm})`, 'holes');
    }
  });
  const size = Math.max(...points.map((point) => distanceMm(point, centroid(points))));
  points.forEach((point, i) => {
    const same = points.findIndex((other, j) => j > i && distanceMm(point, other) <= 1e-3 * size);
    if (same > 0) throw new FastenError(`holes: ${i + 1} and ${same + 1} are at the same place`, 'holes');
  });
}

function requireStart(start: number, n: number): number {
  if (!Number.isInteger(start) || start < 1 || start > n) {
    throw new FastenError(`start must be a hole from 1 to ${n}; ${start} was given`, 'start');
  }
  return start - 1;
}

/** Evenly drilled places are taken at their ideal angles, so that a hole measured a little off changes nothing. */
function idealAngles(places: readonly Place[]): {
  readonly anglesRad: readonly number[];
  readonly even: boolean;
} {
  const step = (2 * Math.PI) / places.length;
  const even = gaps(places).every((gap) => Math.abs(gap - step) <= evenness * step);
  return { anglesRad: places.map(({ angleRad }, i) => (even ? i * step : angleRad)), even };
}

function roundFlange(points: readonly Point[], circle: Circle, start: number): TighteningOrder {
  const places = goRound(points, circle.center, start);
  const { anglesRad, even } = idealAngles(places);
  const legacy = even ? legacyCrossPatterns[points.length] : undefined;
  const placeOrder = legacy ? legacy.map((place) => place - 1) : crossByRule(anglesRad);
  return {
    order: placeOrder.map((place) => places[place]!.hole + 1),
    around: places.map(({ hole }) => hole + 1),
    rule: 'round cross pattern',
    why:
      `The ${points.length} holes lie ${even ? 'evenly' : 'unevenly'} round a circle of ${figure(2 * circle.radiusMm)} mm ` +
      `(within ${figure(circle.rmsMm, 2)} mm): each bolt, then the one opposite, then halfway between, so that the face comes down level`,
    source: legacy
      ? sources.flange
      : 'the rule of the ASME PCC-1 cross pattern: opposite, then halve the angle',
  };
}

/** The circle that the holes go all the way round, if they do. */
function flangeCircle(points: readonly Point[], start: number, tolerance: number): Circle | undefined {
  if (points.length < 4) return undefined;
  const circle = fitCircle(points);
  if (!circle || circle.rmsMm > tolerance * circle.radiusMm) return undefined;
  return Math.max(...gaps(goRound(points, circle.center, start))) < widestGapRad ? circle : undefined;
}

function fewBolts(points: readonly Point[]): TighteningOrder | undefined {
  const order = points.map((_, hole) => hole + 1);
  const base = { order, around: order, source: commonPractice };
  if (points.length === 1) return { ...base, rule: 'single bolt', why: 'One bolt: no order to keep' };
  if (points.length === 2) {
    return {
      ...base,
      rule: 'straight pair',
      why: 'Two bolts: a little on each in turn, so that the flange does not cock',
    };
  }
  if (points.length === 3 && slenderness(points) >= lineSlenderness) {
    return { ...base, rule: 'three in turn', why: 'Three bolts: no opposites; in turn, in small steps' };
  }
  return undefined;
}

function fromTheCenter(points: readonly Point[]): TighteningOrder {
  const straight = slenderness(points) < lineSlenderness;
  const order = centerOut(points).map((hole) => hole + 1);
  const around = goRound(points, centroid(points), order[0]! - 1).map(({ hole }) => hole + 1);
  return {
    order,
    around: straight ? order : around,
    rule: straight ? 'straight line, center-out' : 'center-out crosswise',
    why: straight
      ? `The ${points.length} holes lie on a line: from the middle outward, side to side, so that the gasket is pressed flat toward both ends`
      : `The ${points.length} holes are not on a circle: from the center outward, crossing over each time, so that the gasket is pressed flat toward the edges`,
    source: commonPractice,
  };
}

/**
 * The order in which to tighten a joint, from where its holes are.
 *
 * Round flange (holes all round a circle, found by fit): the ASME PCC-1 legacy cross pattern for 4, 8, 12, 16 and 20
 * even holes, its rule for other counts and uneven spacing. Any other shape: center-out, crosswise. The order
 * depends on the pattern and the numbering only: turning, mirroring, moving or scaling the face changes nothing.
 * The maker's sequence goes before this one; see `checkOrder`.
 * Throws FastenError for no holes, a hole without a place, two holes at one place, a start that is no hole.
 * Example: eight holes numbered round a circle give 1 5 3 7 2 6 4 8.
 */
export function tighteningOrder(points: readonly Point[], options: PatternOptions = {}): TighteningOrder {
  requireHoles(points);
  const start = requireStart(options.start ?? 1, points.length);
  const few = fewBolts(points);
  if (few) return few;
  const circle = flangeCircle(points, start, options.circleTolerance ?? 0.05);
  return circle ? roundFlange(points, circle, start) : fromTheCenter(points);
}

const fewOf = (holes: readonly number[]) =>
  holes.length > 8 ? `${holes.slice(0, 6).join(', ')} and ${holes.length - 6} more` : holes.join(', ');

/**
 * A sequence taken from the maker's sheet or tapped in by hand, if it names each of `n` holes once.
 * Throws FastenError naming the holes left out, named twice, or not there.
 */
export function checkOrder(order: readonly number[], n: number): readonly number[] {
  const strangers = order.filter((hole) => !Number.isInteger(hole) || hole < 1 || hole > n);
  const twice = [...new Set(order.filter((hole, i) => order.indexOf(hole) !== i))];
  const missing = Array.from({ length: n }, (_, i) => i + 1).filter((hole) => !order.includes(hole));
  const faults = [
    strangers.length > 0 &&
      `${fewOf(strangers)} ${plural(strangers.length, 'is no hole', 'are no holes')} of 1 to ${n}`,
    twice.length > 0 && `${fewOf(twice)} named more than once`,
    missing.length > 0 && `${fewOf(missing)} left out`,
  ].filter(Boolean);
  if (faults.length > 0) throw new FastenError(`order: ${faults.join('; ')}`, 'order');
  return order;
}
