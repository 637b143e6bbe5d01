import type { Ground } from './ground.js';

/** What lies on the mat, told from the paper: of each pixel of the ground how much of it is paper, 0 to 1. */
export interface Material {
  /** its color as a share of white paper */
  readonly color: readonly [number, number, number];
  readonly paper: Float32Array;
  /** pixels of patches of material, numbered from 1; 0 is paper */
  readonly patch: Int32Array;
  readonly patches: readonly Patch[];
}

export interface Patch {
  readonly number: number;
  /** square millimetres */
  readonly area: number;
  readonly touchesRim: boolean;
}

/** darker than paper by this in its darkest color: no shade that the paper’s own light leaves does that */
const clearly = 0.25;

/** Undefined where nothing clearly darker than paper, of 12 mm² and more, lies on it. */
export function materialOn(ground: Ground): Material | undefined {
  const { share, width, height, step } = ground;
  const count = width * height;
  const dark = new Float32Array(count);
  for (let i = 0; i < count; i += 1)
    dark[i] = 1 - Math.min(share[3 * i]!, share[3 * i + 1]!, share[3 * i + 2]!);
  const first = patchesOf(
    dark.map((d) => (d > clearly ? 0 : 1)),
    width,
    height,
    step,
  );
  const largest = [...first.patches].sort((a, b) => b.area - a.area)[0];
  if (!largest || largest.area < 12) return undefined;
  const color = colorOf(ground, first.patch, largest.number);
  const paper = unmixed(share, color, count);
  return { color, paper, ...patchesOf(paper, width, height, step) };
}

/** The middle color of a patch, without its rim, where it mixes with paper. */
function colorOf({ share, width }: Ground, patch: Int32Array, number: number): [number, number, number] {
  const own: number[] = [];
  for (let i = 3 * width; i < patch.length - 3 * width; i += 1) {
    const inside = [0, -3, 3, -3 * width, 3 * width].every((by) => patch[i + by] === number);
    if (inside) own.push(i);
  }
  if (own.length < 20) for (let i = 0; i < patch.length; i += 1) if (patch[i] === number) own.push(i);
  return [0, 1, 2].map((c) => {
    const values = own.map((i) => share[3 * i + c]!).sort((a, b) => a - b);
    return values[values.length >> 1]!;
  }) as [number, number, number];
}

/** Of two colors in one pixel, the part that is paper: light adds by area. Not cut to 0 to 1, so that noise stays even. */
function unmixed(share: Float32Array, color: readonly [number, number, number], count: number): Float32Array {
  const [a, b, c] = mixing(color);
  const out = new Float32Array(count);
  const zero = a * color[0] + b * color[1] + c * color[2];
  for (let i = 0; i < count; i += 1)
    out[i] = a * share[3 * i]! + b * share[3 * i + 1]! + c * share[3 * i + 2]! - zero;
  return out;
}

/** The weights of the three colors that make paper 1 more than material. */
export function mixing(color: readonly [number, number, number]): [number, number, number] {
  const apart = color.map((value) => 1 - value);
  const square = apart.reduce((sum, value) => sum + value * value, 0);
  return apart.map((value) => value / square) as [number, number, number];
}

export function patchesOf(paper: Float32Array, width: number, height: number, step: number) {
  const patch = new Int32Array(width * height);
  const stack = new Int32Array(width * height);
  const patches: Patch[] = [];
  for (let start = 0; start < patch.length; start += 1) {
    if (patch[start] !== 0 || paper[start]! >= 0.5) continue;
    const number = patches.length + 1;
    let depth = 0;
    let count = 0;
    let touchesRim = false;
    const push = (at: number) => {
      if (patch[at] !== 0 || paper[at]! >= 0.5) return;
      patch[at] = number;
      stack[depth++] = at;
    };
    push(start);
    while (depth > 0) {
      const at = stack[--depth]!;
      count += 1;
      const x = at % width;
      if (x === 0 || x === width - 1 || at < width || at >= width * (height - 1)) touchesRim = true;
      if (x > 0) push(at - 1);
      if (x < width - 1) push(at + 1);
      if (at >= width) push(at - width);
      if (at < width * (height - 1)) push(at + width);
    }
    patches.push({ number, area: count * step * step, touchesRim });
  }
  return { patch, patches };
}
