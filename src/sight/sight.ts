import { type Bolt, readBolts } from './bolt/read-bolts.js';
import type { SolvedCamera } from './camera/solve.js';
import { materialOn } from './material.js';
import type { Picture } from './picture.js';
import { type Plate, readPlate } from './plate/read-plate.js';
import type { Thickness } from './plate/thickness.js';
import { isRefusal, type Refusal, refusal } from './refusal.js';
import { type Straight, straightOf } from './straight.js';
import { type View, type ViewOptions, viewOf } from './view.js';

export interface SightOptions extends Partial<ViewOptions> {
  readonly as: 'plate' | 'bolts';
  /** of the plate, by a caliper; without it every ± allows for a sheet of up to a millimetre */
  readonly thickness?: Thickness;
  /** also gives the picture straightened */
  readonly straight?: boolean;
  /** called before each step of the work */
  readonly onStep?: (step: SightStep) => void;
}

export const sightSteps = ['mat', 'part', 'edges'] as const;
export type SightStep = (typeof sightSteps)[number];

export interface Seen {
  readonly refused?: Refusal;
  /** where enough of the mat was seen to tell it, in a refusal too */
  readonly camera?: { readonly tiltDeg: number; readonly rmsPx: number };
  readonly plate?: Plate;
  readonly bolts?: readonly Bolt[];
  /** where it was asked for, and the mat was seen well enough */
  readonly straight?: Straight;
}

/**
 * What a photograph on the mat shows, in millimetres on the mat: origin in its middle, x right, y up.
 *
 * Method: tags tell the sheet, its crossings the camera (pose, focal length, distortion by least squares); paper and
 * part are told apart by their colors in linear light; edges are refined below a pixel and put at the height of their
 * upper rim where that is what is seen. Refuses, with a reason and what to do, rather than guess.
 */
export function see(picture: Picture, options: SightOptions): Seen {
  options.onStep?.('mat');
  const view = viewOf(picture, { scale: { across: 1, along: 1 }, ...options });
  if ('refused' in view) return { refused: view.refused, ...cameraSaid(view.solved) };
  return {
    ...cameraSaid(view.solved),
    ...read(view, options),
    ...(options.straight && { straight: straightOf(view.ground) }),
  };
}

const cameraSaid = (solved: SolvedCamera | undefined): Pick<Seen, 'camera'> =>
  solved ? { camera: { tiltDeg: solved.tilt, rmsPx: solved.rms } } : {};

/** never guessed: the part is read as if it lay flat in the mat’s own plane, and the ± says what that may cost */
const notGiven: Thickness = { mm: 0, u: 0.5 };

function read(
  view: View,
  { as, thickness, onStep }: SightOptions,
): Pick<Seen, 'refused' | 'plate' | 'bolts'> {
  onStep?.('part');
  const material = materialOn(view.ground, as);
  if (!material) return { refused: refusal('nothing-there') };
  onStep?.('edges');
  if (as === 'bolts') {
    const bolts = readBolts(view, material);
    return 'why' in bolts ? { refused: bolts } : { bolts };
  }
  const plate = readPlate(view, material, thickness ?? notGiven);
  return isRefusal(plate) ? { refused: plate } : { plate };
}
