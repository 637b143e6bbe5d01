import { type Bands, envelopeStep } from './bands.js';
import { smallest } from './quantile.js';
import type { Stretch } from './stretches.js';
import { correlation, nextPowerOfTwo, power, powerPair } from './transform.js';
import { sampleAt, warpOf } from './warp.js';

/** Samples to a turn of the path: a firing's own shape, no more. */
const perTurn = 32;
/** A lag is looked for this near to where it is said to be, as a share of it. */
const nearby = 0.012;
/** The low band speaks as loud as both envelopes together, as in the evidence. */
const weights = [1, 0.5, 0.5];
/** So many samples from the middle of a stretch say all that it has to say: thousand firings. */
const mostTogether = 2 ** 15;
/** A stretch that is shorter than this many lags says too little of them. */
const fewestLags = 1.25;
/** Power counts by this exponent, and up to what this share of all lines holds: one loud tone, of a fan, does not speak for all. */
const compression = 0.7;
const cap = 0.995;

/** How like itself a sound is after so many turns of its path: 1 at none, about 0 by chance. */
export type Likeness = (turns: number) => number;

/**
 * The second witness, in time: a sound set beside itself one cycle later is as like as it will ever be; beside itself a
 * part of a cycle later it is less so, and after several cycles no more.
 *
 * Method: the three bands at equal turns of the path (so that a change of speed parts nothing); autocorrelation as the
 * transform of the square root of the power (generalized autocorrelation), made good for the part that is left at each
 * lag, its best within 1.2 % of the lag, the bands weighed 2 : 1 : 1.
 */
export function likenessOf(bands: Bands, stretches: readonly Stretch[]): Likeness {
  const parts = stretches.map(({ path, start, end }) => {
    const { times } = warpOf(path, start, end, perTurn);
    const spare = Math.max(0, times.length - mostTogether);
    return withItself(bands, times.subarray(spare >> 1, times.length - (spare >> 1)));
  });
  return (turns) => {
    const lag = turns * perTurn;
    const said = parts.filter(({ length }) => length > fewestLags * lag);
    const reach = Math.max(1, Math.round(nearby * lag));
    let best = -1;
    for (let at = Math.round(lag) - reach; at <= Math.round(lag) + reach; at += 1)
      best = Math.max(best, meanAt(said, at));
    return said.length === 0 ? 0 : best;
  };
}

interface WithItself {
  readonly length: number;
  /** by lag, all three bands */
  readonly like: Float64Array;
}

function meanAt(parts: readonly WithItself[], lag: number): number {
  let sum = 0;
  let weight = 0;
  for (const { length, like } of parts) {
    sum += length * (like[lag] ?? 0);
    weight += length;
  }
  return weight > 0 ? sum / weight : 0;
}

/** Spectra add: all three bands go back into time in one transform. */
function withItself(bands: Bands, times: Float64Array): WithItself {
  const { length } = times;
  const envelopeRate = bands.rate / envelopeStep;
  const size = nextPowerOfTwo(2 * length);
  const seen = (band: Float32Array, rate: number) => withoutMean(sampleAt(band, rate, times));
  const low = power(size, seen(bands.low, bands.rate));
  const [middle, high] = powerPair(size, seen(bands.middle, envelopeRate), seen(bands.high, envelopeRate));
  const all = new Float64Array(size / 2 + 1);
  for (const [n, powers] of [low, middle, high].entries()) addCompressed(all, powers, weights[n]! / 2);
  const like = correlation(size, all);
  for (let lag = 0; lag < length; lag += 1) like[lag]! /= 1 - lag / length;
  return { length, like: like.subarray(0, length) };
}

/** Scaled so that it adds its weight at lag 0. */
function addCompressed(all: Float64Array, powers: Float64Array, weight: number): void {
  const most = smallest(powers.slice(), Math.floor(cap * powers.length));
  const compressed = powers.map((each) => Math.min(each, most) ** compression);
  const atNone = 2 * compressed.reduce((sum, each) => sum + each, 0) - compressed[0]! - compressed.at(-1)!;
  const scale = weight / (atNone || 1);
  for (let k = 0; k < all.length; k += 1) all[k]! += scale * compressed[k]!;
}

function withoutMean(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  return values.map((value) => value - mean);
}
