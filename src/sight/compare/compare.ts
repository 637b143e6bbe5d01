import { spaced } from '../contours.js';
import type { Place } from '../mat/mat.js';
import type { Hole, Plate } from '../plate/read-plate.js';
import { Boundary, linesOf } from './boundary.js';
import { type Laid, nearestHole, waysOver } from './lay-over.js';
import { laidOver, type Pose, takenBack } from './pose.js';

/** What one of two parts has otherwise, where it lies on either mat, and by how much; mm. */
export interface Difference {
  readonly what:
    | 'hole only in first'
    | 'hole only in second'
    | 'hole moved'
    | 'hole wider'
    | 'hole narrower'
    | 'edge';
  readonly inFirst: Place;
  readonly inSecond: Place;
  /** how far, how much wider, or how wide the hole is */
  readonly by: number;
  /** ± of `by` at 95 % */
  readonly u: number;
}

export interface Comparison {
  /** empty: no difference beyond what the pictures can tell */
  readonly differences: readonly Difference[];
  /** the second lies face down beside the first */
  readonly turnedOver: boolean;
  /** degrees by which the second is turned, against the clock */
  readonly turn: number;
  /** laid face up and face down it comes out alike: which way up it belongs cannot be told by its shape */
  readonly eitherWayUp: boolean;
  /** in how many turns it comes out alike */
  readonly turns: number;
  /** a difference smaller than this is not seen */
  readonly least: number;
  /** holes of one that the other may have as well, hidden behind the wall of a thick part: no difference is made of them */
  readonly maybeHidden: number;
}

const limits = {
  /** holes: place and width, beyond both ± */
  hole: 0.3,
  /** edges: so far off over at least so long */
  edge: 0.32,
  run: 2,
  /** a hole within this of another is the same one moved */
  reach: 3,
  /** ways that fit as well as the best but for so much are as good */
  asGood: 0.04,
} as const;

/** both ± at 95 % times this: of a dozen holes on either part hardly one is off by so much by chance */
const surely = 1.5;

/** ± at 95 % of an edge that lies off: that of either outline where a part is thin, on rendered photographs, mm */
const uEdge = 0.1;

/**
 * Two parts that look alike, each read from its own photograph on the same print of the mat: the second is laid over
 * the first as well as it goes, and what then lies apart is told. Lengths in millimetres.
 */
export function compare(first: Plate, second: Plate): Comparison {
  const [nearest, ...others] = waysOver(first, second);
  const ways = [nearest!, ...others.filter((way) => isAsGood(way, nearest!))].map((laid) => ({
    laid,
    ...differencesIn(first, second, laid),
  }));
  const fewest = Math.min(...ways.map(({ differences }) => differences.length));
  const asGood = ways.filter(({ differences }) => differences.length === fewest);
  const { laid, differences, maybeHidden } = asGood[0]!;
  const { pose } = laid;
  const us = [...first.holes, ...second.holes].map(({ u }) => surely * Math.SQRT2 * u);
  return {
    differences,
    turnedOver: asGood.every((way) => way.laid.pose.mirrored),
    turn: ((((pose.turn * 180) / Math.PI) % 360) + 360) % 360,
    eitherWayUp: new Set(asGood.map((way) => way.laid.pose.mirrored)).size === 2,
    turns: asGood.filter((way) => way.laid.pose.mirrored === pose.mirrored).length,
    least: Math.max(limits.edge, ...us),
    maybeHidden,
  };
}

const isAsGood = (way: Laid, best: Laid) => way.misfit <= best.misfit + limits.asGood;

interface Apart {
  readonly differences: Difference[];
  readonly maybeHidden: number;
}

function differencesIn(first: Plate, second: Plate, { pose }: Laid): Apart {
  const { differences, maybeHidden } = holeDifferences(first, second, pose);
  const all = [...differences, ...edgeDifferences(first, second, pose)];
  return { differences: all.sort((a, b) => b.by - a.by), maybeHidden };
}

function holeDifferences(first: Plate, second: Plate, pose: Pose): Apart {
  const partner = new Map<Hole, Hole>();
  const laid = (hole: Hole) => laidOver(pose, hole);
  for (const hole of second.holes) {
    const near = nearestHole(first.holes, laid(hole));
    if (near && near.far <= limits.reach && ![...partner.values()].includes(near.hole))
      partner.set(hole, near.hole);
  }
  const paired = [...partner].flatMap(([hole, other]) => pairDifferences(other, hole, laid(hole)));
  const found = new Set(partner.values());
  const lacking = first.holes
    .filter((hole) => !found.has(hole) && hole.d > second.hiddenBelow)
    .map(
      (hole): Difference => ({
        what: 'hole only in first',
        inFirst: { x: hole.x, y: hole.y },
        inSecond: takenBack(pose, hole),
        by: hole.d,
        u: hole.u,
      }),
    );
  const more = second.holes
    .filter((hole) => !partner.has(hole) && hole.d > first.hiddenBelow)
    .map(
      (hole): Difference => ({
        what: 'hole only in second',
        inFirst: laid(hole),
        inSecond: { x: hole.x, y: hole.y },
        by: hole.d,
        u: hole.u,
      }),
    );
  const alone = first.holes.length + second.holes.length - 2 * partner.size;
  return {
    differences: [...lacking, ...more, ...paired],
    maybeHidden: alone - lacking.length - more.length,
  };
}

function pairDifferences(hole: Hole, other: Hole, laid: Place): Difference[] {
  const u = Math.hypot(hole.u, other.u);
  const least = Math.max(limits.hole, surely * u);
  const where = { inFirst: { x: hole.x, y: hole.y }, inSecond: { x: other.x, y: other.y }, u };
  const moved = Math.hypot(hole.x - laid.x, hole.y - laid.y);
  const wider = other.d - hole.d;
  return [
    ...(moved > least ? [{ what: 'hole moved' as const, by: moved, ...where }] : []),
    ...(Math.abs(wider) > least
      ? [
          {
            what: wider > 0 ? ('hole wider' as const) : ('hole narrower' as const),
            by: Math.abs(wider),
            ...where,
          },
        ]
      : []),
  ];
}

const space = 0.5;

/** Stretches of either edge that lie off the other's; one that both show is told once. */
function edgeDifferences(first: Plate, second: Plate, pose: Pose): Difference[] {
  const ofFirst = new Boundary([...linesOf(first), ...first.holes.map(rimOf)]);
  const ofSecond = new Boundary([...linesOf(second), ...second.holes.map(rimOf)]);
  const runs = [
    ...linesOf(second)
      .flatMap((line) => runsOff(line, (place) => ofFirst.nearest(laidOver(pose, place), 20)?.far ?? 20))
      .map(
        ({ at, by }): Difference => ({
          what: 'edge',
          inFirst: laidOver(pose, at),
          inSecond: at,
          by,
          u: uEdge,
        }),
      ),
    ...linesOf(first)
      .flatMap((line) => runsOff(line, (place) => ofSecond.nearest(takenBack(pose, place), 20)?.far ?? 20))
      .map(
        ({ at, by }): Difference => ({
          what: 'edge',
          inFirst: at,
          inSecond: takenBack(pose, at),
          by,
          u: uEdge,
        }),
      ),
  ].sort((a, b) => b.by - a.by);
  const told: Difference[] = [];
  for (const run of runs)
    if (!told.some(({ inFirst }) => Math.hypot(inFirst.x - run.inFirst.x, inFirst.y - run.inFirst.y) < 8))
      told.push(run);
  return told;
}

const rimOf = ({ x, y, d }: Hole): Place[] =>
  Array.from({ length: 72 }, (_, i) => ({
    x: x + (d / 2) * Math.cos((Math.PI * i) / 36),
    y: y + (d / 2) * Math.sin((Math.PI * i) / 36),
  }));

/** Where a closed line is off by more than the limit over at least the least run: the farthest place of each. */
function runsOff(line: readonly Place[], off: (place: Place) => number): { at: Place; by: number }[] {
  const places = spaced(line, space);
  const far = places.map(off);
  const begin = far.findIndex((value) => value <= limits.edge);
  if (begin < 0) return [{ at: places[0]!, by: Math.max(...far) }];
  const runs: { at: Place; by: number }[] = [];
  let run: number[] = [];
  for (let k = 1; k <= places.length; k += 1) {
    const i = (begin + k) % places.length;
    if (far[i]! > limits.edge) run.push(i);
    else {
      if (run.length * space >= limits.run) {
        const top = run.reduce((a, b) => (far[b]! > far[a]! ? b : a));
        runs.push({ at: places[top]!, by: far[top]! });
      }
      run = [];
    }
  }
  return runs;
}
