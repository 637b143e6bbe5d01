import type { Decision } from './decide.js';
import { GaugeError, requireFinite, requireNotNegative } from './error.js';
import { minimumZone } from './minimum-zone.js';
import { fitLinear } from './regression.js';
import { decideSpread } from './spread.js';

/** A height z read at a place (x, y) of a face. x and y share a unit; z and u share one (often another). */
export interface FacePoint {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface FlatnessQuestion {
  readonly points: readonly FacePoint[];
  /** standard uncertainty of one height, without what is common to all */
  readonly u: number;
  readonly max?: number | undefined;
  readonly confidence?: number | undefined;
  readonly unit?: string | undefined;
  /** of the heights, for u = 1, when they were not read independently */
  readonly covariance?: Covariance | undefined;
}

export type Covariance = readonly (readonly number[])[];

/** z = atOrigin + slopeX·x + slopeY·y */
export interface Plane {
  readonly atOrigin: number;
  readonly slopeX: number;
  readonly slopeY: number;
}

export interface Flatness {
  readonly leastSquares: {
    readonly plane: Plane;
    readonly peakToValley: number;
    readonly residuals: readonly number[];
  };
  /** the flatness of ISO 12781-1 by its definition; `plane` lies in the middle of the zone */
  readonly minimumZone: {
    readonly plane: Plane;
    readonly width: number;
    readonly contacts: readonly FaceContact[];
  };
  /** height of each point above the lower plane of the zone: what stands proud, and what must go from there */
  readonly above: readonly number[];
  /** the least stock that takes every low spot out; a plate or a cutter set otherwise takes more */
  readonly removeAtLeast: number;
  /** standard uncertainty of the zone's width */
  readonly u: number;
  readonly decision?: Decision;
}

export interface FaceContact {
  readonly index: number;
  readonly side: 1 | -1;
  readonly weight: number;
}

/**
 * Flatness of a face from heights at places: by least squares and by minimum zone.
 *
 * Source: ISO 12781-1:2011, definitions (from memory). Method: Householder least squares; minimum zone by the exact
 * linear program of `minimumZone` on centered, scaled places.
 * Error: rounding only for the readings given. The face between the readings stays unseen. Heights are taken along z,
 * not across the plane: for a slope of 1 % that is 0.005 % of the width.
 * `u` is the first-order uncertainty through the contacts, 2u·√(wᵀCw). The width also reads high from noise alone;
 * `decision` allows for that.
 * Special cases: a plane face gives 0. Fewer than 4 points, places on one line, NaN: refused.
 * Example: x 0 30 60 × y 0 40 80 mm, z 0 2 −1 3 5 1 −2 4 0 µm → least squares 7.333 µm, minimum zone 6.5 µm.
 */
export function flatness(question: FlatnessQuestion): Flatness {
  const { points, u, max, confidence, unit, covariance } = question;
  requirePoints(points);
  requireNotNegative(u, 'u');
  const zone = zoneOf(points);
  const middle = points.map((point) => point.z - heightOf(zone.plane, point));
  const lowest = Math.min(...middle);
  const uDifference = covariance && u * largestDifference(covariance);
  const spread = { spread: zone.width, u, count: points.length, confidence, unit, uDifference };
  return {
    leastSquares: leastSquaresOf(points),
    minimumZone: zone,
    above: middle.map((residual) => residual - lowest),
    removeAtLeast: zone.width,
    u: 2 * u * Math.sqrt(varianceOf(zone.contacts, covariance)),
    ...(max !== undefined && { decision: decideSpread({ ...spread, max }) }),
  };
}

/** wᵀCw over the contacts; C is the unit matrix for independent heights. */
function varianceOf(contacts: readonly FaceContact[], covariance?: Covariance): number {
  const between = (p: FaceContact, q: FaceContact) =>
    covariance ? covariance[p.index]![q.index]! : p.index === q.index ? 1 : 0;
  let sum = 0;
  for (const p of contacts)
    for (const q of contacts) sum += p.side * q.side * p.weight * q.weight * between(p, q);
  return Math.max(0, sum);
}

/** √ of the largest variance of a difference between two heights. */
function largestDifference(covariance: Covariance): number {
  const variances = covariance.flatMap((row, i) =>
    row.map((value, j) => covariance[i]![i]! + covariance[j]![j]! - 2 * value),
  );
  return Math.sqrt(Math.max(...variances));
}

function requirePoints(points: readonly FacePoint[]): void {
  if (points.length < 4)
    throw new GaugeError(`Flatness needs at least 4 points; got ${points.length}.`, 'points', points.length);
  for (const [i, { x, y, z }] of points.entries())
    for (const [name, value] of Object.entries({ x, y, z })) requireFinite(value, `point ${i + 1}: ${name}`);
}

export function heightOf({ atOrigin, slopeX, slopeY }: Plane, { x, y }: { x: number; y: number }): number {
  return atOrigin + slopeX * x + slopeY * y;
}

/** Places moved to their middle and scaled to about ±1, so that millimeters and inches solve alike. */
function frameOf(points: readonly FacePoint[]) {
  const middle = (values: number[]) => (Math.max(...values) + Math.min(...values)) / 2;
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [x0, y0] = [middle(xs), middle(ys)];
  const size = Math.max(...xs.map((x) => Math.abs(x - x0)), ...ys.map((y) => Math.abs(y - y0))) || 1;
  return {
    at: ({ x, y }: FacePoint) => [1, (x - x0) / size, (y - y0) / size] as const,
    plane: ([c, a, b]: readonly number[]): Plane => ({
      atOrigin: c! - (a! * x0 + b! * y0) / size,
      slopeX: a! / size,
      slopeY: b! / size,
    }),
  };
}

function leastSquaresOf(points: readonly FacePoint[]): Flatness['leastSquares'] {
  const frame = frameOf(points);
  const fit = fitLinear(
    points.map((point) => frame.at(point)),
    points.map(({ z }) => z),
  );
  const { residuals } = fit;
  return {
    plane: frame.plane(fit.coefficients),
    peakToValley: Math.max(...residuals) - Math.min(...residuals),
    residuals,
  };
}

function zoneOf(points: readonly FacePoint[]): Flatness['minimumZone'] {
  const frame = frameOf(points);
  const { coefficients, width, contacts } = minimumZone(
    points.map((point) => ({ at: frame.at(point), z: point.z })),
  );
  return { plane: frame.plane(coefficients), width, contacts };
}
