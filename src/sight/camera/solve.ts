import type { Matrix } from 'ml-matrix';
import { leastSquares } from '../least-squares.js';
import type { Mat, Place } from '../mat/mat.js';
import type { Picture } from '../picture.js';
import { type Camera, cameraOf, pixelsPerMm, project, tiltDegrees } from './camera.js';
import { type SeenCrossing, seeCrossing } from './crossing.js';
import type { SeenTag } from './find-tags.js';
import { across, homography } from './homography.js';

export interface Focal {
  /** pixels */
  readonly value: number;
  /** standard uncertainty as a share of it */
  readonly share: number;
}

export interface SolvedCamera {
  readonly camera: Camera;
  readonly values: readonly number[];
  /** covariance of `values`, in their units */
  readonly covariance: Matrix;
  /** of the crossings from where the camera sees them, pixels */
  readonly rms: number;
  readonly tilt: number;
  readonly crossings: readonly SeenCrossing[];
  /** in the middle of the mat */
  readonly pixelsPerMm: number;
  /** standard deviation of the blur at the crossings, pixels: the median */
  readonly blur: number;
}

interface Pair {
  readonly from: Place;
  readonly to: Place;
}

/** What telephones and cameras have: the standard lens sees 26 to 28 mm of a 36 mm frame (common practice). */
export const usualFocal = (picture: { width: number; height: number }): Focal => ({
  value: 0.85 * Math.max(picture.width, picture.height),
  share: 0.25,
});

/** of the picture’s longer side; lenses stand off the middle of their sensor by about this (common practice) */
const offMiddle = 0.006;
const distortion = { k1: 0.1, k2: 0.02 };

/** The camera from the tags, then from the crossings. Undefined where too few crossings are seen. */
export function solveCamera(
  picture: Picture,
  mat: Mat,
  tags: readonly SeenTag[],
  focal: Focal = usualFocal(picture),
): SolvedCamera | undefined {
  const rough = fromTags(picture, tags, focal);
  let values = rough;
  let seen: readonly SeenCrossing[] = [];
  let solved: ReturnType<typeof fitted> | undefined;
  for (let round = 0; round < 2; round += 1) {
    const camera = cameraOf(values);
    seen = mat.crossings.flatMap((crossing) => seeCrossing(picture, camera, crossing) ?? []);
    if (seen.length < 10) return undefined;
    const pairs = seen.map(({ crossing, at }) => ({ from: crossing, to: at }));
    solved = fitted(picture, pairs, values, focal, 0.15);
    values = solved.values;
  }
  return solved && described(solved, seen);
}

function described(solved: ReturnType<typeof fitted>, seen: readonly SeenCrossing[]): SolvedCamera {
  const camera = cameraOf(solved.values);
  const blurs = seen.map(({ blur }) => blur).sort((a, b) => a - b);
  return {
    camera,
    values: solved.values,
    covariance: solved.covariance,
    rms: solved.rms,
    tilt: tiltDegrees(camera),
    crossings: seen,
    pixelsPerMm: pixelsPerMm(camera, { x: 0, y: 0 }),
    blur: blurs[blurs.length >> 1]!,
  };
}

function fromTags(picture: Picture, tags: readonly SeenTag[], focal: Focal): readonly number[] {
  const pairs = tags.flatMap(({ tag, corners }) => tag.corners.map((from, i) => ({ from, to: corners[i]! })));
  const starts = [0.7, 1, 1.4].map((share) => poseFrom(pairs, picture, share * focal.value));
  const fits = starts.map((start) => fitted(picture, pairs, start, focal, 1.5));
  return fits.sort((a, b) => a.cost - b.cost)[0]!.values;
}

/**
 * Pose from a homography: its first two columns are the turned axes times one factor.
 *
 * Source: Z. Zhang, A Flexible New Technique for Camera Calibration, IEEE TPAMI 22 (2000) 1330, 3.1, from memory.
 */
function poseFrom(pairs: readonly Pair[], { width, height }: Picture, focal: number): number[] {
  const middle = { x: width / 2, y: height / 2 };
  const h = homography(
    pairs.map(({ from }) => from),
    pairs.map(({ to }) => ({ x: (to.x - middle.x) / focal, y: (to.y - middle.y) / focal })),
  );
  const one = [h[0]!, h[3]!, h[6]!];
  const two = [h[1]!, h[4]!, h[7]!];
  const size = Math.sqrt(Math.hypot(...one) * Math.hypot(...two));
  const depth = across(h, { x: 0, y: 0 });
  const first = unit(one);
  const along = dot(first, two);
  const second = unit(two.map((value, i) => value - along * first[i]!));
  const third = crossed(first, second);
  // without the half turn about x, which `cameraOf` adds
  const m = [0, 1, 2].map((row) => [first[row]!, -second[row]!, -third[row]!]);
  const turn = rotationVector(m);
  return [focal, middle.x, middle.y, 0, 0, ...turn, depth.x / size, depth.y / size, 1 / size];
}

const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, i) => sum + value * b[i]!, 0);
const unit = (a: readonly number[]) => a.map((value) => value / Math.hypot(...a));
const crossed = (a: readonly number[], b: readonly number[]) => [
  a[1]! * b[2]! - a[2]! * b[1]!,
  a[2]! * b[0]! - a[0]! * b[2]!,
  a[0]! * b[1]! - a[1]! * b[0]!,
];

function rotationVector(m: readonly (readonly number[])[]): number[] {
  const [a, b, c] = m as [number[], number[], number[]];
  // by the quaternion, which is safe near a half turn
  const w = Math.sqrt(Math.max(0, 1 + a[0]! + b[1]! + c[2]!)) / 2;
  const x = (Math.sqrt(Math.max(0, 1 + a[0]! - b[1]! - c[2]!)) / 2) * Math.sign(c[1]! - b[2]! || 1);
  const y = (Math.sqrt(Math.max(0, 1 - a[0]! + b[1]! - c[2]!)) / 2) * Math.sign(a[2]! - c[0]! || 1);
  const z = (Math.sqrt(Math.max(0, 1 - a[0]! - b[1]! + c[2]!)) / 2) * Math.sign(b[0]! - a[1]! || 1);
  const sine = Math.hypot(x, y, z);
  const angle = 2 * Math.atan2(sine, w);
  return [x, y, z].map((value) => (sine < 1e-12 ? 0 : (value / sine) * angle));
}

/** Camera values with the least misfit; what a lens usually is stands beside the pairs as faint observations. */
function fitted(picture: Picture, pairs: readonly Pair[], start: readonly number[], focal: Focal, u: number) {
  const longest = Math.max(picture.width, picture.height);
  const priors: readonly (readonly [number, number, number])[] = [
    [1, picture.width / 2, offMiddle * longest],
    [2, picture.height / 2, offMiddle * longest],
    [3, 0, distortion.k1],
    [4, 0, distortion.k2],
  ];
  const steps = [1e-4 * focal.value, 0.02, 0.02, 1e-5, 1e-5, 1e-6, 1e-6, 1e-6, 1e-3, 1e-3, 1e-3];
  let weights = pairs.map(() => 1);
  let fit = { values: start, cost: 0 } as Partial<ReturnType<typeof leastSquares>>;
  for (let round = 0; round < 3; round += 1) {
    const residuals = (v: readonly number[]) => {
      const out = new Float64Array(2 * pairs.length + priors.length + 1);
      const camera = cameraOf(v);
      for (const [i, { from, to }] of pairs.entries()) {
        const at = project(camera, { ...from, z: 0 });
        out[2 * i] = (weights[i]! * (at.x - to.x)) / u;
        out[2 * i + 1] = (weights[i]! * (at.y - to.y)) / u;
      }
      for (const [k, [at, mean, spread]] of priors.entries())
        out[2 * pairs.length + k] = (v[at]! - mean) / spread;
      out[out.length - 1] = Math.log(Math.max(1e-3, v[0]! / focal.value)) / focal.share;
      return out;
    };
    fit = leastSquares(residuals, fit.values!, { steps, most: 40 });
    weights = downWeighted(pairs, cameraOf(fit.values!), u);
  }
  return withSpread(pairs, fit as ReturnType<typeof leastSquares>, u, weights);
}

/** Huber: what lies further off than is usual among them counts in proportion less. */
function downWeighted(pairs: readonly Pair[], camera: Camera, u: number): number[] {
  const off = pairs.map((pair) => missOf(camera, pair));
  const usual = Math.max(0.3 * u, [...off].sort((a, b) => a - b)[off.length >> 1]! * 1.2);
  return off.map((miss) => (miss <= 2.5 * usual ? 1 : Math.sqrt((2.5 * usual) / miss)));
}

const missOf = (camera: Camera, { from, to }: Pair): number => {
  const at = project(camera, { ...from, z: 0 });
  return Math.hypot(at.x - to.x, at.y - to.y);
};

function withSpread(
  pairs: readonly Pair[],
  fit: ReturnType<typeof leastSquares>,
  u: number,
  weights: number[],
) {
  const camera = cameraOf(fit.values);
  const off = pairs.map((pair) => missOf(camera, pair));
  const squares = off.reduce((sum, miss, i) => sum + (weights[i]! * miss) ** 2, 0);
  const variance = squares / Math.max(1, 2 * pairs.length - 8);
  return {
    values: fit.values,
    cost: fit.cost,
    // the faint observations keep their own size, so the pairs may only widen what comes out
    covariance: fit.cofactors.mul(Math.max(1, variance / (u * u))) as Matrix,
    rms: Math.sqrt(off.reduce((sum, miss) => sum + miss * miss, 0) / off.length),
  };
}
