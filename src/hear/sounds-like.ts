import type { Bands } from './frames.js';

const kept = 12;

/** What a stretch of speech sounds like: a row every 10 ms, with its loudness and how it changes. */
export type Likeness = readonly Float64Array[];

/**
 * Mel-frequency cepstrum 1 to 12 (Davis and Mermelstein, 1980) without its mean over the stretch, which takes out the room
 * and the microphone; the loudness against the loudest; and the slope of each over five rows (S. Furui, IEEE Trans. ASSP 34,
 * 1986). Each column is brought to the same spread, so that none outweighs the others.
 */
export function likenessOf(frames: Bands): Likeness {
  const hidden = reach * quantileOf(frames);
  const rows = frames.map((frame) => {
    const logs = frame.map((power) => Math.log(power + hidden));
    const cepstrum = Float64Array.from({ length: kept + 1 }, (_, k) =>
      k === 0
        ? logs.reduce((sum, each) => sum + each, 0) / logs.length
        : logs.reduce((sum, each, b) => sum + each * Math.cos((Math.PI * k * (b + 0.5)) / logs.length), 0),
    );
    return cepstrum;
  });
  const even = evened(rows);
  const slopes = evened(even.map((_, n) => slopeAt(even, n)));
  return even.map((row, n) => Float64Array.from([...row, ...slopes[n]!.map((each) => 0.7 * each)]));
}

/** of the power of the loud tenth: what is weaker may as well be what was left of noise */
const reach = 1e-3;

function quantileOf(frames: Bands): number {
  const all = frames.flatMap((frame) => [...frame]).sort((a, b) => a - b);
  return all[Math.floor(0.9 * all.length)] ?? 0;
}

function slopeAt(rows: readonly Float64Array[], n: number): Float64Array {
  const at = (i: number) => rows[Math.max(0, Math.min(rows.length - 1, i))]!;
  return rows[n]!.map((_, k) => (at(n + 1)[k]! - at(n - 1)[k]! + 2 * (at(n + 2)[k]! - at(n - 2)[k]!)) / 10);
}

/** Each column with mean 0 and spread 1. */
function evened(rows: readonly Float64Array[]): readonly Float64Array[] {
  const width = rows[0]?.length ?? 0;
  const mean = new Float64Array(width);
  const spread = new Float64Array(width);
  for (const row of rows) for (let k = 0; k < width; k += 1) mean[k]! += row[k]! / rows.length;
  for (const row of rows)
    for (let k = 0; k < width; k += 1) spread[k]! += (row[k]! - mean[k]!) ** 2 / rows.length;
  return rows.map((row) => row.map((each, k) => (each - mean[k]!) / Math.sqrt(spread[k]! + 1e-6)));
}

/**
 * How far apart two stretches are when the one is stretched in time to fit the other best; 0 for the same stretch.
 * Method: dynamic time warping, steps (1,1), (1,2), (2,1) with the slope between a half and two (H. Sakoe, S. Chiba, IEEE
 * Trans. ASSP 26, 1978, P = 1), mean of the squared distances along the path. Infinite where one is more than twice as long.
 */
export function apart(a: Likeness, b: Likeness): number {
  const [n, m] = [a.length, b.length];
  if (n === 0 || m === 0 || n > 2 * m || m > 2 * n) return Number.POSITIVE_INFINITY;
  const never = Number.POSITIVE_INFINITY;
  // [i + 2][j + 2], so that steps from beyond the edge need no question
  const sums = Array.from({ length: n + 2 }, () => new Float64Array(m + 2).fill(never));
  let before = new Float64Array(m).fill(never);
  sums[1]![1] = 0;
  for (let i = 0; i < n; i += 1) {
    const here = b.map((row) => distance(a[i]!, row));
    const [last2, last, now] = [sums[i]!, sums[i + 1]!, sums[i + 2]!];
    for (let j = 0; j < m; j += 1)
      now[j + 2] =
        here[j]! +
        Math.min(
          last[j + 1]! + here[j]!,
          j > 0 ? last[j]! + 2 * here[j - 1]! : never,
          i > 0 ? last2[j + 1]! + 2 * before[j]! : never,
        );
    before = Float64Array.from(here);
  }
  return sums[n + 1]![m + 1]! / (n + m);
}

function distance(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k += 1) sum += (a[k]! - b[k]!) ** 2;
  return sum / a.length;
}
