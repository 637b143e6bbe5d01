import { spaced } from '../contours.js';
import type { Place } from '../mat/mat.js';
import type { Hole, Plate } from '../plate/read-plate.js';
import { Boundary, linesOf } from './boundary.js';
import { bestPose, laidOver, type Pair, type Pose } from './pose.js';

/** One way in which the second part lies on the first. */
export interface Laid {
  readonly pose: Pose;
  /** mean misfit of edges and holes, each counted up to `most` */
  readonly misfit: number;
}

/** beyond this a place has no partner, mm */
const most = 4;
/** partners that lie so far apart count half, mm: what differs must not pull the rest along */
const soft = 0.3;
const tries = 72;
/** ways that are refined, of either side */
const refined = 6;

interface Part {
  readonly plate: Plate;
  readonly boundary: Boundary;
  readonly coarse: readonly Place[];
  readonly fine: readonly Place[];
  readonly middle: Place;
}

function partOf(plate: Plate): Part {
  const lines = linesOf(plate);
  return {
    plate,
    boundary: new Boundary(lines),
    coarse: lines.flatMap((line) => spaced(line, 4)),
    fine: lines.flatMap((line) => spaced(line, 1)),
    middle: middleOf(plate.outline),
  };
}

/** Middle of the area inside a closed line. */
function middleOf(line: readonly Place[]): Place {
  let [area, x, y] = [0, 0, 0];
  line.forEach((a, i) => {
    const b = line[(i + 1) % line.length]!;
    const cross = a.x * b.y - b.x * a.y;
    area += cross;
    x += (a.x + b.x) * cross;
    y += (a.y + b.y) * cross;
  });
  return { x: x / (3 * area), y: y / (3 * area) };
}

/**
 * Every distinct way in which the second part comes to lie on the first, the best first: face up and face down, from 72
 * turns about the middles of their areas, the best refined by partners in turn (P. J. Besl, N. D. McKay, A method for
 * registration of 3-D shapes, IEEE PAMI 14, 1992, from memory) with partners that differ counted less.
 */
export function waysOver(a: Plate, b: Plate): Laid[] {
  const [first, second] = [partOf(a), partOf(b)];
  const laid = [false, true].flatMap((mirrored) =>
    Array.from({ length: tries }, (_, i) => startAt(first, second, mirrored, (2 * Math.PI * i) / tries))
      .map((pose) => ({ pose, misfit: misfitOf(first, second, pose, second.coarse) }))
      .sort((p, q) => p.misfit - q.misfit)
      .slice(0, refined)
      .map(({ pose }) => refine(first, second, pose)),
  );
  const ways: Laid[] = [];
  for (const way of laid.sort((p, q) => p.misfit - q.misfit))
    if (!ways.some((other) => sameWay(other.pose, way.pose))) ways.push(way);
  return ways;
}

function startAt({ middle: to }: Part, { middle: from }: Part, mirrored: boolean, turn: number): Pose {
  const there = laidOver({ mirrored, turn, x: 0, y: 0 }, from);
  return { mirrored, turn, x: to.x - there.x, y: to.y - there.y };
}

const sameWay = (p: Pose, q: Pose): boolean =>
  p.mirrored === q.mirrored && Math.cos(p.turn - q.turn) > Math.cos((3 * Math.PI) / 180);

function refine(a: Part, b: Part, start: Pose): Laid {
  let pose = start;
  for (let i = 0; i < 40; i += 1) {
    const pairs = pairsOf(a, b, pose, i < 10 ? b.coarse : b.fine);
    if (pairs.length < 6) break;
    const next = bestPose(pairs, pose.mirrored);
    const still = Math.hypot(next.x - pose.x, next.y - pose.y) + 60 * Math.abs(next.turn - pose.turn) < 1e-4;
    pose = next;
    if (still && i > 10) break;
  }
  return { pose, misfit: misfitOf(a, b, pose, b.fine) };
}

function pairsOf(a: Part, b: Part, pose: Pose, places: readonly Place[]): Pair[] {
  const weightOf = (far: number) => 1 / (1 + (far / soft) ** 2);
  const edges = places.flatMap((from) => {
    const near = a.boundary.nearest(laidOver(pose, from), most);
    return near ? { from, to: near.at, weight: weightOf(near.far) } : [];
  });
  const holes = b.plate.holes.flatMap((hole) => {
    const near = nearestHole(a.plate.holes, laidOver(pose, hole));
    // a hole says as much as its rim
    const rim = (Math.PI * hole.d) / (places === b.fine ? 1 : 4);
    return near && near.far <= most
      ? { from: hole, to: near.hole, weight: rim * weightOf(near.far + Math.abs(near.hole.d - hole.d)) }
      : [];
  });
  return [...edges, ...holes];
}

export function nearestHole(
  holes: readonly Hole[],
  { x, y }: Place,
): { hole: Hole; far: number } | undefined {
  let best: { hole: Hole; far: number } | undefined;
  for (const hole of holes) {
    const far = Math.hypot(hole.x - x, hole.y - y);
    if (!best || far < best.far) best = { hole, far };
  }
  return best;
}

/** Both ways round: an edge of one that the other lacks, and a hole of either without a partner, count. */
function misfitOf(a: Part, b: Part, pose: Pose, places: readonly Place[]): number {
  let [sum, count] = [0, 0];
  for (const place of places) {
    sum += a.boundary.nearest(laidOver(pose, place), most)?.far ?? most;
    count += 1;
  }
  const laid = b.plate.holes.map((hole) => ({ ...hole, ...laidOver(pose, hole) }));
  const holeMisfit = (from: readonly Hole[], to: readonly Hole[]) => {
    for (const hole of from) {
      const near = nearestHole(to, hole);
      const rim = Math.PI * hole.d;
      sum += rim * Math.min(most, near ? near.far + Math.abs(near.hole.d - hole.d) : most);
      count += rim;
    }
  };
  holeMisfit(laid, a.plate.holes);
  holeMisfit(a.plate.holes, laid);
  return sum / count;
}
