import type { FacePoint } from '../../../gauge/index.js';

/**
 * A height between the points that were read: Shepard's inverse-square mean. It passes through every reading and never
 * leaves their range. Between the readings it is a guess, and the picture says so.
 */
export function between(points: readonly FacePoint[], x: number, y: number): number {
  let sum = 0;
  let weight = 0;
  for (const p of points) {
    const d2 = (p.x - x) ** 2 + (p.y - y) ** 2;
    if (d2 < 1e-9) return p.z;
    sum += p.z / d2;
    weight += 1 / d2;
  }
  return sum / weight;
}

export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export type Segment = readonly [x1: number, y1: number, x2: number, y2: number];

/** Lines of equal height over the frame, by marching squares on `steps` × `steps` cells. */
export function contour(
  heightAt: (x: number, y: number) => number,
  level: number,
  frame: Frame,
  steps = 36,
): Segment[] {
  const { left, right, low, high } = frame;
  const x = (i: number) => left + ((right - left) * i) / steps;
  const y = (j: number) => low + ((high - low) * j) / steps;
  const z = Array.from({ length: steps + 1 }, (_, j) =>
    Array.from({ length: steps + 1 }, (_, i) => heightAt(x(i), y(j)) - level),
  );
  const segments: Segment[] = [];
  for (let j = 0; j < steps; j++)
    for (let i = 0; i < steps; i++) {
      const corners = [
        [x(i), y(j), z[j]![i]!],
        [x(i + 1), y(j), z[j]![i + 1]!],
        [x(i + 1), y(j + 1), z[j + 1]![i + 1]!],
        [x(i), y(j + 1), z[j + 1]![i]!],
      ] as const;
      const cuts = corners.flatMap((a, k) => crossing(a, corners[(k + 1) % 4]!));
      for (let k = 0; k + 1 < cuts.length; k += 2) segments.push([...cuts[k]!, ...cuts[k + 1]!]);
    }
  return segments;
}

type Corner = readonly [x: number, y: number, z: number];

function crossing(a: Corner, b: Corner): [number, number][] {
  if (a[2] >= 0 === b[2] >= 0) return [];
  const t = a[2] / (a[2] - b[2]);
  return [[a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]];
}
