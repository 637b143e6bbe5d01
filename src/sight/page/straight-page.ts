import { across, homography } from '../camera/homography.js';
import type { Place } from '../mat/mat.js';
import { lightAt, type Picture } from '../picture.js';
import { type Corners, pageCorners } from './page-corners.js';

/** A page as if it lay straight under the eye, evenly lit, dark on bright. */
export interface StraightPage {
  readonly picture: Picture;
  /** whether its edges were found; without them the photograph is only evened */
  readonly hasEdges: boolean;
}

/** Pixels of the longer side: letters of a spec page are then 25 and more pixels high. */
const longest = 2600;

/**
 * Straightens a photograph of a page or plate: its four edges are made a rectangle, shade is taken out, bright letters on
 * a dark plate become dark ones on bright.
 */
export function straightPage(picture: Picture): StraightPage {
  const corners = pageCorners(picture);
  const { width, height } = picture;
  const whole: Corners = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  return {
    picture: evened(warped(picture, corners ? inset(corners) : whole)),
    hasEdges: corners !== undefined,
  };
}

/** A hair's breadth inside the edges: their own shadow would be read as a line of strokes. */
function inset(corners: Corners): Corners {
  const middle = { x: mean(corners.map(({ x }) => x)), y: mean(corners.map(({ y }) => y)) };
  const into = ({ x, y }: Place) => ({ x: x + 0.012 * (middle.x - x), y: y + 0.012 * (middle.y - y) });
  const [a, b, c, d] = corners;
  return [into(a), into(b), into(c), into(d)];
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Brightness, in linear light, of the four-sided patch laid out as a rectangle. */
interface Laid {
  readonly width: number;
  readonly height: number;
  readonly light: Float32Array;
}

function warped(picture: Picture, corners: Corners): Laid {
  const [a, b, c, d] = corners;
  const wide = Math.max(apart(a, b), apart(d, c));
  const tall = Math.max(apart(a, d), apart(b, c));
  // small print is enlarged: a reader of letters wants them twenty pixels high
  const scale = Math.min(longest / Math.max(wide, tall), 2);
  const [width, height] = [Math.round(wide * scale), Math.round(tall * scale)];
  const rectangle = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  const toPicture = homography(rectangle, corners);
  const rgb = new Float64Array(3);
  const light = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const from = across(toPicture, { x: x + 0.5, y: y + 0.5 });
      lightAt(picture, from.x, from.y, rgb);
      light[y * width + x] = 0.2126 * rgb[0]! + 0.7152 * rgb[1]! + 0.0722 * rgb[2]!;
    }
  return { width, height, light };
}

const apart = (a: Place, b: Place) => Math.hypot(a.x - b.x, a.y - b.y);

/** Pixels of a block in which the paper's brightness is taken as even. */
const block = 48;

/** Each pixel as a share of the paper around it. */
function evened(laid: Laid): Picture {
  const { width, height, light } = isDark(laid) ? inverted(laid) : laid;
  const paper = paperOf({ width, height, light });
  const data = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const i = y * width + x;
      // a root instead of light itself keeps thin strokes from fading
      const shown = 250 * Math.sqrt(Math.min(1, light[i]! / paper(x, y)));
      data.fill(shown, 4 * i, 4 * i + 3);
      data[4 * i + 3] = 255;
    }
  return { width, height, channels: 4, data };
}

/** Dark and bright differ, and most of it is dark: letters cover less than half of a plate. */
function isDark({ light }: Laid): boolean {
  const sample = light.filter((_, i) => i % 97 === 0).sort();
  const low = sample[Math.floor(0.005 * sample.length)]!;
  const high = sample[Math.floor(0.995 * sample.length)]!;
  const middle = sample[Math.floor(0.5 * sample.length)]!;
  return Math.sqrt(middle) - Math.sqrt(low) < Math.sqrt(high) - Math.sqrt(middle) && middle < 0.3;
}

/** In the eye's steps, so that dark grey letters do not vanish. */
const inverted = ({ width, height, light }: Laid): Laid => ({
  width,
  height,
  light: light.map((value) => (1.02 - Math.sqrt(Math.min(1, value))) ** 2),
});

/** The paper's brightness: the bright end of each block and its neighbors, laid evenly between the blocks' middles. */
function paperOf({ width, height, light }: Laid): (x: number, y: number) => number {
  const columns = Math.max(1, Math.ceil(width / block));
  const rows = Math.max(1, Math.ceil(height / block));
  const bright = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const values: number[] = [];
      for (let y = row * block; y < Math.min(height, (row + 1) * block); y += 3)
        for (let x = column * block; x < Math.min(width, (column + 1) * block); x += 3)
          values.push(light[y * width + x]!);
      values.sort((a, b) => a - b);
      bright[row * columns + column] = Math.max(1e-4, values[Math.floor(0.85 * values.length)] ?? 1);
    }
  const smooth = bright.map((_, i) => {
    const around: number[] = [];
    for (let dy = -1; dy <= 1; dy += 1)
      for (let dx = -1; dx <= 1; dx += 1) {
        const [row, column] = [Math.floor(i / columns) + dy, (i % columns) + dx];
        if (row >= 0 && row < rows && column >= 0 && column < columns)
          around.push(bright[row * columns + column]!);
      }
    return around.sort((a, b) => a - b)[Math.floor(0.6 * around.length)]!;
  });
  return (x, y) => {
    const fx = Math.min(columns - 1, Math.max(0, x / block - 0.5));
    const fy = Math.min(rows - 1, Math.max(0, y / block - 0.5));
    const [c, r] = [Math.min(columns - 2, Math.floor(fx)), Math.min(rows - 2, Math.floor(fy))].map((v) =>
      Math.max(0, v),
    ) as [number, number];
    const [c1, r1] = [Math.min(columns - 1, c + 1), Math.min(rows - 1, r + 1)];
    const upper = smooth[r * columns + c]! * (1 - fx + c) + smooth[r * columns + c1]! * (fx - c);
    const lower = smooth[r1 * columns + c]! * (1 - fx + c) + smooth[r1 * columns + c1]! * (fx - c);
    return upper * (1 - fy + r) + lower * (fy - r);
  };
}
