import type { Place } from '../mat/mat.js';

/** How a part is laid over another: turned over or not, then turned, then moved. */
export interface Pose {
  readonly mirrored: boolean;
  /** radians, against the clock */
  readonly turn: number;
  readonly x: number;
  readonly y: number;
}

export function laidOver({ mirrored, turn, x, y }: Pose, place: Place): Place {
  const px = mirrored ? -place.x : place.x;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return { x: c * px - s * place.y + x, y: s * px + c * place.y + y };
}

/** The inverse of `laidOver`. */
export function takenBack({ mirrored, turn, x, y }: Pose, place: Place): Place {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const px = c * (place.x - x) + s * (place.y - y);
  const py = -s * (place.x - x) + c * (place.y - y);
  return { x: mirrored ? -px : px, y: py };
}

export interface Pair {
  readonly from: Place;
  readonly to: Place;
  readonly weight: number;
}

/**
 * The turn and shift that bring places nearest to their partners, weighted, in the plane.
 * Source: K. S. Arun, T. S. Huang, S. D. Blostein, Least-squares fitting of two 3-D point sets, IEEE PAMI 9, 1987; in
 * the plane its singular values come down to one arc tangent (from memory).
 */
export function bestPose(pairs: readonly Pair[], mirrored: boolean): Pose {
  let [sum, fx, fy, tx, ty] = [0, 0, 0, 0, 0];
  const flip = mirrored ? -1 : 1;
  for (const { from, to, weight } of pairs) {
    sum += weight;
    fx += weight * flip * from.x;
    fy += weight * from.y;
    tx += weight * to.x;
    ty += weight * to.y;
  }
  const [mfx, mfy, mtx, mty] = [fx / sum, fy / sum, tx / sum, ty / sum];
  let [dot, cross] = [0, 0];
  for (const { from, to, weight } of pairs) {
    const [ax, ay] = [flip * from.x - mfx, from.y - mfy];
    const [bx, by] = [to.x - mtx, to.y - mty];
    dot += weight * (ax * bx + ay * by);
    cross += weight * (ax * by - ay * bx);
  }
  const turn = Math.atan2(cross, dot);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return { mirrored, turn, x: mtx - (c * mfx - s * mfy), y: mty - (s * mfx + c * mfy) };
}
