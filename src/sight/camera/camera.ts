import type { Place } from '../mat/mat.js';

/** A place over the mat: `z` is its height. */
export interface Spot extends Place {
  readonly z: number;
}

/**
 * A camera over the mat: focal length and middle in pixels, radial distortion (1 + k1 r² + k2 r⁴ with r in focal
 * lengths), the turn from mat to camera as a rotation vector after its half turn about x, and the shift in millimetres.
 */
export interface Camera {
  readonly focal: number;
  readonly middle: Place;
  readonly k1: number;
  readonly k2: number;
  readonly turn: readonly [number, number, number];
  readonly shift: readonly [number, number, number];
  /** what the turn makes, row by row; the half turn is in it */
  readonly matrix: readonly number[];
}

export function cameraOf(v: readonly number[]): Camera {
  const turn = [v[5]!, v[6]!, v[7]!] as const;
  const m = rotation(turn);
  // the mat is read with y up and seen from above: its y and z run against the camera's
  const matrix = m.map((value, i) => (i % 3 === 0 ? value : -value));
  return {
    focal: v[0]!,
    middle: { x: v[1]!, y: v[2]! },
    k1: v[3]!,
    k2: v[4]!,
    turn,
    shift: [v[8]!, v[9]!, v[10]!],
    matrix,
  };
}

/** Rodrigues: the rotation about `w` by its length, row by row. */
function rotation([x, y, z]: readonly [number, number, number]): number[] {
  const angle = Math.hypot(x, y, z);
  const s = angle < 1e-9 ? 1 : Math.sin(angle) / angle;
  const c = angle < 1e-9 ? 0.5 : (1 - Math.cos(angle)) / (angle * angle);
  return [
    1 - c * (y * y + z * z),
    c * x * y - s * z,
    c * x * z + s * y,
    c * x * y + s * z,
    1 - c * (x * x + z * z),
    c * y * z - s * x,
    c * x * z - s * y,
    c * y * z + s * x,
    1 - c * (x * x + y * y),
  ];
}

/** Where a spot over the mat is seen, in pixels. */
export function project(camera: Camera, { x, y, z }: Spot): Place {
  const { matrix: m, shift: t } = camera;
  const depth = m[6]! * x + m[7]! * y + m[8]! * z + t[2];
  const a = (m[0]! * x + m[1]! * y + m[2]! * z + t[0]) / depth;
  const b = (m[3]! * x + m[4]! * y + m[5]! * z + t[1]) / depth;
  const r = a * a + b * b;
  const bend = camera.focal * (1 + r * (camera.k1 + r * camera.k2));
  return { x: camera.middle.x + bend * a, y: camera.middle.y + bend * b };
}

/** The spot at a height over the mat that is seen at a pixel: the inverse of `project`. */
export function onPlane(camera: Camera, pixel: Place, z: number): Spot {
  const u = (pixel.x - camera.middle.x) / camera.focal;
  const v = (pixel.y - camera.middle.y) / camera.focal;
  const bent = Math.hypot(u, v);
  const straight = unbent(bent, camera) / (bent || 1);
  return meet(camera, u * straight, v * straight, z);
}

/** Newton on r (1 + k1 r² + k2 r⁴) = bent; a few steps do for any lens whose picture does not fold over. */
function unbent(bent: number, { k1, k2 }: Camera): number {
  if (bent === 0) return 1;
  let r = bent;
  for (let i = 0; i < 8; i += 1) {
    const q = r * r;
    const step = (r * (1 + q * (k1 + q * k2)) - bent) / (1 + q * (3 * k1 + 5 * k2 * q));
    r -= step;
    if (Math.abs(step) < 1e-12) break;
  }
  return r;
}

function meet({ matrix: m, shift: t }: Camera, u: number, v: number, z: number): Spot {
  // (m0 − u m6) x + (m1 − u m7) y = u (m8 z + tz) − m2 z − tx, and alike for v
  const a = m[0]! - u * m[6]!;
  const b = m[1]! - u * m[7]!;
  const c = m[3]! - v * m[6]!;
  const d = m[4]! - v * m[7]!;
  const depth = m[8]! * z + t[2];
  const e = u * depth - m[2]! * z - t[0];
  const f = v * depth - m[5]! * z - t[1];
  const det = a * d - b * c;
  return { x: (e * d - b * f) / det, y: (a * f - e * c) / det, z };
}

/** Where the camera stands over the mat. Its foot is the place under it. */
export function standpoint({ matrix: m, shift: t }: Camera): Spot {
  const at = (k: number) => -(m[k]! * t[0] + m[k + 3]! * t[1] + m[k + 6]! * t[2]);
  return { x: at(0), y: at(1), z: at(2) };
}

/** Between the camera's axis and the upright on the mat. */
export const tiltDegrees = ({ matrix }: Camera): number =>
  (Math.acos(Math.min(1, Math.max(-1, -matrix[8]!))) * 180) / Math.PI;

/** Pixels a millimetre at a place of the mat: the mean over directions. */
export function pixelsPerMm(camera: Camera, place: Place): number {
  const z = 0;
  const a = project(camera, { x: place.x - 0.5, y: place.y, z });
  const b = project(camera, { x: place.x + 0.5, y: place.y, z });
  const c = project(camera, { x: place.x, y: place.y - 0.5, z });
  const d = project(camera, { x: place.x, y: place.y + 0.5, z });
  return Math.sqrt(Math.abs((b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x)));
}
