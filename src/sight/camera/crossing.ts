import { leastSquares } from '../least-squares.js';
import type { Crossing, Place } from '../mat/mat.js';
import { isInside, lightAt, type Picture } from '../picture.js';
import { type Camera, pixelsPerMm, project } from './camera.js';

/** A crossing of the printed squares as the picture shows it. */
export interface SeenCrossing {
  readonly crossing: Crossing;
  /** in pixels */
  readonly at: Place;
  /** of the blur, standard deviation in pixels */
  readonly blur: number;
  /** of the white squares, linear light */
  readonly white: number;
}

/** the tags begin 1.5 mm from the lines */
const reach = 1.3;

/**
 * The crossing near where the camera expects it, to a few hundredths of a pixel: two blurred steps that cross are fitted
 * to the light round it (brightness, a slope of the shade, contrast, place, blur). Undefined where nothing like it is seen.
 */
export function seeCrossing(picture: Picture, camera: Camera, crossing: Crossing): SeenCrossing | undefined {
  const expected = project(camera, { ...crossing, z: 0 });
  const scale = pixelsPerMm(camera, crossing);
  if (!isInside(picture, expected.x, expected.y, 1.5 * reach * scale)) return undefined;
  const patch = sampled(picture, camera, crossing, scale);
  const start = [0, 0, Math.max(0.5 / scale, 0.1), ...levels(patch)];
  const sign = crossing.whiteUpperRight ? 1 : -1;
  const size = Math.max(1e-4, Math.abs(start[4]!));
  const fit = leastSquares((v) => misfit(patch, v, sign), start, {
    steps: [1e-3, 1e-3, 1e-3, 1e-3 * size, 1e-3 * size, 1e-3 * size, 1e-3 * size],
    most: 15,
  });
  const [dx, dy, blur, mean, contrast] = fit.values as [number, number, number, number, number];
  const noise = Math.sqrt(fit.cost / patch.light.length);
  const wellSeen = contrast > 0.01 && mean > 0.5 * contrast && noise < 0.22 * contrast;
  if (!wellSeen || Math.hypot(dx, dy) > 0.8 || blur > 2 || blur < 0) return undefined;
  const at = project(camera, { x: crossing.x + dx, y: crossing.y + dy, z: 0 });
  return { crossing, at, blur: blur * scale, white: mean + contrast };
}

/** A square of the picture round a crossing, row by row. */
interface Patch {
  /** of its columns, and of its rows alike, millimetres from the crossing */
  readonly off: Float64Array;
  readonly light: Float64Array;
}

function sampled(picture: Picture, camera: Camera, crossing: Place, scale: number): Patch {
  const steps = Math.min(12, Math.max(5, Math.round(reach * scale)));
  const side = 2 * steps + 1;
  const off = Float64Array.from({ length: side }, (_, i) => ((i - steps) * reach) / steps);
  const light = new Float64Array(side * side);
  const color = new Float64Array(3);
  for (let i = 0; i < side * side; i += 1) {
    const x = crossing.x + off[i % side]!;
    const y = crossing.y + off[Math.floor(i / side)]!;
    const at = project(camera, { x, y, z: 0 });
    lightAt(picture, at.x, at.y, color);
    light[i] = 0.3 * color[0]! + 0.59 * color[1]! + 0.11 * color[2]!;
  }
  return { off, light };
}

/** mean, contrast and slopes to begin with */
function levels({ light }: Patch): number[] {
  const sorted = [...light].sort((a, b) => a - b);
  const low = sorted[Math.floor(0.1 * sorted.length)]!;
  const high = sorted[Math.floor(0.9 * sorted.length)]!;
  return [(low + high) / 2, (high - low) / 2, 0, 0];
}

function misfit({ off, light }: Patch, v: readonly number[], sign: number): Float64Array {
  const [dx, dy, blur, mean, contrast, slopeX, slopeY] = v as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const width = Math.max(0.02, blur) * Math.SQRT2;
  // the two steps cross at right angles: each is the same along a whole column or row
  const across = off.map((x) => sign * erf((x - dx) / width));
  const along = off.map((y) => erf((y - dy) / width));
  const side = off.length;
  const out = new Float64Array(light.length);
  for (let row = 0; row < side; row += 1)
    for (let column = 0; column < side; column += 1) {
      const shade = 1 + slopeX * off[column]! + slopeY * off[row]!;
      const i = row * side + column;
      out[i] = shade * (mean + contrast * across[column]! * along[row]!) - light[i]!;
    }
  return out;
}

/**
 * The error function, to 1.5e-7.
 *
 * Source: M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 7.1.26. Example: erf(0.5) = 0.5204999.
 */
export function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const value = 1 - poly * Math.exp(-x * x);
  return x < 0 ? -value : value;
}
