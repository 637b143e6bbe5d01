import { type Camera, project } from './camera/camera.js';
import type { Mat, Place } from './mat/mat.js';
import { isInside, lightAt, linear, type Picture } from './picture.js';

/** along a printed edge, from its middle, and across it, from black to white: that far nothing else is printed; mm */
const alongs = [-3.5, -2.5, -1.5, -0.5, 0.5, 1.5, 2.5, 3.5];
const reach = 1.9;
const spacing = 0.1;
const places = 2 * Math.round(reach / spacing) + 1;

/** printers spread ink by about this, millimetres (common practice); the power’s logarithm may well be this */
const inkSpread = 0.03;
const usualBend = 0.8;
/** of the step from black to white: that of so many edges is even to about this */
const evenness = 0.004;

/**
 * The light that each number of the picture’s file stands for, 0 to 1.
 *
 * Cameras do not keep to the standard’s curve. The printed edges tell by how much this one is off: a blur shares light
 * evenly between both sides of a straight edge, so in true light the step from black to white is the same upside down.
 * The power of the standard’s light is taken that makes the mean of all printed edges so, and puts it where the
 * crossings have it. Numbers at which the file is full tell nothing; where there are no others the standard stands.
 */
export function toneOf(picture: Picture, mat: Mat, camera: Camera): Float64Array {
  const steps = stepsIn(picture, mat, camera);
  if (steps.length < 60) return linear;
  // a part that lies over some of them does not move the middle one, and a power keeps what is the middle one
  const step = Float64Array.from({ length: places }, (_, i) => middleOf(steps.map((own) => own[i]!)));
  const powers = Array.from({ length: 31 }, (_, i) => Math.exp((i - 15) * 0.06));
  const costs = powers.map((power) => unevenness(step, power));
  const at = Math.min(powers.length - 2, Math.max(1, costs.indexOf(Math.min(...costs))));
  const [a, b, c] = [costs[at - 1]!, costs[at]!, costs[at + 1]!];
  const bend = a - 2 * b + c;
  const power = powers[at]! * Math.exp(bend > 0 ? (0.06 * (a - c)) / (2 * bend) : 0);
  return linear.map((light) => light ** power);
}

/** How far a tone is from the standard’s: the logarithm of its power. */
export const bendOf = ({ tone = linear }: Picture): number =>
  Math.log(Math.log(tone[128]!) / Math.log(linear[128]!));

const middleOf = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** The light from black to white at the ring's edges, each channel by itself, as a share of white's. */
function stepsIn(picture: Picture, mat: Mat, camera: Camera): Float64Array[] {
  const { middle } = mat;
  const right = Math.max(...mat.black.map(({ x, width }) => x + width));
  const top = Math.max(...mat.black.map(({ y, height }) => y + height));
  const near = (a: number, b: number) => Math.abs(a - b) < 1;
  return mat.black.flatMap(({ x, y, width, height }) => {
    const center = { x: x + width / 2, y: y + height / 2 };
    const inX = center.x > middle.x && center.x < middle.x + middle.width;
    const inY = center.y > middle.y && center.y < middle.y + middle.height;
    // the other two outer sides have the bars beside them
    const rightward = near(x + width, right) || (inY && near(x + width, middle.x));
    const leftward = inY && near(x, middle.x + middle.width);
    const upward = near(y + height, top) || (inX && near(y + height, middle.y));
    const downward = inX && near(y, middle.y + middle.height);
    const side = (nx: number, ny: number) =>
      alongs.flatMap((along) => {
        const foot = {
          x: center.x + (width / 2) * nx - along * ny,
          y: center.y + (height / 2) * ny + along * nx,
        };
        return stepAt(picture, camera, foot, nx, ny);
      });
    return [
      ...(rightward ? side(1, 0) : []),
      ...(leftward ? side(-1, 0) : []),
      ...(upward ? side(0, 1) : []),
      ...(downward ? side(0, -1) : []),
    ];
  });
}

function stepAt(picture: Picture, camera: Camera, foot: Place, nx: number, ny: number): Float64Array[] {
  const light = new Float64Array(3);
  const channels = [0, 1, 2].map(() => new Float64Array(places));
  for (let i = 0; i < places; i += 1) {
    const t = i * spacing - reach;
    const at = project(camera, { x: foot.x + t * nx, y: foot.y + t * ny, z: 0 });
    if (!isInside(picture, at.x, at.y, 1)) return [];
    lightAt(picture, at.x, at.y, light);
    for (const [c, own] of channels.entries()) own[i] = light[c]!;
  }
  return channels.flatMap((own) => {
    const white = meanOf(own.subarray(-4));
    const isFull = own.some((value) => value > linear[253]!);
    const isStep = white > 0.03 && meanOf(own.subarray(0, 4)) < 0.4 * white;
    return isFull || !isStep ? [] : [own.map((value) => value / white)];
  });
}

const meanOf = (values: Float64Array): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** How far a step, its light to a power, is from being the same upside down and at the place of the edge. */
function unevenness(step: Float64Array, power: number): number {
  const light = step.map((value) => Math.max(0, value) ** power);
  const black = meanOf(light.subarray(0, 4));
  const white = meanOf(light.subarray(-4));
  const share = light.map((value) => (value - black) / (white - black));
  const area = share.reduce((sum, value) => sum + value, 0) - (share[0]! + share.at(-1)!) / 2;
  const off = reach - area * spacing;
  const at = (t: number): number => {
    const i = Math.min(places - 1.001, Math.max(0, (t + reach) / spacing));
    const from = Math.floor(i);
    return share[from]! + (i - from) * (share[from + 1]! - share[from]!);
  };
  let squares = 0;
  for (let k = 1; k <= 15; k += 1) squares += (at(off + k * spacing) + at(off - k * spacing) - 1) ** 2;
  return squares / 15 / evenness ** 2 + (off / inkSpread) ** 2 + (Math.log(power) / usualBend) ** 2;
}
