import type { Spot } from '../camera/camera.js';
import type { Place } from '../mat/mat.js';
import { type EdgePoint, trueEdge } from './edge.js';

/** leaves of a closed line what it needs to stay within this, millimetres */
const tolerance = 0.012;

/** A closed edge, each place where it truly is, against the clock; places that lie on a line with others left out. */
export function outlineOf(edge: readonly EdgePoint[], eye: Spot, height: number): Place[] {
  const rims = rimsAlong(edge, eye, height);
  const places = edge.map((point, i) => trueEdge({ ...point, rim: rims[i]! }, eye, height));
  return simplified(joined(places, rims, edge, eye, height)).map(({ x, y }) => ({ x, y }));
}

type Rim = 'top' | 'foot';

/** sine of the angle between an edge and the line away from the camera's foot, under which neither rim is certain */
const unsure = 0.12;

/** Top or foot of every point; where an edge runs straight away from the camera, half goes to either neighbor. */
function rimsAlong(edge: readonly EdgePoint[], eye: Spot, height: number): Rim[] {
  const n = edge.length;
  const sure = edge.map(({ x, y, nx, ny }): Rim | undefined => {
    const across = (nx * (x - eye.x) + ny * (y - eye.y)) / Math.hypot(x - eye.x, y - eye.y);
    return Math.abs(across) < unsure && height > 0 ? undefined : across > 0 ? 'top' : 'foot';
  });
  const nearest = (from: number, step: number) => {
    for (let k = 0; k < n; k += 1) {
      const rim = sure[(from + step * k + n * n) % n];
      if (rim) return { rim, far: k };
    }
    return { rim: 'foot' as const, far: n };
  };
  return sure.map((rim, i) => {
    if (rim) return rim;
    const before = nearest(i, -1);
    const after = nearest(i, 1);
    return before.far <= after.far ? before.rim : after.rim;
  });
}

/**
 * Where the rim passes from its upper edge to its foot, the picture shows the upright between them, a line away from
 * the camera's foot that is one single place of the part. Put at their own heights both stretches run past that place
 * and touch there: what lies between the two nearest points of them is cut out. In an inner corner the upper rim hides
 * the end of the gap instead: both stretches are run on until they meet.
 */
function joined(
  places: readonly Place[],
  rims: readonly Rim[],
  edge: readonly EdgePoint[],
  eye: Spot,
  height: number,
): Place[] {
  const n = places.length;
  const dropped = new Uint8Array(n);
  const corners = new Map<number, Place>();
  for (let i = 0; i < n; i += 1) {
    const next = (i + 1) % n;
    if (rims[i] === rims[next]) continue;
    const lean = (height / eye.z) * Math.hypot(edge[i]!.x - eye.x, edge[i]!.y - eye.y);
    const reach = Math.min(n >> 2, Math.ceil((1.2 * lean + 0.6) / spaceOf(edge)));
    const [back, ahead] = nearestPair(places, rims, i, reach);
    const corner = hiddenCorner(places, i - back, i + ahead + 1, 4 * lean + 1);
    const more = corner ? 1 : 0;
    for (let k = i - back + 1 - more; k <= i + ahead + more; k += 1) dropped[(k + n) % n] = 1;
    if (corner) corners.set(i, corner);
  }
  return places.flatMap((place, i) => [
    ...(dropped[i] === 0 ? [place] : []),
    ...(corners.has(i) ? [corners.get(i)!] : []),
  ]);
}

/** places beside a corner by which its sides are run on; the very last ones are rounded by the blur */
const sideOf = 5;
/** sine of the turn from which on two sides make a corner */
const corner = 0.4;

/** Where the side that ends at `from` and the one that begins at `to` meet, if they turn in and meet within `most`. */
function hiddenCorner(places: readonly Place[], from: number, to: number, most: number): Place | undefined {
  const n = places.length;
  if (n < 4 * sideOf) return undefined;
  const side = (first: number) =>
    lineThrough(Array.from({ length: sideOf }, (_, k) => places[(first + k + n) % n]!));
  const a = side(from - sideOf);
  const b = side(to + 1);
  const turn = a.dx * b.dy - a.dy * b.dx;
  if (turn > -corner) return undefined;
  const s = ((b.x - a.x) * b.dy - (b.y - a.y) * b.dx) / turn;
  const meet = { x: a.x + s * a.dx, y: a.y + s * a.dy };
  const isAhead = ({ x, y }: Place, { dx, dy }: Line, sign: number) => {
    const far = sign * ((meet.x - x) * dx + (meet.y - y) * dy);
    return far > -0.2 && far < most;
  };
  return isAhead(places[(from + n) % n]!, a, 1) && isAhead(places[to % n]!, b, -1) ? meet : undefined;
}

interface Line extends Place {
  readonly dx: number;
  readonly dy: number;
}

/** The straight line nearest to places in a row, in their direction. */
function lineThrough(places: readonly Place[]): Line {
  const n = places.length;
  const x = places.reduce((sum, place) => sum + place.x, 0) / n;
  const y = places.reduce((sum, place) => sum + place.y, 0) / n;
  let [xx, xy, yy] = [0, 0, 0];
  for (const place of places) {
    xx += (place.x - x) ** 2;
    xy += (place.x - x) * (place.y - y);
    yy += (place.y - y) ** 2;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const along = (places.at(-1)!.x - places[0]!.x) * dx + (places.at(-1)!.y - places[0]!.y) * dy;
  return along < 0 ? { x, y, dx: -dx, dy: -dy } : { x, y, dx, dy };
}

const spaceOf = (edge: readonly EdgePoint[]): number =>
  Math.max(0.05, Math.hypot(edge[1]!.x - edge[0]!.x, edge[1]!.y - edge[0]!.y));

/** How far back from `i` and how far on from it the two stretches come nearest; of equals the least is cut. */
function nearestPair(
  places: readonly Place[],
  rims: readonly Rim[],
  i: number,
  reach: number,
): [number, number] {
  const n = places.length;
  let best: [number, number] = [0, 1];
  let least = Number.POSITIVE_INFINITY;
  for (let back = 0; back <= reach && rims[(i - back + n) % n] === rims[i]; back += 1)
    for (let ahead = 1; ahead <= reach && rims[(i + ahead) % n] !== rims[i]; ahead += 1) {
      const a = places[(i - back + n) % n]!;
      const b = places[(i + ahead) % n]!;
      const cost = Math.hypot(a.x - b.x, a.y - b.y) + 1e-3 * (back + ahead);
      if (cost < least) [least, best] = [cost, [back, ahead - 1]];
    }
  return best;
}

/** Douglas and Peucker on both halves of a closed line. */
function simplified(places: readonly Place[]): Place[] {
  const half = places.length >> 1;
  const first = thinned(places.slice(0, half + 1));
  const second = thinned([...places.slice(half), places[0]!]);
  return [...first.slice(0, -1), ...second.slice(0, -1)];
}

function thinned(line: readonly Place[]): Place[] {
  const keep = new Uint8Array(line.length);
  keep[0] = 1;
  keep[line.length - 1] = 1;
  const stack: [number, number][] = [[0, line.length - 1]];
  while (stack.length > 0) {
    const [from, to] = stack.pop()!;
    const a = line[from]!;
    const b = line[to]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1e-9;
    let worst = tolerance;
    let at = -1;
    for (let i = from + 1; i < to; i += 1) {
      const p = line[i]!;
      const off = Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
      if (off > worst) [worst, at] = [off, i];
    }
    if (at < 0) continue;
    keep[at] = 1;
    stack.push([from, at], [at, to]);
  }
  return line.filter((_, i) => keep[i] === 1);
}
