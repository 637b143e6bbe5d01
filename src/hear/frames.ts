import { hann, power, type Sound } from '../listen/index.js';

/** 25 ms every 10 ms: a sound of speech is steady for so long. */
const frameS = 0.025;
const stepS = 0.01;
const bands = 26;
const lowestHz = 130;
const highestHz = 6000;
/** power under which nothing is told apart: −90 dB of full scale */
const floor = 1e-9;

/** How loud it is in each of 26 bands, frame after frame: power, every 10 ms. */
export type Bands = readonly Float64Array[];

/**
 * The loudness of a sound in bands as wide as the ear's, 130 to 6,000 Hz.
 * Source: S. Davis, P. Mermelstein, "Comparison of parametric representations for monosyllabic word recognition", IEEE
 * Trans. ASSP 28 (1980): triangles, evenly spaced in mel = 2595 log10(1 + f/700); pre-emphasis 0.97 as usual.
 */
export function bandsOf({ samples, sampleRate }: Sound): Bands {
  const length = Math.round(frameS * sampleRate);
  const step = Math.round(stepS * sampleRate);
  const size = 2 ** Math.ceil(Math.log2(length));
  const taper = hann(length);
  const filters = filtersFor(sampleRate, size);
  const frames: Float64Array[] = [];
  for (let at = 0; at + length <= samples.length; at += step) {
    const part = new Float64Array(length);
    for (let i = 0; i < length; i += 1)
      part[i] = taper[i]! * (samples[at + i]! - 0.97 * (samples[at + i - 1] ?? 0));
    const powers = power(size, part);
    frames.push(Float64Array.from(filters, (filter) => floor + weighed(powers, filter) / length));
  }
  return frames;
}

interface Filter {
  readonly from: number;
  readonly weights: Float64Array;
}

const weighed = (powers: Float64Array, { from, weights }: Filter): number => {
  let sum = 0;
  for (let i = 0; i < weights.length; i += 1) sum += weights[i]! * powers[from + i]!;
  return sum;
};

const made = new Map<number, readonly Filter[]>();

function filtersFor(sampleRate: number, size: number): readonly Filter[] {
  const kept = made.get(sampleRate);
  if (kept) return kept;
  const mel = (hz: number) => 2595 * Math.log10(1 + hz / 700);
  const hz = (m: number) => 700 * (10 ** (m / 2595) - 1);
  const top = mel(Math.min(highestHz, sampleRate / 2));
  const width = (top - mel(lowestHz)) / (bands + 1);
  const centers = Array.from(
    { length: bands + 2 },
    (_, n) => (hz(mel(lowestHz) + n * width) * size) / sampleRate,
  );
  const filters = Array.from({ length: bands }, (_, n): Filter => {
    const [low, mid, high] = [centers[n]!, centers[n + 1]!, centers[n + 2]!];
    const from = Math.ceil(low);
    const weights = Float64Array.from({ length: Math.max(1, Math.floor(high) - from + 1) }, (_, i) => {
      const bin = from + i;
      return Math.max(0, bin <= mid ? (bin - low) / (mid - low) : (high - bin) / (high - mid));
    });
    return { from, weights };
  });
  made.set(sampleRate, filters);
  return filters;
}

/** The mean power of frames in each band. */
export function meanOf(frames: Bands): Float64Array {
  const mean = new Float64Array(bands);
  for (const frame of frames) for (let b = 0; b < bands; b += 1) mean[b]! += frame[b]! / frames.length;
  return mean;
}

export const totalOf = (frame: Float64Array): number => frame.reduce((sum, each) => sum + each, 0);
