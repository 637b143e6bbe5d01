import { Matrix, solve } from 'ml-matrix';
import { GaugeError } from './error.js';

/** A reading z at a place described by three functions there: (1, x, y) for a plane, (1, cosθ, sinθ) for a circle. */
export interface ZoneReading {
  readonly at: readonly [1, number, number];
  readonly z: number;
}

export interface Zone {
  /** of the surface in the middle of the zone: z = c·at */
  readonly coefficients: readonly [number, number, number];
  /** distance between the two bounding surfaces, along z */
  readonly width: number;
  /** the readings that hold the zone open; weights add up to 1, side +1 touches the upper surface */
  readonly contacts: readonly { readonly index: number; readonly side: 1 | -1; readonly weight: number }[];
}

interface Column {
  readonly index: number;
  readonly side: 1 | -1;
}

/**
 * The narrowest zone that holds all readings: the minimum over c of max(z − c·at) − min(z − c·at).
 *
 * Source: the linear program of the Chebyshev approximation problem; Linear Programming (1983), ch. 14 (from memory).
 * Method: revised simplex on the dual, whose basis is four contacts. It starts from the Radon partition of four places,
 * lets the most violated reading in, and takes Bland's rule after 200 steps, so that it cannot circle.
 * Error: exact up to rounding. The answer carries its proof: every reading lies within the zone to 1e-12 of the range,
 * and the contacts with their weights show that no narrower zone exists (duality).
 * Throws GaugeError for fewer than four readings, for places on one line, or without proof after 5000 steps.
 * Example: z = 1, −1, 1, −1 at the corners (±1, ±1) of a square taken round → width 2.
 */
export function minimumZone(readings: readonly ZoneReading[]): Zone {
  // Heights near zero keep their digits: a radius of 25 mm with a form error of 1 µm has lost four of them.
  const lift = readings[0]?.z ?? 0;
  const zone = narrowest(readings.map(({ at, z }) => ({ at, z: z - lift })));
  const [level, a, b] = zone.coefficients;
  return { ...zone, coefficients: [level + lift, a, b] };
}

function narrowest(readings: readonly ZoneReading[]): Zone {
  const basis = startingBasis(readings);
  const range = spreadOf(readings.map((reading) => reading.z));
  for (let step = 0; step < 5000; step += 1) {
    const weights = solve4(matrixOf(readings, basis), [0, 0, 0, 1]);
    const surface = solve4(
      matrixOf(readings, basis).transpose(),
      basis.map(({ index, side }) => side * readings[index]!.z),
    );
    const entering = worst(readings, surface, 1e-12 * range, step > 200);
    if (!entering) return zoneOf(surface, basis, weights);
    basis[leaving(readings, basis, weights, entering)] = entering;
  }
  throw new GaugeError('The minimum zone was not proven in 5000 steps.', 'readings', readings.length);
}

function zoneOf(surface: readonly number[], basis: readonly Column[], weights: readonly number[]): Zone {
  const [a, b, c, half] = surface as [number, number, number, number];
  const contacts = basis
    .map((column, i) => ({ ...column, weight: Math.max(0, weights[i]!) }))
    .filter(({ weight }) => weight > 1e-12);
  return { coefficients: [a, b, c], width: 2 * Math.max(0, half), contacts };
}

function spreadOf(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

const columnOf = (readings: readonly ZoneReading[], { index, side }: Column) => [
  ...readings[index]!.at.map((value) => side * value),
  1,
];

function matrixOf(readings: readonly ZoneReading[], basis: readonly Column[]): Matrix {
  return new Matrix(basis.map((column) => columnOf(readings, column))).transpose();
}

function solve4(matrix: Matrix, right: readonly number[]): number[] {
  return solve(matrix, Matrix.columnVector([...right])).to1DArray();
}

/** The reading farthest outside the zone (with `first`: the first outside), or nothing when all lie within. */
function worst(
  readings: readonly ZoneReading[],
  surface: readonly number[],
  tolerance: number,
  first: boolean,
): Column | undefined {
  let found: Column | undefined;
  let most = tolerance;
  for (const [index, { at, z }] of readings.entries()) {
    const residual = z - at[0] * surface[0]! - at[1] * surface[1]! - at[2] * surface[2]!;
    const outside = Math.abs(residual) - surface[3]!;
    if (outside <= most) continue;
    found = { index, side: residual > 0 ? 1 : -1 };
    if (first) return found;
    most = outside;
  }
  return found;
}

/** Which contact goes when `entering` comes: the first whose weight would fall to zero. */
function leaving(
  readings: readonly ZoneReading[],
  basis: readonly Column[],
  weights: readonly number[],
  entering: Column,
): number {
  const direction = solve4(matrixOf(readings, basis), columnOf(readings, entering));
  let out = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, slope] of direction.entries()) {
    if (slope <= 1e-11) continue;
    const ratio = Math.max(0, weights[i]!) / slope;
    const tie = Math.abs(ratio - least) <= 1e-14 && basis[i]!.index < (basis[out]?.index ?? -1);
    if (ratio >= least && !tie) continue;
    least = Math.min(least, ratio);
    out = i;
  }
  if (out < 0) throw new GaugeError('The zone has no bound: the readings are not finite.', 'readings');
  return out;
}

/** Three places that do not depend on each other and a fourth; the signs of their one relation make a basis. */
function startingBasis(readings: readonly ZoneReading[]): Column[] {
  if (readings.length < 4)
    throw new GaugeError(
      `A zone needs at least 4 readings; got ${readings.length}.`,
      'readings',
      readings.length,
    );
  const [i, j, k] = spreadOut(readings);
  const fourth = readings.findIndex((_, index) => index !== i && index !== j && index !== k);
  const frame = new Matrix([i, j, k].map((index) => [...readings[index]!.at])).transpose();
  const relation = solve(frame, Matrix.columnVector([...readings[fourth]!.at])).to1DArray();
  return [
    { index: fourth, side: 1 },
    ...[i, j, k].map((index, n): Column => ({ index, side: relation[n]! > 0 ? -1 : 1 })),
  ];
}

/** Far-apart places: the first, the farthest from it, and the one that spans most with both. */
function spreadOut(readings: readonly ZoneReading[]): [number, number, number] {
  const first = readings[0]!.at;
  const second = indexOfMost(readings, ({ at }) => length(cross(first, at)));
  const normal = cross(first, readings[second]!.at);
  const third = indexOfMost(readings, ({ at }) => Math.abs(dot(normal, at)));
  const spans = Math.abs(dot(normal, readings[third]!.at));
  const size = length(first) * length(readings[second]!.at) * length(readings[third]!.at);
  if (!(spans > 1e-9 * size))
    throw new GaugeError('The places lie on one line; a zone needs places spread over the face.', 'readings');
  return [0, second, third];
}

type Triple = readonly [number, number, number];
const dot = (p: Triple, q: Triple) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const length = (p: Triple) => Math.sqrt(dot(p, p));
const cross = (p: Triple, q: Triple): Triple => [
  p[1] * q[2] - p[2] * q[1],
  p[2] * q[0] - p[0] * q[2],
  p[0] * q[1] - p[1] * q[0],
];

function indexOfMost(readings: readonly ZoneReading[], measure: (reading: ZoneReading) => number): number {
  const values = readings.map(measure);
  return values.indexOf(Math.max(...values));
}
