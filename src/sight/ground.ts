import { Matrix, solve } from 'ml-matrix';
import { type Camera, project } from './camera/camera.js';
import type { SolvedCamera } from './camera/solve.js';
import type { Mat, Place } from './mat/mat.js';
import { isInside, lightAt, type Picture } from './picture.js';

/** The white middle of the mat seen from straight above, its light as a share of what bare paper would give there. */
export interface Ground {
  readonly width: number;
  readonly height: number;
  /** of the middle of pixel 0, 0; rows go up */
  readonly x0: number;
  readonly y0: number;
  /** millimetres a pixel */
  readonly step: number;
  /** red, green, blue a pixel: 1 is bare paper, whatever the shade over the sheet */
  readonly share: Float32Array;
  /** the light of bare paper at a place, linear */
  readonly white: (place: Place, into: Float64Array) => void;
}

const step = 0.2;
/** so much of the middle’s rim is left out: the black squares blur into it */
const rim = 0.7;

export function groundOf(picture: Picture, mat: Mat, solved: SolvedCamera): Ground {
  const { x, y, width: wide, height: high } = mat.middle;
  const x0 = x + rim;
  const y0 = y + rim;
  const width = Math.floor((wide - 2 * rim) / step) + 1;
  const height = Math.floor((high - 2 * rim) / step) + 1;
  const small = halved(picture, solved.pixelsPerMm);
  const share = sampled(small.picture, small.scale, solved.camera, { x0, y0, width, height });
  const rough = paperLight(ringLight(picture, mat, solved.camera), undefined);
  const white = refined(rough, share, { x0, y0, width, height });
  divide(share, white, { x0, y0, width, height });
  return { width, height, x0, y0, step, share, white };
}

interface Grid {
  readonly x0: number;
  readonly y0: number;
  readonly width: number;
  readonly height: number;
}

/** A large picture is halved until a pixel of it is about one of the ground: nothing is missed between its pixels. */
function halved(picture: Picture, pixelsPerMm: number): { picture: Picture; scale: number } {
  let scale = 1;
  let now = picture;
  while (pixelsPerMm * scale > 1.7 / step) {
    now = half(now);
    scale /= 2;
  }
  return { picture: now, scale };
}

function half({ width, height, channels, data, ...tone }: Picture): Picture {
  const w = width >> 1;
  const h = height >> 1;
  const out = new Uint8Array(w * h * 3);
  for (let y = 0; y < h; y += 1)
    for (let x = 0; x < w; x += 1) {
      const at = (2 * y * width + 2 * x) * channels;
      const below = at + width * channels;
      const to = (y * w + x) * 3;
      for (let c = 0; c < 3; c += 1)
        out[to + c] =
          (data[at + c]! + data[at + channels + c]! + data[below + c]! + data[below + channels + c]! + 2) >>
          2;
    }
  return { ...tone, width: w, height: h, channels: 3, data: out };
}

/** Places of the picture are worked out for every eighth pixel and shared between: a lens bends slowly. */
function sampled(
  picture: Picture,
  scale: number,
  camera: Camera,
  { x0, y0, width, height }: Grid,
): Float32Array {
  const coarse = 8;
  const out = new Float32Array(width * height * 3);
  const color = new Float64Array(3);
  const node = (column: number, row: number) =>
    project(camera, { x: x0 + column * step, y: y0 + row * step, z: 0 });
  for (let row = 0; row < height; row += coarse)
    for (let column = 0; column < width; column += coarse) {
      const a = node(column, row);
      const b = node(column + coarse, row);
      const c = node(column, row + coarse);
      const d = node(column + coarse, row + coarse);
      for (let k = 0; k < coarse && row + k < height; k += 1)
        for (let i = 0; i < coarse && column + i < width; i += 1) {
          const u = i / coarse;
          const v = k / coarse;
          const px = (1 - v) * ((1 - u) * a.x + u * b.x) + v * ((1 - u) * c.x + u * d.x);
          const py = (1 - v) * ((1 - u) * a.y + u * b.y) + v * ((1 - u) * c.y + u * d.y);
          lightAt(picture, px * scale, py * scale, color);
          out.set(color, 3 * ((row + k) * width + column + i));
        }
    }
  return out;
}

interface Sample extends Place {
  readonly light: readonly number[];
}

/** The white margins round the tags, four places each; what is darker than its like is covered or not paper. */
function ringLight(picture: Picture, mat: Mat, camera: Camera): Sample[] {
  const color = new Float64Array(3);
  const out: Sample[] = [];
  for (const { middle } of mat.tags)
    for (const [dx, dy] of [
      [5.25, 0],
      [-5.25, 0],
      [0, 5.25],
      [0, -5.25],
    ] as const) {
      const place = { x: middle.x + dx, y: middle.y + dy };
      const at = project(camera, { ...place, z: 0 });
      if (!isInside(picture, at.x, at.y, 2)) continue;
      lightAt(picture, at.x, at.y, color);
      out.push({ ...place, light: [...color] });
    }
  return out;
}

type White = (place: Place, into: Float64Array) => void;

/** Logarithm of the light as a polynomial of the place, by least squares, what lies far off left out in turn. */
function paperLight(samples: readonly Sample[], like: White | undefined, degree = 2): White {
  let kept = samples.filter(({ light }) => Math.min(...light) > 0.004);
  let now = like;
  const seen = new Float64Array(3);
  for (let round = 0; round < 3; round += 1) {
    if (now) {
      const white = now;
      const near = kept.filter((sample) => {
        white(sample, seen);
        return sample.light.every((light, c) => Math.abs(Math.log(light / seen[c]!)) < 0.25);
      });
      if (near.length > 40) kept = near;
    }
    now = polynomial(kept, degree);
  }
  return now!;
}

function terms({ x, y }: Place, degree: number): number[] {
  const u = x / 100;
  const v = y / 120;
  const out: number[] = [];
  for (let i = 0; i <= degree; i += 1) for (let k = 0; k <= degree - i; k += 1) out.push(u ** i * v ** k);
  return out;
}

function polynomial(samples: readonly Sample[], degree: number): White {
  const rows = samples.map((sample) => terms(sample, degree));
  const size = rows[0]?.length ?? 1;
  const normal = Matrix.zeros(size, size);
  const right = Matrix.zeros(size, 3);
  for (const [i, row] of rows.entries()) {
    const logs = samples[i]!.light.map(Math.log);
    for (let a = 0; a < size; a += 1) {
      for (let b = 0; b < size; b += 1) normal.set(a, b, normal.get(a, b) + row[a]! * row[b]!);
      for (let c = 0; c < 3; c += 1) right.set(a, c, right.get(a, c) + row[a]! * logs[c]!);
    }
  }
  for (let a = 0; a < size; a += 1) normal.set(a, a, normal.get(a, a) + 1e-6 * rows.length);
  const weights = solve(normal, right);
  return (place, into) => {
    const row = terms(place, degree);
    for (let c = 0; c < 3; c += 1) {
      let sum = 0;
      for (let a = 0; a < size; a += 1) sum += row[a]! * weights.get(a, c);
      into[c] = Math.exp(sum);
    }
  };
}

/** The bare paper of the middle, found by the ring’s light, tells the light between; twice, each time more closely. */
function refined(rough: White, light: Float32Array, { x0, y0, width, height }: Grid): White {
  let white = rough;
  const color = new Float64Array(3);
  for (const [spread, degree] of [
    [0.3, 2],
    [0.12, 4],
    [0.08, 4],
  ] as const) {
    const samples: Sample[] = [];
    for (let row = 2; row < height; row += 12)
      for (let column = 2; column < width; column += 12) {
        const at = 3 * (row * width + column);
        const place = { x: x0 + column * step, y: y0 + row * step };
        white(place, color);
        const own = [light[at]!, light[at + 1]!, light[at + 2]!];
        if (own.every((value, c) => Math.abs(value / color[c]! - 1) < spread))
          samples.push({ ...place, light: own });
      }
    if (samples.length > 150) white = paperLight(samples, undefined, degree);
  }
  return white;
}

/** White is worked out for every eighth pixel and shared between. */
function divide(light: Float32Array, white: White, { x0, y0, width, height }: Grid): void {
  const coarse = 8;
  const columns = Math.ceil(width / coarse) + 1;
  const nodes = new Float64Array(columns * (Math.ceil(height / coarse) + 1) * 3);
  const color = new Float64Array(3);
  for (let i = 0; i < nodes.length / 3; i += 1) {
    white({ x: x0 + (i % columns) * coarse * step, y: y0 + Math.floor(i / columns) * coarse * step }, color);
    nodes.set(color, 3 * i);
  }
  for (let row = 0; row < height; row += 1)
    for (let column = 0; column < width; column += 1) {
      const u = (column % coarse) / coarse;
      const v = (row % coarse) / coarse;
      const a = 3 * (Math.floor(row / coarse) * columns + Math.floor(column / coarse));
      const b = a + 3 * columns;
      for (let c = 0; c < 3; c += 1) {
        const here =
          (1 - v) * ((1 - u) * nodes[a + c]! + u * nodes[a + 3 + c]!) +
          v * ((1 - u) * nodes[b + c]! + u * nodes[b + 3 + c]!);
        light[3 * (row * width + column) + c]! /= here;
      }
    }
}

/** Red, green and blue at a place, the mean of nine pixels; undefined off the middle of the mat. */
export function shareAt(
  { width, height, x0, y0, share }: Ground,
  x: number,
  y: number,
): number[] | undefined {
  const column = Math.round((x - x0) / step);
  const row = Math.round((y - y0) / step);
  if (column < 1 || row < 1 || column > width - 2 || row > height - 2) return undefined;
  return [0, 1, 2].map((c) => {
    let sum = 0;
    for (const dy of [-1, 0, 1])
      for (const dx of [-1, 0, 1]) sum += share[3 * ((row + dy) * width + column + dx) + c]!;
    return sum / 9;
  });
}
