import { type Path, readPath } from './path.js';

/** Moments at which equal parts of a turn begin. */
export interface Warp {
  readonly perTurn: number;
  /** seconds, one for each sample of the warped signal */
  readonly times: Float64Array;
}

/**
 * Sampling moments at equal turns of a path, `perTurn` to each turn, from `start` to `end` seconds.
 *
 * Method: each moment from the last by the midpoint rule; the error is of third order in one sample's share of a turn.
 */
export function warpOf(path: Path, start: number, end: number, perTurn: number): Warp {
  const times: number[] = [];
  let t = start;
  let knot = 0;
  while (t < end) {
    times.push(t);
    const here = readPath(path, t, knot);
    const middle = readPath(path, t + 0.5 / (perTurn * here.value), here.knot);
    knot = here.knot;
    t += 1 / (perTurn * middle.value);
  }
  return { perTurn, times: Float64Array.from(times) };
}

/** The signal at the moments of a warp, by the cubic through the four samples around each; 0 outside. */
export function sampleAt(values: Float32Array, rate: number, times: Float64Array): Float64Array {
  const out = new Float64Array(times.length);
  for (let n = 0; n < times.length; n += 1) {
    const place = times[n]! * rate;
    const i = Math.floor(place);
    const u = place - i;
    if (i < 1 || i + 2 >= values.length) continue;
    const a = values[i - 1]!;
    const b = values[i]!;
    const c = values[i + 1]!;
    const d = values[i + 2]!;
    out[n] = b + 0.5 * u * (c - a + u * (2 * a - 5 * b + 4 * c - d + u * (3 * (b - c) + d - a)));
  }
  return out;
}
