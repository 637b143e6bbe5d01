import { signedArea } from '../contours.js';
import type { Place } from '../mat/mat.js';
import { outlineOf, patchesOf } from '../patches.js';
import type { Gray } from '../picture.js';

/**
 * Four-sided dark patches that stand alone on something brighter, corners clockwise in the picture, in its pixels.
 * Dark is what lies well under the mean of its surroundings, so that shade over the sheet does not matter.
 */
export function darkQuads(gray: Gray): (readonly Place[])[] {
  const half = Math.max(6, Math.round(Math.max(gray.width, gray.height) / 24));
  const dark = underMean(gray, half, 0.82);
  const least = 10;
  const most = Math.max(gray.width, gray.height) / 6;
  const quads: Place[][] = [];
  for (const patch of patchesOf(dark, gray.width, gray.height)) {
    const rows = patch.ends.size;
    const mayBeTag = patch.count >= 0.3 * least * least && rows >= least && rows <= most;
    const quad = mayBeTag && asQuad(outlineOf(patch));
    if (quad) quads.push(quad);
  }
  return quads;
}

function underMean({ width, height, data }: Gray, half: number, share: number): Uint8Array {
  const sums = new Float64Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y += 1) {
    let row = 0;
    for (let x = 0; x < width; x += 1) {
      row += data[y * width + x]!;
      sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1]! + row;
    }
  }
  const dark = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const y0 = Math.max(0, y - half) * (width + 1);
    const y1 = Math.min(height, y + half + 1);
    const rows = y1 - Math.max(0, y - half);
    for (let x = 0; x < width; x += 1) {
      const x0 = Math.max(0, x - half);
      const x1 = Math.min(width, x + half + 1);
      const below = y1 * (width + 1);
      const mean =
        (sums[below + x1]! - sums[below + x0]! - sums[y0 + x1]! + sums[y0 + x0]!) / ((x1 - x0) * rows);
      if (data[y * width + x]! < share * mean - 2) dark[y * width + x] = 1;
    }
  }
  return dark;
}

/** The convex hull cut down to four corners, if next to nothing is lost by it. */
function asQuad(outline: readonly Place[]): Place[] | undefined {
  const hull = convexHull(outline);
  const whole = signedArea(hull);
  while (hull.length > 4) hull.splice(leastCorner(hull), 1);
  if (hull.length < 4) return undefined;
  const sides = hull.map((a, i) => Math.hypot(a.x - hull[(i + 1) % 4]!.x, a.y - hull[(i + 1) % 4]!.y));
  if (Math.min(...sides) < 0.35 * Math.max(...sides) || signedArea(hull) < 0.86 * whole) return undefined;
  return hull;
}

function leastCorner(hull: readonly Place[]): number {
  let least = 0;
  let size = Number.POSITIVE_INFINITY;
  for (let i = 0; i < hull.length; i += 1) {
    const a = hull.at(i - 1)!;
    const c = hull[(i + 1) % hull.length]!;
    const area = Math.abs(cross(a, hull[i]!, c));
    if (area < size) [size, least] = [area, i];
  }
  return least;
}

export const cross = (o: Place, a: Place, b: Place) => (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);

/** Andrew's monotone chain; clockwise as a picture shows it (y downward). */
export function convexHull(places: readonly Place[]): Place[] {
  const sorted = [...places].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (order: readonly Place[]) => {
    const out: Place[] = [];
    for (const place of order) {
      while (out.length > 1 && cross(out.at(-2)!, out.at(-1)!, place) <= 0) out.pop();
      out.push(place);
    }
    return out.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}
