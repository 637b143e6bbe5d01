import type { Bands } from './bands.js';
import { envelopeTopHz, floorWidthHz, lowTopHz } from './frames.js';
import { type Salience, salienceOf } from './salience.js';
import { meanHz, type Stretch } from './stretches.js';
import { hann, nextPowerOfTwo, powerPair, tapered } from './transform.js';
import { sampleAt, warpOf } from './warp.js';

/** Windows that overlap by half share some of their noise. */
const independent = 0.7;

/** Turns of the path that one window holds at most; more turns part lines that lie closer. */
const windowS = 1.6;

/**
 * The witnesses' saliences over orders of the path, averaged over all stretches: speed changes no longer smear a line.
 */
export function orderSalience(bands: Bands, stretches: readonly Stretch[]): readonly Salience[] {
  const longest = Math.max(...stretches.map(({ start, end }) => end - start));
  const mean = meanHz(stretches);
  // no fewer samples than the band has: what lies above half of them would fold down among the orders
  const perTurn = 2 ** Math.max(3, Math.ceil(Math.log2(bands.rate / mean)));
  const turns = Math.max(2, Math.floor(Math.min(windowS, longest * 0.98) * mean));
  const size = nextPowerOfTwo(1.5 * turns * perTurn);
  const sums = [0, 1, 2].map(() => new Float64Array(size / 2 + 1));
  let averages = 0;
  for (const { path, start, end } of stretches) {
    const { times } = warpOf(path, start, end, perTurn);
    const length = Math.min(times.length, turns * perTurn);
    if (length < 0.6 * turns * perTurn) continue;
    const low = sampleAt(bands.low, bands.rate, times);
    const middle = sampleAt(bands.middle, bands.rate, times);
    const high = sampleAt(bands.high, bands.rate, times);
    const taper = hann(length);
    for (let from = 0; from + length <= times.length; from += length >> 1) {
      const part = (signal: Float64Array) => tapered(signal.subarray(from, from + length), taper);
      const [a, b] = powerPair(size, part(low), part(middle));
      const [c] = powerPair(size, part(high), null);
      [a, b, c].forEach((power, w) => {
        addTo(sums[w]!, power);
      });
      averages += 1;
    }
  }
  const step = perTurn / size;
  const scale = { step, floorWidth: floorWidthHz / mean, averages: Math.max(1, averages * independent) };
  return sums.map((power, i) => {
    const topHz = i === 0 ? lowTopHz : envelopeTopHz;
    return salienceOf(power.subarray(0, Math.min(size / 2, Math.ceil(topHz / mean / step))), scale);
  });
}

function addTo(sums: Float64Array, power: Float64Array): void {
  for (let i = 0; i < sums.length; i += 1) sums[i]! += power[i]!;
}
