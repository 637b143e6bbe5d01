/** A photograph as it came out of its file: red, green, blue (and opacity, unused) of each pixel, row by row. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly channels: 3 | 4;
  readonly data: Uint8Array | Uint8ClampedArray;
  /** the light that each of its numbers stands for, where it is not the standard’s */
  readonly tone?: Float64Array;
}

/** Light in a shadow adds and is shared by area, the numbers of a picture file do not: IEC 61966-2-1 (sRGB) undone. */
export const linear: Float64Array = Float64Array.from({ length: 256 }, (_, v) => {
  const c = v / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
});

/** where paper has this number of a file, its noise reaches the highest one, and light is cut off */
export const full = 248;

/** Linear light at a place of the picture, between pixels by their four neighbors; pixel 0 has its middle at 0.5. */
export function lightAt(
  { width, height, channels, data, tone = linear }: Picture,
  x: number,
  y: number,
  into: Float64Array,
): void {
  const px = Math.min(width - 1.001, Math.max(0, x - 0.5));
  const py = Math.min(height - 1.001, Math.max(0, y - 0.5));
  const column = Math.floor(px);
  const row = Math.floor(py);
  const fx = px - column;
  const fy = py - row;
  const at = (row * width + column) * channels;
  const below = at + width * channels;
  for (let c = 0; c < 3; c += 1) {
    const upper = (1 - fx) * tone[data[at + c]!]! + fx * tone[data[at + channels + c]!]!;
    const lower = (1 - fx) * tone[data[below + c]!]! + fx * tone[data[below + channels + c]!]!;
    into[c] = (1 - fy) * upper + fy * lower;
  }
}

export const isInside = (
  { width, height }: { width: number; height: number },
  x: number,
  y: number,
  rim = 0,
) => x >= rim && y >= rim && x <= width - rim && y <= height - rim;

/** One number a pixel. */
export interface Gray {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

/** The picture `step` times smaller, as brightness 0 to 255: means of blocks, in the file's own numbers. */
export function reducedGray({ width, height, channels, data }: Picture, step: number): Gray {
  const w = Math.floor(width / step);
  const h = Math.floor(height / step);
  const out = new Float32Array(w * h);
  for (let y = 0; y < h * step; y += 1) {
    const row = Math.floor(y / step) * w;
    for (let x = 0; x < w * step; x += 1) {
      const at = (y * width + x) * channels;
      out[row + Math.floor(x / step)]! += 0.3 * data[at]! + 0.59 * data[at + 1]! + 0.11 * data[at + 2]!;
    }
  }
  const share = 1 / (step * step);
  for (let i = 0; i < out.length; i += 1) out[i]! *= share;
  return { width: w, height: h, data: out };
}
