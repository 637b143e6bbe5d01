import type { BladeStop } from './blade-stop.js';
import { rateHz, turnsAt, turnsHeard } from './blade-turns.js';
import type { Sound } from './sound.js';

/** Whether a blade that runs down beats once in each turn, as one does that is out of balance, bent or uneven. */
export type TurnBeat =
  | {
      readonly told: true;
      /** whether a beat once a turn stands out */
      readonly beats: boolean;
      /** its size over that of the beat of the blade's two ends */
      readonly share: number;
      /** standard uncertainty of `share` */
      readonly u: number;
    }
  | { readonly told: false; readonly why: string };

/** The first part of the fall: later the blade is too quiet. */
const part = 0.7;
/** Orders of a turn: compression comes every other turn, the blade's two ends twice a turn. */
const orders = { half: 0.5, once: 1, oneAndHalf: 1.5, ends: 2 } as const;
/** A beat stands out if it exceeds what compression gives beside it by so much, none does if it exceeds it by less. */
const stands = 1.8;
const standsNot = 1.3;
/** In standard deviations of noise. */
const overNoise = 4;
/** A beat below this share of that of the ends is what any two ends differ by. Trade judgement, no source. */
const unevenEnds = 0.2;

/**
 * The once-per-turn beat of a blade on the crankshaft of a four-stroke, while it runs down without firing.
 *
 * Method: on the turns that the stop time was found by, the loudness is fitted by sines of each turn, of each half turn (the
 * blade's two ends), and of the half orders on both sides (compression, which comes every other turn and gives all of
 * them alike). What each turn holds beyond those is the blade's. Uncertainty: the noise left between, least squares.
 * It says that the two ends do not sound alike: out of balance, bent, or one end worn. Which of them a pin and a rule tell.
 * Not told: of a two-stroke (its compression comes each turn), where the ends are not heard, where it hardly exceeds compression.
 *
 * @param stop as `bladeStop` found it
 */
export function turnBeat(sound: Sound, stop: BladeStop, strokes: 2 | 4): TurnBeat {
  if (!stop.told) return { told: false, why: stop.why };
  if (strokes === 2) return { told: false, why: 'compression of a two-stroke comes once a turn as well' };
  const { size, noise } = sinesOf(sound, stop);
  const beside = Math.max(size(orders.half), size(orders.oneAndHalf));
  const [once, ends] = [size(orders.once), size(orders.ends)];
  if (ends < overNoise * noise) return { told: false, why: 'the ends of the blade are not heard' };
  const share = once / ends;
  const u = Math.hypot(noise, share * noise) / ends;
  if (once > stands * beside && once > overNoise * noise && share > unevenEnds)
    return { told: true, beats: true, share, u };
  if (share <= unevenEnds || once < standsNot * beside) {
    if (beside > ends) return { told: false, why: 'compression is louder than the blade' };
    return { told: true, beats: false, share, u };
  }
  return { told: false, why: 'it hardly stands out of the beat of compression' };
}

/** Sizes of the sines of an order over the first part of the fall, and the standard deviation that noise gives them. */
function sinesOf(sound: Sound, fall: BladeStop & { readonly told: true }) {
  const heard = turnsHeard(sound);
  const first = Math.round(fall.from * rateHz);
  const last = Math.min(heard.length, Math.round((fall.from + part * fall.seconds) * rateHz));
  const turns = Float64Array.from({ length: last - first }, (_, i) =>
    turnsAt(fall.turnsPerS, fall, i / rateHz / fall.seconds),
  );
  const size = (order: number): number => {
    let [c, s] = [0, 0];
    for (let i = 0; i < turns.length; i += 1) {
      const angle = 2 * Math.PI * order * turns[i]!;
      c += heard[first + i]! * Math.cos(angle);
      s += heard[first + i]! * Math.sin(angle);
    }
    return (2 * Math.hypot(c, s)) / turns.length;
  };
  // what stands between the orders is noise
  const between = [0.75, 1.25, 1.75, 2.25].map(size);
  const noise = Math.sqrt(between.reduce((sum, each) => sum + each * each, 0) / (2 * between.length));
  return { size, noise };
}
