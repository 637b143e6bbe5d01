import type { Bands } from './bands.js';
import { comb } from './comb.js';
import { floorWidthHz, lowTopHz } from './frames.js';
import { addTo, independent } from './orders.js';
import { salienceOf } from './salience.js';
import { hann, nextPowerOfTwo, power, tapered } from './transform.js';

/** The two frequencies of public supply. Source: IEC 60196, from memory. */
const mainsHz = [50, 60];
/** A supply strays from them by less, save in an emergency. From memory. */
const strays = 0.002;
const strayStep = 0.0001;

const windowS = 2;
/** A hum does not change: what it is shows within so many windows. */
const mostWindows = 8;
/**
 * On made sounds hums reach 0.98 and more; of two-strokes at just that speed 95 in 100 stay below 0.94, four-strokes at
 * 0.43.
 */
const nearlyAll = 0.975;
/** A single line may be anything. */
const fewestLines = 1.8;

/**
 * Whether all that repeats in a sound are multiples of 50 or of 60 Hz, sharper than any engine turns: a lamp, a
 * transformer, a motor on the mains.
 *
 * Validity: hum without anything else that repeats. A two-stroke kept to 3,000 or 3,600 rpm within 0.2 % whose firings
 * do not jitter at all would be taken for one.
 */
export function isMainsHum({ low, rate }: Bands, firingHz: number): boolean {
  if (!keepsTime(firingHz)) return false;
  const length = Math.min(low.length, Math.round(windowS * rate));
  const size = nextPowerOfTwo(1.5 * length);
  const taper = hann(length);
  const sum = new Float64Array(size / 2 + 1);
  const hop = length >> 1;
  const windows = Math.min(mostWindows, 1 + Math.floor((low.length - length) / hop));
  for (let n = 0; n < windows; n += 1) {
    addTo(sum, power(size, tapered(low.subarray(n * hop, n * hop + length), taper)));
  }
  const step = rate / size;
  const scale = { step, floorWidth: floorWidthHz, averages: Math.max(1, independent * windows) };
  const salience = salienceOf(sum.subarray(0, Math.ceil(lowTopHz / step)), scale);
  return mainsHz.some((hz) => {
    for (let stray = -strays; stray <= strays; stray += strayStep) {
      const { firingShare, lines } = comb(salience, (hz * (1 + stray)) / step, 1);
      if (firingShare >= nearlyAll && lines >= fewestLines) return true;
    }
    return false;
  });
}

/** A tracker that hears a hum takes one of its lines, or one a few times lower, for the firing. */
const mostBelow = 6;

const keepsTime = (firingHz: number): boolean =>
  mainsHz.some((hz) =>
    Array.from({ length: mostBelow }, (_, n) => ((n + 1) * firingHz) / hz).some(
      (ratio) => ratio > 0.5 && Math.abs(ratio / Math.round(ratio) - 1) < 2 * strays,
    ),
  );
