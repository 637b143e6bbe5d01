import { pixelsPerMm } from '../camera/camera.js';
import { convexHull } from '../camera/dark-quads.js';
import { beads, contours, signedArea } from '../contours.js';
import type { Place } from '../mat/mat.js';
import type { Material } from '../material.js';
import { type EdgePoint, edgeReader, refineEdge } from '../plate/edge.js';
import { type Refusal, refusal } from '../refusal.js';
import type { View } from '../view.js';
import { type FittedBolt, fitBolt } from './fit-bolt.js';

export interface Bolt extends Place {
  /** under the head, millimetres; `x`, `y` is half way between head and tip */
  readonly length: number;
  readonly d: number;
  /** of a hexagon head */
  readonly flats?: number;
  /** of a round head */
  readonly headDiameter?: number;
  /** degrees from x towards y in which the tip points */
  readonly turn: number;
  /** ± of length, and of the diameter: nineteen errors of twenty are smaller */
  readonly u: number;
  readonly uDiameter: number;
}

const space = 0.4;
const limb = 0.5;
/** of its convex hull: the corners between head and shank stay empty */
const mostFilled = 0.93;
/** square millimetres; an M4 × 8 shows 50 */
const least = 18;

/** The bolts that lie on the mat, all of them or a refusal: never a count that may be short. */
export function readBolts(view: View, material: Material): readonly Bolt[] | Refusal {
  const lines = contours({ ...view.ground, values: material.paper }, 0.5).filter(
    (line) => signedArea(line) > least,
  );
  const reader = edgeReader(view.picture, view.solved, view.ground, material.colorAt, { limb });
  const bolts: Bolt[] = [];
  const others: Other[] = [];
  for (const line of lines) {
    const edge = beads(line, space, 0.45).flatMap((bead) => refineEdge(reader, bead) ?? []);
    const pixel = 1 / pixelsPerMm(reader.camera, line[0]!);
    const fit = fillsItsHull(line) < mostFilled ? fitBolt(edge, reader.eye) : undefined;
    if (fit && isNear(fit, pixel)) bolts.push(boltOf(fit, pixel));
    else others.push({ line, edge });
  }
  if (material.patches.some(({ touchesRim, area }) => touchesRim && area > 2 * least))
    return refusal('cut-off');
  const strange = others.find((other) => !isStain(other));
  if (strange) return refusal(reasonFor(strange));
  return bolts.length > 0 ? bolts : refusal('nothing-there');
}

/** What lies on the mat and does not have the outline of a bolt. */
interface Other {
  readonly line: readonly Place[];
  readonly edge: readonly EdgePoint[];
}

/** Threads, a chamfered tip and a rounded head are not in the outline that is fitted. */
const isNear = ({ rms, worst }: FittedBolt, pixel: number): boolean => {
  const usual = Math.max(0.16, 1.2 * pixel);
  return rms < usual && worst < 6 * usual;
};

/** Oil and ink are paler than what the bolts are of, or fade out, and run into rounded spots. */
function isStain({ line, edge }: Other): boolean {
  const sharp = edge.filter(({ clean }) => clean).length / edge.length;
  const levels = edge.map(({ material }) => material).sort((a, b) => a - b);
  const pale = levels[levels.length >> 1]! > 0.07;
  return (sharp < 0.6 && fillsItsHull(line) > 0.9) || (pale && fillsItsHull(line) > 0.8);
}

/** A bright streak of metal looks like paper: the outline follows it, and half of it is no clear step. */
function reasonFor({ line, edge }: Other) {
  if (edge.filter(({ clean }) => clean).length < 0.88 * edge.length) return 'bright';
  return areSeveral(line) ? 'touching' : 'not-a-bolt';
}

const fillsItsHull = (line: readonly Place[]): number =>
  signedArea(line) / Math.abs(signedArea(convexHull(line)));

/** Two bolts in one patch leave hollows that one does not; side by side smaller ones, and the patch is narrow. */
function areSeveral(line: readonly Place[]): boolean {
  const area = signedArea(line);
  const filled = fillsItsHull(line);
  const [from] = line;
  const far = Math.max(...line.map(({ x, y }) => Math.hypot(x - from!.x, y - from!.y)));
  return area > 60 && (filled < 0.85 || (filled < mostFilled && area / far < narrow));
}

/** millimetres: two M10 heads side by side are 37 wide */
const narrow = 30;

function boltOf({ shape, form, uLength, uDiameter }: FittedBolt, pixel: number): Bolt {
  const half = (shape.length - shape.headHeight) / 2;
  return {
    x: shape.x + half * Math.cos(shape.turn),
    y: shape.y + half * Math.sin(shape.turn),
    length: shape.length,
    d: shape.d,
    ...(form === 'hexagon' ? { flats: shape.head } : { headDiameter: shape.head }),
    turn: ((((shape.turn * 180) / Math.PI) % 360) + 360) % 360,
    u: 2 * Math.hypot(uLength, 0.1 * pixel, 0.03),
    uDiameter: 2 * Math.hypot(uDiameter, 0.15 * pixel, 0.035),
  };
}
