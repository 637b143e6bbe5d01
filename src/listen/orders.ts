import { type Bands, envelopeStep } from './bands.js';
import { envelopeTopHz, floorWidthHz, lowTopHz } from './frames.js';
import { type Salience, salienceOf } from './salience.js';
import { meanHz, type Stretch } from './stretches.js';
import { hann, nextPowerOfTwo, power, powerPair, tapered } from './transform.js';
import { sampleAt, warpOf } from './warp.js';

/** Windows that overlap by half share some of their noise. */
export const independent = 0.7;

/** Turns of the path that one window holds at most; more turns part lines that lie closer. */
const windowS = 1.6;

/** So many samples for each of the band's own that what folds down from its top (2.4 kHz) stays above what is looked at. */
const enough = 0.77;

/**
 * The witnesses' saliences over orders of the path, averaged over all stretches: speed changes no longer smear a line.
 */
export function orderSalience(bands: Bands, stretches: readonly Stretch[]): readonly Salience[] {
  const longest = Math.max(...stretches.map(({ start, end }) => end - start));
  const mean = meanHz(stretches);
  const perTurn = 2 ** Math.max(3, Math.ceil(Math.log2((enough * bands.rate) / mean)));
  const turns = Math.max(2, Math.floor(Math.min(windowS, longest * 0.98) * mean));
  const size = nextPowerOfTwo(1.5 * turns * perTurn);
  const sums = {
    low: new Float64Array(size / 2 + 1),
    middle: new Float64Array(size / 2 / envelopeStep + 1),
    high: new Float64Array(size / 2 / envelopeStep + 1),
  };
  let averages = 0;
  for (const { path, start, end } of stretches) {
    const { times } = warpOf(path, start, end, perTurn);
    const length = Math.min(times.length, turns * perTurn) & ~(envelopeStep - 1);
    if (length < 0.6 * turns * perTurn) continue;
    const seldom = times.filter((_, i) => i % envelopeStep === 0);
    const low = sampleAt(bands.low, bands.rate, times);
    const middle = sampleAt(bands.middle, bands.rate / envelopeStep, seldom);
    const high = sampleAt(bands.high, bands.rate / envelopeStep, seldom);
    const taper = hann(length);
    const envelopeTaper = hann(length / envelopeStep);
    for (let from = 0; from + length <= times.length; from += (length >> 2) * 2) {
      addTo(sums.low, power(size, tapered(low.subarray(from, from + length), taper)));
      const part = (envelope: Float64Array) =>
        tapered(envelope.subarray(from / envelopeStep, (from + length) / envelopeStep), envelopeTaper);
      const [a, b] = powerPair(size / envelopeStep, part(middle), part(high));
      addTo(sums.middle, a);
      addTo(sums.high, b);
      averages += 1;
    }
  }
  const step = perTurn / size;
  const scale = { step, floorWidth: floorWidthHz / mean, averages: Math.max(1, averages * independent) };
  const upTo = (powers: Float64Array, topHz: number) =>
    salienceOf(powers.subarray(0, Math.min(powers.length - 1, Math.ceil(topHz / mean / step))), scale);
  return [upTo(sums.low, lowTopHz), upTo(sums.middle, envelopeTopHz), upTo(sums.high, envelopeTopHz)];
}

export function addTo(sums: Float64Array, power: Float64Array): void {
  for (let i = 0; i < sums.length; i += 1) sums[i]! += power[i]!;
}
