import { Matrix, solve } from 'ml-matrix';
import type { Spot } from '../camera/camera.js';
import type { Place } from '../mat/mat.js';
import { type EdgePoint, trueEdge } from './edge.js';

export interface Circle extends Place {
  readonly r: number;
  /** of the kept points from it, standard deviation, millimetres */
  readonly scatter: number;
  readonly kept: number;
  readonly of: number;
  /** covariance of x, y, r for points of standard deviation 1 */
  readonly cofactors: Matrix;
}

/** The circle nearest to points, those far off left out: algebraic to begin with (Kåsa 1976), then geometric. */
export function circleThrough(points: readonly Place[], weights?: readonly number[]): Circle | undefined {
  if (points.length < 8) return undefined;
  let kept = points.map((_, i) => weights?.[i] ?? 1);
  let circle = algebraic(points, kept);
  for (let round = 0; round < 8; round += 1) {
    circle = geometric(points, kept, circle);
    if (!Number.isFinite(circle.r)) return undefined;
    const off = points.map((point) =>
      Math.abs(Math.hypot(point.x - circle.x, point.y - circle.y) - circle.r),
    );
    const sorted = off.filter((_, i) => (weights?.[i] ?? 1) > 0).sort((a, b) => a - b);
    const limit = Math.max(0.04, 3.2 * 1.4826 * sorted[sorted.length >> 1]!);
    kept = off.map((miss, i) => (miss <= limit ? (weights?.[i] ?? 1) : 0));
  }
  return { ...circle, ...spreadOf(points, kept, circle) };
}

interface Bare extends Place {
  readonly r: number;
}

function algebraic(points: readonly Place[], weights: readonly number[]): Bare {
  const rows = points.map(({ x, y }, i) => [x * weights[i]!, y * weights[i]!, weights[i]!]);
  const right = points.map(({ x, y }, i) => (x * x + y * y) * weights[i]!);
  const [a, b, c] = solve(new Matrix(rows), Matrix.columnVector(right)).to1DArray() as [
    number,
    number,
    number,
  ];
  return { x: a / 2, y: b / 2, r: Math.sqrt(Math.max(0, c + (a * a + b * b) / 4)) };
}

function geometric(points: readonly Place[], weights: readonly number[], start: Bare): Bare {
  let circle = start;
  for (let i = 0; i < 3; i += 1) {
    const { normal, right } = system(points, weights, circle);
    const [dx, dy, dr] = solve(normal, right).to1DArray() as [number, number, number];
    circle = { x: circle.x + dx, y: circle.y + dy, r: circle.r + dr };
  }
  return circle;
}

function system(points: readonly Place[], weights: readonly number[], { x, y, r }: Bare) {
  const normal = Matrix.eye(3, 3).mul(1e-9);
  const right = Matrix.zeros(3, 1);
  for (const [i, point] of points.entries()) {
    const far = Math.hypot(point.x - x, point.y - y) || 1e-9;
    const row = [(point.x - x) / far, (point.y - y) / far, 1];
    const miss = far - r;
    for (let a = 0; a < 3; a += 1) {
      right.set(a, 0, right.get(a, 0) + weights[i]! * row[a]! * miss);
      for (let b = 0; b < 3; b += 1) normal.set(a, b, normal.get(a, b) + weights[i]! * row[a]! * row[b]!);
    }
  }
  return { normal, right };
}

function spreadOf(points: readonly Place[], kept: readonly number[], circle: Bare) {
  let sum = 0;
  let count = 0;
  for (const [i, point] of points.entries()) {
    if (kept[i]! <= 0) continue;
    sum += (Math.hypot(point.x - circle.x, point.y - circle.y) - circle.r) ** 2;
    count += 1;
  }
  const { normal } = system(
    points,
    kept.map((weight) => (weight > 0 ? 1 : 0)),
    circle,
  );
  const cofactors = solve(normal, Matrix.eye(3, 3));
  return { scatter: Math.sqrt(sum / Math.max(1, count - 3)), kept: count, of: points.length, cofactors };
}

/** A hole’s edge with each point put at its true place for a height. */
export const placed = (edge: readonly EdgePoint[], eye: Spot, height: number): Place[] =>
  edge.map((point) => trueEdge(point, eye, height));

/** The circle of a hole’s edge, clear points only. */
export const circleOf = (edge: readonly EdgePoint[], eye: Spot, height: number): Circle | undefined =>
  circleThrough(
    placed(edge, eye, height),
    edge.map((point) => (point.clean && isSure(point, eye, height) ? 1 : 0)),
  );

/** Along a line away from the camera's foot the upper rim and the foot of an edge cannot be told apart. */
export function isSure({ x, y, nx, ny }: EdgePoint, eye: Spot, height: number): boolean {
  const far = Math.hypot(x - eye.x, y - eye.y);
  if ((height / eye.z) * far < 0.3) return true;
  return Math.abs(nx * (x - eye.x) + ny * (y - eye.y)) > 0.3 * far;
}

/**
 * The radius of a round hole whose blurred edge is half bright at a smaller one; both and the blur’s standard deviation in
 * one unit. Over a curved edge more light goes out than comes in.
 *
 * Source: own derivation; a disc blurred by a bell of standard deviation s is half bright at r − s² ÷ 2r, to order s².
 * Example: 3 mm blurred by 0.3 mm is seen as 2.985 mm.
 */
export const unblurred = (seen: number, sigma: number): number => seen + (sigma * sigma) / (2 * seen);
