import type { Point } from '../worksheet/index.js';
import { centroid, distanceMm } from './plane.js';

/** Holes whose distances from the center differ by less than this part of the pattern count as equally far out. */
const sameRing = 0.05;
/** A partner lies within this part of the hole's own distance out from its mirror image. */
const acrossWithin = 0.5;

/** The items whose figure is lowest, those within `slack` of it kept. */
function lowest(
  holes: readonly number[],
  figure: (hole: number) => number,
  slack: number,
): readonly number[] {
  const least = Math.min(...holes.map(figure));
  return holes.filter((hole) => figure(hole) <= least + slack);
}

/**
 * Center-out, crosswise: the hole nearest the center, then the one across the center from it, then the next farther
 * out, always crossing over.
 *
 * Source: common practice for cylinder heads and long covers. Method: of the holes left, the ring nearest the
 * centroid; of that ring the hole farthest from the last bolt; its partner is the hole left nearest to its mirror
 * image through the center, if that is near enough: else a hole far out would be tightened before nearer ones.
 * Gives 0-based holes. Example: two rows of five, 1–5 and 6–10, give 3 8 2 9 7 4 6 5 1 10.
 */
export function centerOut(points: readonly Point[]): readonly number[] {
  const center = centroid(points);
  const out = points.map((point) => distanceMm(point, center));
  const size = Math.max(...out);
  const order: number[] = [];
  let left = points.map((_, hole) => hole);
  const take = (hole: number) => {
    order.push(hole);
    left = left.filter((each) => each !== hole);
  };
  while (left.length > 0) {
    const opened = nextOut(left, order.at(-1));
    take(opened);
    const across = partner(opened);
    if (across !== undefined) take(across);
  }
  return order;

  function nextOut(holes: readonly number[], last: number | undefined): number {
    const ring = lowest(holes, (hole) => out[hole]!, sameRing * size);
    if (last === undefined) return ring[0]!;
    return lowest(ring, (hole) => -distanceMm(points[hole]!, points[last]!), 1e-6 * size)[0]!;
  }

  function partner(opened: number): number | undefined {
    if (left.length === 0 || out[opened]! < sameRing * size) return undefined;
    const { xMm, yMm } = points[opened]!;
    const image = { xMm: 2 * center.xMm - xMm, yMm: 2 * center.yMm - yMm };
    const across = lowest(left, (hole) => distanceMm(points[hole]!, image), 1e-6 * size)[0]!;
    return distanceMm(points[across]!, image) < acrossWithin * out[opened]! ? across : undefined;
  }
}
