import { findMat, unreadSquares } from './camera/find-tags.js';
import { type Focal, type SolvedCamera, solveCamera } from './camera/solve.js';
import { type Ground, groundOf } from './ground.js';
import { type Mat, square } from './mat/mat.js';
import { type Picture, reducedGray } from './picture.js';
import { type Refusal, refusal } from './refusal.js';
import { toneOf } from './tone.js';

/** A photograph of the mat, understood: where the camera stood and what the white middle shows. */
export interface View {
  readonly picture: Picture;
  readonly mat: Mat;
  readonly solved: SolvedCamera;
  readonly ground: Ground;
}

/** how the printed sheet came out, true length to nominal, across and along */
export interface Scale {
  readonly across: number;
  readonly along: number;
}

export interface ViewOptions {
  readonly scale: Scale;
  readonly focal?: Focal;
}

const limits = {
  /** degrees: built for 30 */
  tilt: 36,
  pixelsPerMm: 3,
  /** of the blur, standard deviation; printed squares of 12 mm stay readable far beyond */
  blurMm: 0.45,
  /** of the crossings from where a flat sheet has them, after the camera is fitted to them */
  bendMm: 0.09,
  bendPixels: 0.45,
} as const;

/** A picture refused before the part was looked at, with the camera where it was found. */
export interface Unviewed {
  readonly refused: Refusal;
  readonly solved?: SolvedCamera;
}

export function viewOf(picture: Picture, { scale, focal }: ViewOptions): View | Unviewed {
  const seen = findMat(picture, scale);
  if (!seen) return { refused: refusal(looksBlurred(picture) ? 'blurred' : whyNoTag(picture)) };
  const solved = solveCamera(picture, seen.mat, seen.tags, focal);
  if (!solved) return { refused: refusal(looksBlurred(picture) ? 'blurred' : 'marks-covered') };
  const wrong = faultOf(solved, seen.mat);
  if (wrong) return { refused: refusal(wrong), solved };
  const toned = { ...picture, tone: toneOf(picture, seen.mat, solved.camera) };
  return { picture: toned, mat: seen.mat, solved, ground: groundOf(toned, seen.mat, solved) };
}

/** degrees: of squares whose tags are too narrow to be read */
const narrow = 37;

/** No tag is read: for there is no sheet of ours, or it is seen too much from the side, or from too far away. */
function whyNoTag(picture: Picture) {
  const squares = unreadSquares(picture);
  if (!squares) return 'no-mat';
  if (squares.short < Math.cos((narrow * Math.PI) / 180)) return 'too-steep';
  return squares.long < limits.pixelsPerMm * square ? 'too-far' : 'no-mat';
}

function faultOf(solved: SolvedCamera, mat: Mat) {
  const { tilt, pixelsPerMm, blur, rms } = solved;
  if (tilt > limits.tilt) return 'too-steep';
  if (pixelsPerMm < limits.pixelsPerMm) return 'too-far';
  if (blur / pixelsPerMm > limits.blurMm) return 'blurred';
  if (!allSides(solved, mat)) return 'marks-covered';
  if (rms > Math.max(limits.bendPixels, limits.bendMm * pixelsPerMm)) return 'curled';
  return undefined;
}

/** At least a third of the crossings of each side and half of all: what lies between is held from all sides. */
function allSides({ crossings }: SolvedCamera, mat: Mat): boolean {
  const wide = Math.max(...mat.crossings.map(({ x }) => x));
  const high = Math.max(...mat.crossings.map(({ y }) => y));
  const sides = [
    (x: number) => x < -0.99 * wide,
    (x: number) => x > 0.99 * wide,
    (_: number, y: number) => y < -0.99 * high,
    (_: number, y: number) => y > 0.99 * high,
  ];
  const share = (holds: (x: number, y: number) => boolean) =>
    crossings.filter(({ crossing: { x, y } }) => holds(x, y)).length /
    mat.crossings.filter(({ x, y }) => holds(x, y)).length;
  return share(() => true) >= 0.5 && sides.every((side) => share(side) >= 1 / 3);
}

/**
 * Whether there is contrast but nowhere a sharp edge: at a quarter of the size, the steepest steps between neighbors
 * are compared with how far bright and dark lie apart round them.
 */
function looksBlurred(picture: Picture): boolean {
  const step = Math.max(1, Math.round(Math.max(picture.width, picture.height) / 1000));
  const { width, height, data } = reducedGray(picture, step);
  const cell = 16;
  const sharpness: number[] = [];
  for (let row = 0; row + cell < height; row += cell)
    for (let column = 0; column + cell < width; column += cell) {
      let low = 255;
      let high = 0;
      let steepest = 0;
      for (let y = row; y < row + cell; y += 1)
        for (let x = column; x < column + cell; x += 1) {
          const here = data[y * width + x]!;
          low = Math.min(low, here);
          high = Math.max(high, here);
          const dx = Math.abs(data[y * width + x + 1]! - here);
          const dy = Math.abs(data[(y + 1) * width + x]! - here);
          steepest = Math.max(steepest, dx, dy);
        }
      if (high - low > 40) sharpness.push(steepest / (high - low));
    }
  sharpness.sort((a, b) => a - b);
  return sharpness.length >= 20 && sharpness[Math.floor(0.75 * sharpness.length)]! < 0.3;
}
