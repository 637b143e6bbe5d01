import type { Sound } from './sound.js';

/** Values a second of the loudness in which turns are counted. */
export const rateHz = 500;
/** Loudness is held against its mean over so long: what is left are the turns. */
const meanS = 0.3;

/** How a blade slows from the moment at which its speed begins to fall. */
export interface Fall {
  readonly from: number;
  readonly seconds: number;
  /** 0: the brake alone; toward π/2: air at first, the brake at last */
  readonly alpha: number;
}

/** Loudness over its own running mean, less one. */
export function turnsHeard({ samples, sampleRate }: Sound): Float64Array {
  const hop = sampleRate / rateHz;
  const count = Math.floor(samples.length / hop);
  const level = Float64Array.from({ length: count }, (_, i) => {
    let sum = 0;
    const [start, end] = [Math.floor(i * hop), Math.floor((i + 1) * hop)];
    for (let j = start + 1; j < end; j += 1) sum += Math.abs(samples[j]! - samples[j - 1]!);
    return sum / Math.max(1, end - start - 1);
  });
  const half = Math.round((meanS * rateHz) / 2);
  const sums = new Float64Array(count + 1);
  for (let i = 0; i < count; i += 1) sums[i + 1] = sums[i]! + level[i]!;
  return level.map((value, i) => {
    const [a, b] = [Math.max(0, i - half), Math.min(count, i + half)];
    const mean = (sums[b]! - sums[a]!) / (b - a);
    return mean > 0 ? value / mean - 1 : 0;
  });
}

/** Turns made since the fall began, at a share x of its time. */
export function turnsAt(turnsPerS: number, { seconds, alpha }: Fall, x: number): number {
  if (alpha < 1e-3) return turnsPerS * seconds * (x - x ** 2 / 2);
  const rest = Math.log(Math.cos(alpha * (1 - x)) / Math.cos(alpha));
  return (turnsPerS * seconds * rest) / (alpha * Math.tan(alpha));
}
