import { convexHull, cross } from '../camera/dark-quads.js';
import { signedArea } from '../contours.js';
import type { Place } from '../mat/mat.js';
import { outlineOf, type Patch, patchesOf } from '../patches.js';
import { type Gray, type Picture, reducedGray } from '../picture.js';

/** Corners of a sheet or plate in the pixels of the picture: upper left, upper right, lower right, lower left as it lies. */
export type Corners = readonly [Place, Place, Place, Place];

/** Pixels of the longer side in which the edges are looked for: a pixel there is a few of the photograph's. */
const coarse = 480;
/** of the picture's area: less is no page that somebody wanted to read, more shows no edges */
const least = 0.12;
const most = 0.97;
/** how much of the area a hull may lose or win when it is cut down to four corners */
const lost = 0.05;

/**
 * Where the edges of a page or plate lie in a photograph, found by its being brighter or darker than what it lies on.
 * Undefined where nothing four-sided stands out: the page fills the picture, or lies on something of its own brightness.
 *
 * Threshold: N. Otsu, IEEE Trans. Syst. Man Cybern. 9 (1979) 62.
 */
export function pageCorners(picture: Picture): Corners | undefined {
  const step = Math.max(1, Math.round(Math.max(picture.width, picture.height) / coarse));
  const gray = reducedGray(picture, step);
  const quads = thresholds(gray).flatMap((threshold) =>
    [true, false].flatMap((bright) => {
      const quad = quadOf(gray, (value) => value > threshold === bright);
      return quad ? [quad] : [];
    }),
  );
  const best = quads
    .map((corners) => ({ corners, contrast: contrastAlong(gray, corners) }))
    .filter(({ contrast }) => contrast >= faintest)
    .toSorted((a, b) => b.contrast - a.contrast)[0];
  return best && upright(best.corners.map(({ x, y }) => ({ x: x * step, y: y * step })));
}

/** An edge is a step of so many of the picture's 255: where shade alone parts bright from dark, there is none. */
const faintest = 10;

/** The step across the side that shows the least of one, from two pixels within to two without: the middle one of many. */
function contrastAlong({ width, height, data }: Gray, corners: readonly Place[]): number {
  const middle = {
    x: corners.reduce((sum, { x }) => sum + x, 0) / 4,
    y: corners.reduce((sum, { y }) => sum + y, 0) / 4,
  };
  const at = (x: number, y: number) => {
    const [column, row] = [Math.floor(x), Math.floor(y)];
    return column < 0 || row < 0 || column >= width || row >= height
      ? undefined
      : data[row * width + column]!;
  };
  const sides = corners.map((a, i) => {
    const b = corners[(i + 1) % 4]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const side = Math.sign(cross(a, b, middle)) || 1;
    const [nx, ny] = [(-side * (b.y - a.y)) / length, (side * (b.x - a.x)) / length];
    const steps = Array.from({ length: 40 }, (_, k) => {
      const share = 0.05 + (0.9 * k) / 39;
      const [x, y] = [a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)];
      const [within, without] = [at(x + 2 * nx, y + 2 * ny), at(x - 2 * nx, y - 2 * ny)];
      return within === undefined || without === undefined ? 0 : Math.abs(within - without);
    });
    return steps.toSorted((p, q) => p - q)[20]!;
  });
  return Math.min(...sides);
}

function quadOf(gray: Gray, isIn: (value: number) => boolean): readonly Place[] | undefined {
  const whole = gray.width * gray.height;
  const outline = largest(gray, isIn);
  if (outline.length < 4) return undefined;
  const hull = convexHull(outline);
  const area = areaOf(hull);
  const corners = fourOf(hull);
  if (!corners) return undefined;
  const four = areaOf(corners);
  const isPage = four >= least * whole && four <= most * whole && Math.abs(four - area) <= lost * area;
  const sides = corners.map((a, i) =>
    Math.hypot(a.x - corners[(i + 1) % 4]!.x, a.y - corners[(i + 1) % 4]!.y),
  );
  return isPage && Math.min(...sides) >= 0.12 * Math.max(...sides) ? corners : undefined;
}

/** Between the two classes of brightness, and once more within each: bright letters may part before the plate does. */
function thresholds({ data }: Gray): readonly number[] {
  const counts = new Float64Array(256);
  for (const value of data) counts[Math.min(255, Math.round(value))]! += 1;
  const middle = otsu(counts);
  const below = counts.map((count, value) => (value < middle ? count : 0));
  const above = counts.map((count, value) => (value < middle ? 0 : count));
  return [middle, otsu(below), otsu(above)];
}

/** The threshold that parts the counts into two classes with the least spread within them. */
function otsu(counts: Float64Array): number {
  const all = counts.reduce((total, count) => total + count, 0);
  const sum = counts.reduce((total, count, value) => total + count * value, 0);
  let [below, sumBelow, best, between] = [0, 0, 0, -1];
  for (let value = 0; value < 255; value += 1) {
    below += counts[value]!;
    sumBelow += counts[value]! * value;
    const above = all - below;
    if (below === 0 || above === 0) continue;
    const apart = sumBelow / below - (sum - sumBelow) / above;
    const score = below * above * apart * apart;
    if (score > between) [between, best] = [score, value + 0.5];
  }
  return best;
}

/** The outline of the largest patch. */
function largest({ width, height, data }: Gray, isIn: (value: number) => boolean): Place[] {
  const mask = Uint8Array.from(data, (value) => (isIn(value) ? 1 : 0));
  let best: Patch | undefined;
  for (const patch of patchesOf(mask, width, height)) if (patch.count > (best?.count ?? 0)) best = patch;
  return best ? outlineOf(best) : [];
}

const areaOf = (polygon: readonly Place[]) => Math.abs(signedArea(polygon));

/**
 * The hull with all but four of its sides taken out, their neighbors lengthened until they meet: rounded corners come out
 * sharp. Each time the side goes by which the area grows least.
 */
function fourOf(hull: readonly Place[]): Place[] | undefined {
  let sides = hull.map((a, i) => [a, hull[(i + 1) % hull.length]!] as const);
  let corners = [...hull];
  while (corners.length > 4) {
    let best: { i: number; at: Place; more: number } | undefined;
    for (let i = 0; i < sides.length; i += 1) {
      const at = meeting(sides.at(i - 1)!, sides[(i + 1) % sides.length]!);
      const [a, b] = sides[i]!;
      if (!at || cross(a, b, at) >= 0) continue; // they part outside this side
      const more = Math.abs(cross(a, b, at)) / 2;
      if (!best || more < best.more) best = { i, at, more };
    }
    if (!best) return undefined;
    const { i, at } = best;
    const n = sides.length;
    corners = corners.map((corner, k) => (k === i ? at : corner)).filter((_, k) => k !== (i + 1) % n);
    sides = corners.map((a, k) => [a, corners[(k + 1) % corners.length]!] as const);
  }
  return corners.length === 4 ? corners : undefined;
}

/** Where two lines meet, each through two places. */
function meeting([a, b]: readonly [Place, Place], [c, d]: readonly [Place, Place]): Place | undefined {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  const across = ux * vy - uy * vx;
  if (Math.abs(across) < 1e-9) return undefined;
  const t = ((c.x - a.x) * vy - (c.y - a.y) * vx) / across;
  return { x: a.x + t * ux, y: a.y + t * uy };
}

/** Beginning with the corner nearest to the upper left, clockwise as the picture shows it. */
function upright(corners: readonly Place[]): Corners {
  const first = corners.reduce(
    (best, { x, y }, i) => (x + y < corners[best]!.x + corners[best]!.y ? i : best),
    0,
  );
  const turned = [...corners.slice(first), ...corners.slice(0, first)];
  const [a, b, , d] = turned as [Place, Place, Place, Place];
  return (cross(a, b, d) > 0 ? turned : [a, ...turned.slice(1).toReversed()]) as unknown as Corners;
}
