import type { Point } from '../worksheet/index.js';

/** Plane geometry of hole patterns. All lengths mm. */

export const distanceMm = (a: Point, b: Point): number => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);

export function centroid(points: readonly Point[]): Point {
  const sum = points.reduce((s, p) => ({ xMm: s.xMm + p.xMm, yMm: s.yMm + p.yMm }), { xMm: 0, yMm: 0 });
  return { xMm: sum.xMm / points.length, yMm: sum.yMm / points.length };
}

/** Second moments about the centroid, per point, mm². */
function spread(points: readonly Point[]): { xx: number; yy: number; xy: number } {
  const { xMm, yMm } = centroid(points);
  const n = points.length;
  let [xx, yy, xy] = [0, 0, 0];
  for (const p of points) {
    xx += (p.xMm - xMm) ** 2 / n;
    yy += (p.yMm - yMm) ** 2 / n;
    xy += ((p.xMm - xMm) * (p.yMm - yMm)) / n;
  }
  return { xx, yy, xy };
}

/**
 * Width over length of a set of points, 0 for a straight line, 1 for a round or square set: the root of the ratio
 * of the principal second moments. The same after moving, turning, mirroring or scaling.
 */
export function slenderness(points: readonly Point[]): number {
  const { xx, yy, xy } = spread(points);
  const mean = (xx + yy) / 2;
  const half = Math.hypot((xx - yy) / 2, xy);
  return Math.sqrt(Math.max(0, mean - half) / (mean + half));
}

export interface Circle {
  readonly center: Point;
  readonly radiusMm: number;
  /** root-mean-square distance of the points from the circle */
  readonly rmsMm: number;
}

/**
 * The algebraic least-squares circle through points (Kåsa): solves a linear 2×2 system about the centroid.
 * Undefined for points on a line. Exact for points on a circle; for points that lie round the whole circle the bias
 * is of second order in their scatter.
 */
export function fitCircle(points: readonly Point[]): Circle | undefined {
  const middle = centroid(points);
  const { xx, yy, xy } = spread(points);
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-9 * (xx + yy) ** 2)) return undefined;
  let [cx, cy] = [0, 0];
  for (const p of points) {
    const [u, v] = [p.xMm - middle.xMm, p.yMm - middle.yMm];
    cx += (u * (u * u + v * v)) / (2 * points.length);
    cy += (v * (u * u + v * v)) / (2 * points.length);
  }
  const [u, v] = [(cx * yy - cy * xy) / determinant, (cy * xx - cx * xy) / determinant];
  const radiusMm = Math.sqrt(u * u + v * v + xx + yy);
  const center = { xMm: middle.xMm + u, yMm: middle.yMm + v };
  const squares = points.reduce((s, p) => s + (distanceMm(p, center) - radiusMm) ** 2, 0);
  return { center, radiusMm, rmsMm: Math.sqrt(squares / points.length) };
}

const fullTurn = 2 * Math.PI;

/** An angle brought into 0 … 2π; an angle a rounding error below a full turn counts as 0. */
export function wrapAngle(rad: number): number {
  const wrapped = ((rad % fullTurn) + fullTurn) % fullTurn;
  return fullTurn - wrapped < 1e-9 ? 0 : wrapped;
}

/** The lesser angle between two directions, 0 … π. */
export function apart(aRad: number, bRad: number): number {
  const turn = wrapAngle(aRad - bRad);
  return Math.min(turn, fullTurn - turn);
}

/** The lesser angle between two diameters, 0 … π/2: directions that differ by half a turn are the same diameter. */
export function diametersApart(aRad: number, bRad: number): number {
  const turn = apart(aRad, bRad);
  return Math.min(turn, Math.PI - turn);
}
