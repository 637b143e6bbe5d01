import { quantile } from './quantile.js';
import type { Signal } from './resample.js';

/** How evenly loud a sound is. */
export interface Loudness {
  /** decibels against full scale, one each half window */
  readonly levelsDb: readonly number[];
  readonly stepS: number;
  /** the level that the loudest tenth exceeds */
  readonly topDb: number;
  /** share of the time within 10 dB of the top */
  readonly even: number;
  /** the longest time without a drop of more than 12 dB below the top */
  readonly longestS: number;
  /** whether there is hardly any such drop */
  readonly throughout: boolean;
}

/** Windows hold at least a cycle of the engine, so that the gaps between slow firings are no drops. */
export function loudnessOf({ values: low, rate }: Signal, cycleS: number): Loudness {
  const window = Math.round(Math.min(0.3, Math.max(0.1, 1.2 * cycleS)) * rate);
  const step = window >> 1;
  const levelsDb: number[] = [];
  for (let from = 0; from + window <= low.length; from += step) levelsDb.push(levelDb(low, from, window));
  if (levelsDb.length === 0) levelsDb.push(levelDb(low, 0, low.length));
  const topDb = quantile(levelsDb, 0.9);
  const longest = longestRun(levelsDb, (level) => level > topDb - 12);
  return {
    levelsDb,
    stepS: step / rate,
    topDb,
    even: levelsDb.filter((level) => level > topDb - 10).length / levelsDb.length,
    longestS: (longest * step) / rate,
    throughout: longest >= 0.88 * levelsDb.length,
  };
}

function levelDb(values: Float32Array, from: number, length: number): number {
  let sum = 0;
  let square = 0;
  for (let i = from; i < from + length; i += 1) {
    sum += values[i]!;
    square += values[i]! ** 2;
  }
  return 10 * Math.log10(Math.max(0, square / length - (sum / length) ** 2) + 1e-12);
}

function longestRun<T>(items: readonly T[], holds: (item: T) => boolean): number {
  let run = 0;
  let longest = 0;
  for (const item of items) {
    run = holds(item) ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}
