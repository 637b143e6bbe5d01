import type { Spot } from '../camera/camera.js';
import { convexHull } from '../camera/dark-quads.js';
import type { Place } from '../mat/mat.js';

/** A bolt lying on its head and its tip. */
export interface BoltShape extends Place {
  /** direction from head to tip, radians; `x`, `y` is on the axis under the head */
  readonly turn: number;
  /** under the head */
  readonly length: number;
  readonly d: number;
  /** across the flats, or the diameter of a round head */
  readonly head: number;
  readonly headHeight: number;
}

export type HeadForm = 'hexagon' | 'round';

/** The two convex outlines, head and shank, that the camera sees on the mat behind a bolt. */
export function silhouette(bolt: BoltShape, form: HeadForm, eye: Spot): readonly (readonly Place[])[] {
  const rise = bolt.head / 2;
  const dip = Math.asin(Math.max(-0.9, Math.min(0.9, (rise - bolt.d / 2) / Math.max(bolt.length, bolt.d))));
  const c = Math.cos(bolt.turn);
  const s = Math.sin(bolt.turn);
  const spot = (along: number, side: number, up: number): Place => {
    const flat = along * Math.cos(dip) + up * Math.sin(dip);
    const z = rise - along * Math.sin(dip) + up * Math.cos(dip);
    const x = bolt.x + c * flat - s * side;
    const y = bolt.y + s * flat + c * side;
    const share = eye.z / (eye.z - z);
    return { x: eye.x + (x - eye.x) * share, y: eye.y + (y - eye.y) * share };
  };
  const disc = (along: number, r: number, corners: number) =>
    Array.from({ length: corners }, (_, i) => {
      const angle = (2 * Math.PI * i) / corners;
      return spot(along, r * Math.cos(angle), r * Math.sin(angle));
    });
  // a hexagon on a flat has corners left and right; a circle of 32 corners, made a little wider, has the same width
  const head =
    form === 'hexagon' ? { r: bolt.head / Math.sqrt(3), corners: 6 } : { r: 1.0024 * rise, corners: 32 };
  return [
    convexHull([...disc(-bolt.headHeight, head.r, head.corners), ...disc(0, head.r, head.corners)]),
    convexHull([...disc(0, 0.501 * bolt.d, 32), ...disc(bolt.length, 0.501 * bolt.d, 32)]),
  ];
}

/** From the outline of both together, above 0 outside. */
export function offSilhouette(parts: readonly (readonly Place[])[], place: Place): number {
  let least = Number.POSITIVE_INFINITY;
  for (const part of parts) least = Math.min(least, offConvex(part, place));
  return least;
}

function offConvex(polygon: readonly Place[], { x, y }: Place): number {
  let nearest = Number.POSITIVE_INFINITY;
  let inside = true;
  for (let i = 0; i < polygon.length; i += 1) {
    const a = polygon[i]!;
    const b = polygon[i + 1 === polygon.length ? 0 : i + 1]!;
    const ex = b.x - a.x;
    const ey = b.y - a.y;
    const px = x - a.x;
    const py = y - a.y;
    // the hull runs against the clock with y up
    if (ex * py - ey * px < 0) inside = false;
    const t = Math.min(1, Math.max(0, (px * ex + py * ey) / (ex * ex + ey * ey || 1e-12)));
    const dx = px - t * ex;
    const dy = py - t * ey;
    nearest = Math.min(nearest, dx * dx + dy * dy);
  }
  return inside ? -Math.sqrt(nearest) : Math.sqrt(nearest);
}
