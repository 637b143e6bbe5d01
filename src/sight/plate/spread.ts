import { cameraOf, pixelsPerMm, type Spot, standpoint } from '../camera/camera.js';
import { full, linear } from '../picture.js';
import { bendOf } from '../tone.js';
import type { View } from '../view.js';
import { type Circle, circleOf } from './circle.js';
import type { EdgePoint, EdgeReader } from './edge.js';
import type { Thickness } from './thickness.js';

/** of the blur, where the picture’s tone is off the standard’s by a whole power of e (this and the next two from the guiding half of bench/sight) */
const toneBias = 0.2;
/** how well the light of bare paper is known: the fainter a part, the further this moves its edge */
const whiteSlip = 0.012;
/** and where the paper is brighter than the file can say, so that its side of the edge is cut off */
const clippedBias = 0.3;

/** The ± of a hole: of its points, of the edge as such, of the thickness, of where the camera stood; about 95 %. */
export function spreadOfHole(
  circle: Circle,
  edge: readonly EdgePoint[],
  { camera, eye, blur, colorAt }: EdgeReader,
  thickness: Thickness,
  view: View,
): number {
  const pixel = 1 / pixelsPerMm(camera, circle);
  const { cofactors, scatter } = circle;
  // neighbors share their errors over about a millimetre, three points
  const fit =
    scatter * Math.sqrt(3 * Math.max(cofactors.get(0, 0), cofactors.get(1, 1), 4 * cofactors.get(2, 2)));
  const white = new Float64Array(3);
  view.ground.white(circle, white);
  const { tone = linear } = view.picture;
  const isFull = white.some((light) => light > tone[full]!);
  const contrast = 1 - Math.min(...colorAt(circle.x, circle.y));
  const reach = Math.max(0.6, 3 * blur * pixel);
  // what light, lens and file do to an edge all round alike: as far as they put the printed crossings off
  const bias = Math.hypot(
    (isFull ? clippedBias : view.solved.rms) * pixel,
    toneBias * bendOf(view.picture) * blur * pixel,
    (whiteSlip * reach) / contrast,
    unevenness(edge) * reach,
  );
  const moved = shiftOf(circle, circleOf(edge, eye, thickness.mm + thickness.u));
  const stand = standSpread(view);
  const stood = (['x', 'y'] as const).map((axis) =>
    shiftOf(circle, circleOf(edge, { ...eye, [axis]: eye[axis] + stand[axis] }, thickness.mm)),
  );
  return 1.9 * Math.hypot(fit, bias, moved, ...stood);
}

/**
 * How much the light of the part differs along an edge, as a share of the step to paper, standard deviation: where it
 * mirrors or is coarse of grain, what lies inward of an edge is not what lies at it, and its area moves the edge as much.
 */
function unevenness(edge: readonly EdgePoint[]): number {
  const levels = edge.map(({ material }) => material).sort((a, b) => a - b);
  const at = (share: number) => levels[Math.floor(share * (levels.length - 1))]!;
  // the middle 68 % of a bell lie within one standard deviation
  return (at(0.84) - at(0.16)) / 2;
}

/** The larger of how far a circle went and how much it grew across. */
const shiftOf = (a: Circle, b: Circle | undefined): number =>
  b ? Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y), 2 * Math.abs(a.r - b.r)) : 0;

/** Standard uncertainty of where the camera stood, from the covariance of its values. */
export function standSpread({ solved }: View): Spot {
  const { values, covariance } = solved;
  const here = standpoint(cameraOf(values));
  const by = values.map((value, k) => {
    const moved = [...values];
    const step = Math.sqrt(covariance.get(k, k)) * 0.1 || 1e-9;
    moved[k] = value + step;
    const there = standpoint(cameraOf(moved));
    return { x: (there.x - here.x) / step, y: (there.y - here.y) / step, z: (there.z - here.z) / step };
  });
  const of = (axis: 'x' | 'y' | 'z') => {
    let sum = 0;
    for (let i = 0; i < by.length; i += 1)
      for (let k = 0; k < by.length; k += 1) sum += by[i]![axis] * covariance.get(i, k) * by[k]![axis];
    return Math.sqrt(Math.max(0, sum));
  };
  return { x: of('x'), y: of('y'), z: of('z') };
}
