import { Matrix, solve } from 'ml-matrix';
import type { Place } from '../mat/mat.js';

/** Row by row, the last of nine 1: (x, y, 1) goes to a multiple of (x′, y′, 1). */
export type Homography = readonly number[];

/**
 * The plane-to-plane perspective that takes `from` to `to`, least squares of the linear form, four pairs and more.
 *
 * Source: R. Hartley and A. Zisserman, Multiple View Geometry, 2nd ed., 4.1 with both sets normalized (4.4), from memory.
 */
export function homography(from: readonly Place[], to: readonly Place[]): Homography {
  const a = normalizing(from);
  const b = normalizing(to);
  const rows: number[][] = [];
  const right: number[] = [];
  for (const [i, place] of from.entries()) {
    const x = a.scale * (place.x - a.x);
    const y = a.scale * (place.y - a.y);
    const u = b.scale * (to[i]!.x - b.x);
    const v = b.scale * (to[i]!.y - b.y);
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]);
    right.push(u, v);
  }
  const h = [...solve(new Matrix(rows), Matrix.columnVector(right)).to1DArray(), 1];
  const toNormal = new Matrix([
    [a.scale, 0, -a.scale * a.x],
    [0, a.scale, -a.scale * a.y],
    [0, 0, 1],
  ]);
  const back = new Matrix([
    [1 / b.scale, 0, b.x],
    [0, 1 / b.scale, b.y],
    [0, 0, 1],
  ]);
  const whole = back
    .mmul(Matrix.from1DArray(3, 3, h))
    .mmul(toNormal)
    .to1DArray();
  return whole.map((value) => value / whole[8]!);
}

export function across(h: Homography, { x, y }: Place): Place {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return { x: (h[0]! * x + h[1]! * y + h[2]!) / w, y: (h[3]! * x + h[4]! * y + h[5]!) / w };
}

function normalizing(places: readonly Place[]): { x: number; y: number; scale: number } {
  const n = places.length;
  const x = places.reduce((sum, place) => sum + place.x, 0) / n;
  const y = places.reduce((sum, place) => sum + place.y, 0) / n;
  const spread = places.reduce((sum, place) => sum + Math.hypot(place.x - x, place.y - y), 0) / n;
  return { x, y, scale: Math.SQRT2 / (spread || 1) };
}
