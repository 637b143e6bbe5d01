import type { Ground } from './ground.js';

export type Color = readonly [number, number, number];

/** What lies on the mat, told from the paper: of each pixel of the ground how much of it is paper, 0 to 1. */
export interface Material {
  /** its color near a place as a share of white paper: a face that mirrors is brighter on one side */
  readonly colorAt: (x: number, y: number) => Color;
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

/**
 * Undefined where nothing clearly darker than paper, of 12 mm² and more, lies on it. Several small parts are of one
 * color; that of a plate may change over its face.
 */
export function materialOn(ground: Ground, as: 'plate' | 'bolts'): Material | undefined {
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
  const colorAt = as === 'bolts' ? () => color : colorOver(ground, first.patch, largest.number, color);
  const paper = unmixed(ground, colorAt);
  return { colorAt, paper, ...patchesOf(paper, width, height, step) };
}

/** The middle color of a patch, without its rim, where it mixes with paper. */
function colorOf({ share, width }: Ground, patch: Int32Array, number: number): Color {
  const own: number[] = [];
  for (let i = 3 * width; i < patch.length - 3 * width; i += 1) {
    const inside = [0, -3, 3, -3 * width, 3 * width].every((by) => patch[i + by] === number);
    if (inside) own.push(i);
  }
  if (own.length < 20) for (let i = 0; i < patch.length; i += 1) if (patch[i] === number) own.push(i);
  return [0, 1, 2].map((c) => {
    const values = own.map((i) => share[3 * i + c]!).sort((a, b) => a - b);
    return values[values.length >> 1]!;
  }) as unknown as Color;
}

/** millimetres: a mirrored light is wider than this, a stain at an edge and the grain of a face are not */
const overFace = 8;
const cell = 4;
/** millimetres from the edge of a part from which on no stain or shadow that touches it is taken for its own color */
const deep = 4;
/** what a place nearer to the edge counts: a narrow part has no others */
const shallow = 0.05;
/** of a cell full of the part: so little of it near leaves the middle color */
const faint = 0.02;

/** The color of a patch over its face: means of cells, smoothed, and the middle color far from it. */
function colorOver(ground: Ground, patch: Int32Array, number: number, color: Color) {
  const { share, width, height, step, x0, y0 } = ground;
  const size = Math.round(cell / step);
  const inner = Math.round(1 / step);
  const far = Math.round(deep / step);
  const isAround = (i: number, by: number) =>
    [by, -by, by * width, -by * width].every((to) => patch[i + to] === number);
  const columns = Math.ceil(width / size);
  const rows = Math.ceil(height / size);
  const sums = [0, 1, 2, 3].map(() => new Float64Array(columns * rows));
  for (let row = inner; row < height - inner; row += 2)
    for (let column = inner; column < width - inner; column += 2) {
      const i = row * width + column;
      if (patch[i] !== number || !isAround(i, inner)) continue;
      const counts = isAround(i, far) && isAround(i, far >> 1) ? 1 : shallow;
      const to = Math.floor(row / size) * columns + Math.floor(column / size);
      for (let c = 0; c < 3; c += 1) sums[c]![to]! += counts * share[3 * i + c]!;
      sums[3]![to]! += counts;
    }
  const smooth = sums.map((field) => smoothed(field, columns, rows));
  const few = faint * (size / 2) ** 2;
  const colors = color.map((own, c) =>
    smooth[c]!.map((sum, i) => (sum + few * own) / (smooth[3]![i]! + few)),
  );
  const middle = (size - 1) / 2;
  return (x: number, y: number): Color => {
    const px = Math.min(columns - 1.001, Math.max(0, ((x - x0) / step - middle) / size));
    const py = Math.min(rows - 1.001, Math.max(0, ((y - y0) / step - middle) / size));
    const at = Math.floor(py) * columns + Math.floor(px);
    const u = px % 1;
    const v = py % 1;
    const of = (field: Float64Array) =>
      (1 - v) * ((1 - u) * field[at]! + u * field[at + 1]!) +
      v * ((1 - u) * field[at + columns]! + u * field[at + columns + 1]!);
    return [of(colors[0]!), of(colors[1]!), of(colors[2]!)];
  };
}

/** By a bell of `overFace`, along the rows and then across them. */
function smoothed(field: Float64Array, columns: number, rows: number): Float64Array {
  const sigma = overFace / cell;
  const reach = Math.ceil(2.5 * sigma);
  const bell = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-0.5 * ((i - reach) / sigma) ** 2));
  const whole = bell.reduce((sum, weight) => sum + weight, 0);
  const along = (from: Float64Array, dx: number, dy: number): Float64Array =>
    from.map((_, i) => {
      let sum = 0;
      for (let k = -reach; k <= reach; k += 1) {
        const column = (i % columns) + k * dx;
        const row = Math.floor(i / columns) + k * dy;
        if (column < 0 || row < 0 || column >= columns || row >= rows) continue;
        sum += (bell[k + reach]! / whole) * from[row * columns + column]!;
      }
      return sum;
    });
  return along(along(field, 1, 0), 0, 1);
}

/** Of two colors in one pixel, the part that is paper: light adds by area. Not cut to 0 to 1, so that noise stays even. */
function unmixed({ share, width, height, step, x0, y0 }: Ground, colorAt: Material['colorAt']): Float32Array {
  const out = new Float32Array(width * height);
  const run = 8;
  for (let row = 0; row < height; row += 1)
    for (let from = 0; from < width; from += run) {
      const color = colorAt(x0 + (from + run / 2) * step, y0 + row * step);
      const [a, b, c] = mixing(color);
      const zero = a * color[0] + b * color[1] + c * color[2];
      for (let column = from; column < Math.min(width, from + run); column += 1) {
        const i = row * width + column;
        out[i] = a * share[3 * i]! + b * share[3 * i + 1]! + c * share[3 * i + 2]! - zero;
      }
    }
  return out;
}

/** The weights of the three colors that make paper 1 more than material. */
export function mixing(color: Color): Color {
  const apart = color.map((value) => 1 - value);
  const square = apart.reduce((sum, value) => sum + value * value, 0);
  return apart.map((value) => value / square) as unknown as Color;
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
