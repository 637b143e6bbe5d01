import { type Path, readerOf } from './path.js';

/** Moments at which equal parts of a turn begin. */
export interface Warp {
  readonly perTurn: number;
  /** seconds, one for each sample of the warped signal */
  readonly times: Float64Array;
}

/** Samples over which the speed is taken to be even. */
const together = 8;

/**
 * Sampling moments at equal turns of a path, `perTurn` to each turn, from `start` to `end` seconds.
 *
 * Method: the midpoint rule over eight samples at a time; the error is of third order in their share of a turn.
 */
export function warpOf(path: Path, start: number, end: number, perTurn: number): Warp {
  const fastest = path.hz.reduce((a, b) => Math.max(a, b));
  const times = new Float64Array(Math.ceil((end - start) * perTurn * fastest) + together);
  const rateAt = readerOf(path);
  let count = 0;
  for (let t = start; t < end; ) {
    const middle = t + (0.5 * together) / (perTurn * rateAt(t));
    const step = 1 / (perTurn * rateAt(middle));
    for (let i = 0; i < together && t < end; i += 1, t += step, count += 1) times[count] = t;
  }
  return { perTurn, times: times.subarray(0, count) };
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
