import { type Camera, pixelsPerMm, type Spot, standpoint } from '../camera/camera.js';
import { beads, contours, encloses, signedArea } from '../contours.js';
import { type Ground, shareAt } from '../ground.js';
import type { Place } from '../mat/mat.js';
import type { Material } from '../material.js';
import { type Refusal, refusal } from '../refusal.js';
import type { View } from '../view.js';
import { type Circle, circleOf, isSure, placed, unblurred } from './circle.js';
import { type EdgePoint, type EdgeReader, edgeReader, refineEdge } from './edge.js';
import { outlineOf } from './outline.js';
import { spreadOfHole, standSpread } from './spread.js';
import type { Thickness } from './thickness.js';

export interface Hole extends Place {
  readonly d: number;
  /** ± of place and diameter: nineteen errors of twenty are smaller */
  readonly u: number;
}

export interface Plate {
  readonly outline: readonly Place[];
  readonly holes: readonly Hole[];
  /** openings that are not round */
  readonly cutouts: readonly (readonly Place[])[];
  /** as it was used: what the holes themselves say of it is in it */
  readonly thickness: Thickness;
  /** holes narrower than this may show no mat from where the picture was taken, and are then not among those seen */
  readonly hiddenBelow: number;
}

/** How long and how wide it is as it lies, mm. */
export function extentOf({ outline }: Plate): { readonly x: number; readonly y: number } {
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
  return { x: Math.max(...xs) - Math.min(...xs), y: Math.max(...ys) - Math.min(...ys) };
}

/** the narrowest bolt hole that is reckoned with, mm: M4 (common practice) */
const boltHole = 4;

/** Whether even a bolt hole may be hidden: then the holes are to be counted on the part. */
export const mayHideBolts = ({ hiddenBelow }: Plate): boolean => hiddenBelow > boltHole;

const space = 0.35;
const smooth = 0.5;
/** what is smaller is a speck */
const leastOpening = 3;

/** share of the paper's light: a face so bright falls apart into its darker grains, and two such parts do not stand out */
const pale = 0.6;

/** The plate that lies on the mat: the largest patch of material. */
export function readPlate(view: View, material: Material, told: Thickness): Plate | Refusal {
  const patches = [...material.patches].sort((a, b) => b.area - a.area);
  const [largest, second] = patches;
  if (!largest || largest.area < 30) return refusal('nothing-there');
  if (largest.touchesRim) return refusal('cut-off');
  if (second && second.area > 0.4 * largest.area && second.area > 100)
    return refusal(Math.min(...material.colorAt(0, 0)) > pale ? 'bright' : 'several-parts');
  const lines = contours({ ...view.ground, values: material.paper }, 0.5);
  const outer = lines.reduce((a, b) => (signedArea(b) > signedArea(a) ? b : a));
  const openings = lines.filter((line) => signedArea(line) < -leastOpening && encloses(outer, line[0]!));
  const reader = edgeReader(view.picture, view.solved, view.ground, material.colorAt, { height: told.mm });
  const read = (line: readonly Place[]) =>
    beads(line, space, smooth).flatMap((bead) => refineEdge(reader, bead) ?? []);
  const rim = read(outer);
  const edges = openings.map(read).filter((edge) => !isGlare(edge));
  const fault = faultOf(
    reader,
    rim,
    edges.filter((edge) => leanOf(edge, reader) < 0.5),
  );
  if (fault) return fault;
  const thickness = heightFrom(reader, edges, leaning(told, view));
  return assembled({ ...reader, height: thickness.mm }, rim, edges, thickness, view);
}

function assembled(
  reader: EdgeReader,
  rim: readonly EdgePoint[],
  edges: readonly (readonly EdgePoint[])[],
  thickness: Thickness,
  view: View,
): Plate {
  const holes: Hole[] = [];
  const cutouts: Place[][] = [];
  for (const edge of edges) {
    const circle = circleOf(edge, reader.eye, thickness.mm);
    if (circle && isRound(circle, reader.camera))
      holes.push({
        x: circle.x,
        y: circle.y,
        d: 2 * unblurred(circle.r, reader.blur / pixelsPerMm(reader.camera, circle)),
        u: spreadOfHole(circle, edge, reader, thickness, view),
      });
    else cutouts.push(outlineOf(edge, reader.eye, thickness.mm));
  }
  const outline = outlineOf(rim, reader.eye, thickness.mm);
  return { outline, holes, cutouts, thickness, hiddenBelow: hiddenBelow(outline, reader.eye, thickness) };
}

/** Of the mat seen through a hole this much is wanted across, or it is taken for a speck, mm. */
const leastSeen = 2.5;

/** Through a thick plate a narrow hole shows only its own wall: by as much as its upper rim is seen off its foot. */
function hiddenBelow(outline: readonly Place[], eye: Spot, { mm, u }: Thickness): number {
  const farthest = Math.max(...outline.map(({ x, y }) => Math.hypot(x - eye.x, y - eye.y)));
  const top = mm + 2 * u;
  return (top * farthest) / (eye.z - top) + leastSeen;
}

const isRound = (circle: Circle, camera: Camera): boolean => {
  const pixel = 1 / pixelsPerMm(camera, circle);
  return circle.kept > 0.5 * circle.of && circle.scatter < Math.max(0.06, 0.35 * pixel, 0.006 * circle.r);
};

/** How far the upper rim of an edge is seen off its foot, millimetres. */
const leanOf = (edge: readonly EdgePoint[], { eye, height }: EdgeReader): number =>
  (height / eye.z) * Math.hypot(edge[0]!.x - eye.x, edge[0]!.y - eye.y);

/** A mirrored light on a plate looks like paper, but it fades: its edge is soft, or no full step. */
const isGlare = (edge: readonly EdgePoint[]): boolean => {
  const steps = edge.map(({ paper, material }) => paper - material).sort((a, b) => a - b);
  return edge.filter(({ clean }) => clean).length < 0.4 * edge.length || steps[steps.length >> 1]! < 0.6;
};

/** A stain, a shadow or a bright stretch along an edge: more than this in one piece cannot be read over. */
const longestFault = 2;

function faultOf(
  reader: EdgeReader,
  rim: readonly EdgePoint[],
  edges: readonly (readonly EdgePoint[])[],
): Refusal | undefined {
  const grain = grainOf(reader, [rim, ...edges]);
  for (const edge of [rim, ...edges]) {
    if (hasBorder(reader, grain, edge)) return refusal('dirty-edge');
    const faint = longestRun(edge, ({ paper, material }) => paper - material < 0.35);
    if (faint > longestFault) return refusal('bright');
    const stained = longestRun(edge, ({ paper, clean }) => paper < 0.82 || !clean);
    if (stained > longestFault) return refusal('dirty-edge');
  }
  return undefined;
}

/** millimetres; within a thicker part the walls of its holes are of another color too */
const thick = 5;
/** of a wall as it is seen: a broader one reaches to where the part is looked at */
const widestWall = 0.6;

/** a hard shadow or a stain runs on for longer than the corners of a part do */
const longestBorder = 8;

/** of an edge: what runs along more of it than this is how the part is made, as the metal ring round a bore */
const allRound = 0.85;

/** how far inward of its edges the part itself is looked at, millimetres, and how many points further along it again */
const inward = [4, 7, 10];
const further = 8;

/**
 * How far a part's own light, red, green and blue as a share of the paper's, differs between places near each other: its
 * grain. What changes slowly over a face, and a shadow that lies along it, is none.
 */
function grainOf({ ground, colorAt }: EdgeReader, edges: readonly (readonly EdgePoint[])[]): number[] {
  const lightAt = ({ x, y, nx, ny }: EdgePoint, depth: number) => {
    const at = { x: x - depth * nx, y: y - depth * ny };
    const light = shareAt(ground, at.x, at.y);
    const color = colorAt(at.x, at.y);
    // through an opening the paper shows
    return light?.every((share, c) => share < (1 + color[c]!) / 2 || share < 0.8) ? light : undefined;
  };
  const apart = edges.flatMap((edge) =>
    edge.flatMap((point, i) =>
      inward.flatMap((depth) => {
        const one = lightAt(point, depth);
        const other = lightAt(edge[(i + further) % edge.length]!, depth);
        return one && other ? [one.map((share, c) => Math.abs(share - other[c]!))] : [];
      }),
    ),
  );
  return [0, 1, 2].map((c) => {
    const sorted = apart.map((each) => each[c]!).sort((a, b) => a - b);
    return (1.48 * (sorted[sorted.length >> 1] ?? 0)) / Math.SQRT2;
  });
}

/**
 * Whether an edge encloses more than the part along a stretch: a shadow cast beside it, or a stain that it touches.
 * Either is brighter than the part and ends at the part’s own edge in a step; a face that mirrors light in one place fades.
 */
function hasBorder(reader: EdgeReader, grain: readonly number[], edge: readonly EdgePoint[]): boolean {
  const excess = edge.map((point) => excessAt(reader, grain, point));
  const of = new Map(edge.map((point, i) => [point, excess[i]]));
  const brighter = longestRun(edge, (point) => of.get(point) !== undefined);
  if (brighter <= longestBorder || brighter >= allRound * edge.length * space) return false;
  const ends = edge.map((point) => of.get(point) && endOf(reader.ground, point, of.get(point)!));
  const count = (how: End) => ends.filter((end) => end === how).length;
  return count('step') > count('fade');
}

/** millimetres inward of an edge at which it is looked whether that is the part */
const within = 1.4;

interface Excess {
  /** 0, 1, 2: red, green, blue */
  readonly color: number;
  readonly by: number;
}

/** By how much what an edge encloses is brighter than the part; undefined where it is not, or a broad wall is seen. */
function excessAt(
  { ground, eye, height, colorAt }: EdgeReader,
  grain: readonly number[],
  { x, y, nx, ny, rim }: EdgePoint,
): Excess | undefined {
  if (height > thick) return undefined;
  const lean = (height / eye.z) * Math.abs(nx * (x - eye.x) + ny * (y - eye.y));
  if (rim === 'foot' && lean > widestWall) return undefined;
  const at = { x: x - within * nx, y: y - within * ny };
  const own = colorAt(at.x, at.y);
  const here = shareAt(ground, at.x, at.y);
  const over = here?.map((share, c) => share - own[c]!) ?? [];
  const color = over.findIndex((by, c) => by > Math.max(0.07, 3.5 * grain[c]!));
  return color < 0 ? undefined : { color, by: over[color]! };
}

/** millimetres inward of an edge that a stain or a shadow reaches, and over which a step is looked for there */
const widestBorder = 12;
const acrossStep = 0.8;

type End = 'step' | 'fade' | 'not met';

/**
 * How the excess ends inward of an edge: half of it all at once, and for good, or little by little. Not met where an
 * opening or the paper on the far side of a stain comes first.
 */
function endOf(ground: Ground, { x, y, nx, ny }: EdgePoint, { color, by }: Excess): End {
  const shares: number[] = [];
  for (let depth = within; depth < widestBorder; depth += acrossStep / 2) {
    const share = shareAt(ground, x - depth * nx, y - depth * ny)?.[color];
    if (share === undefined || share > (shares[0] ?? 1) + by / 2) break;
    shares.push(share);
  }
  const isStep = (share: number, i: number) =>
    [2, 4].every((on) => i + on < shares.length && share - shares[i + on]! > by / 2);
  if (shares.some(isStep)) return 'step';
  return shares.some((share) => shares[0]! - share > by / 2) ? 'fade' : 'not met';
}

/** Millimetres of the longest stretch of a closed edge where something holds. */
function longestRun(edge: readonly EdgePoint[], holds: (point: EdgePoint) => boolean): number {
  let longest = 0;
  let run = 0;
  for (let i = 0; i < 2 * edge.length && run < edge.length; i += 1) {
    run = holds(edge[i % edge.length]!) ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest * space;
}

/** Height and the camera’s own height act only by their ratio, so what is not known of the one is added to the other. */
const leaning = ({ mm, u }: Thickness, view: View): Thickness => ({
  mm,
  u: Math.hypot(u, (mm * standSpread(view).z) / standpoint(view.solved.camera).z),
});

/**
 * The height that the person gave, drawn towards the one at which the upper rims and the feet of all holes lie on the
 * same circles, as far as those tell it better than the person’s ±.
 */
function heightFrom(
  reader: EdgeReader,
  edges: readonly (readonly EdgePoint[])[],
  told: Thickness,
): Thickness {
  const telling = edges.filter((edge) => leanOf(edge, reader) > 0.4);
  if (telling.length === 0 || told.u <= 0.02) return told;
  const pixel = 1 / pixelsPerMm(reader.camera, { x: 0, y: 0 });
  const sigma = Math.max(0.02, 0.08 * pixel);
  const badness = (mm: number): number => {
    let sum = ((mm - told.mm) / told.u) ** 2;
    for (const edge of telling) sum += misfitOf(edge, reader.eye, mm, sigma);
    return sum;
  };
  const grid = Array.from({ length: 25 }, (_, i) => told.mm + (i - 12) * 0.25 * told.u);
  const costs = grid.map(badness);
  const at = Math.min(22, Math.max(2, costs.indexOf(Math.min(...costs))));
  const [a, b, c] = [costs[at - 2]!, costs[at]!, costs[at + 2]!];
  const bend = a - 2 * b + c;
  const step = 0.5 * told.u;
  if (!(bend > 0)) return told;
  const mm = grid[at]! + (step * (a - c)) / (2 * bend);
  // the cost rises by 1 at one standard deviation
  return { mm, u: Math.min(told.u, Math.max(0.02, step * Math.sqrt(2 / bend))) };
}

/** Squares of the clear points’ distances from their circle, one that is far off counted no more than three times sigma. */
function misfitOf(edge: readonly EdgePoint[], eye: Spot, mm: number, sigma: number): number {
  const circle = circleOf(edge, eye, mm);
  if (!circle || circle.kept < 12) return 0;
  let sum = 0;
  for (const [i, place] of placed(edge, eye, mm).entries()) {
    if (!edge[i]!.clean || !isSure(edge[i]!, eye, mm)) continue;
    const off = (Math.hypot(place.x - circle.x, place.y - circle.y) - circle.r) / sigma;
    // points along an edge share their errors over about a millimetre
    sum += (Math.min(9, off * off) * space) / 2;
  }
  return sum;
}
