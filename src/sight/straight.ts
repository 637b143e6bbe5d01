import type { Ground } from './ground.js';
import type { Picture } from './picture.js';

/** The white middle of the mat as seen from straight above, to scale. */
export interface Straight {
  readonly picture: Picture;
  /** millimetres a pixel */
  readonly step: number;
  /** mat millimetres at the left edge and at the upper one */
  readonly left: number;
  readonly top: number;
}

/** Bare paper comes out as this share of full light, so that what is brighter still shows. */
const paper = 0.86;

/** The ground as a picture with its shade taken out; row 0 is the upper one. */
export function straightOf({ width, height, x0, y0, step, share }: Ground): Straight {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let row = 0; row < height; row += 1)
    for (let column = 0; column < width; column += 1) {
      const from = ((height - 1 - row) * width + column) * 3;
      const to = (row * width + column) * 4;
      for (let c = 0; c < 3; c += 1) data[to + c] = 255 * asShown(paper * share[from + c]!);
      data[to + 3] = 255;
    }
  return {
    picture: { width, height, channels: 4, data },
    step,
    left: x0 - step / 2,
    top: y0 + (height - 0.5) * step,
  };
}

/** Linear light as the number a picture file has for it: IEC 61966-2-1 (sRGB). */
const asShown = (light: number): number =>
  light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
