import type { Bands } from './bands.js';
import { type Salience, salienceOf } from './salience.js';
import { hann, nextPowerOfTwo, powerPair, tapered } from './transform.js';
import { sampleAt } from './warp.js';

/** The three witnesses' saliences over one stretch of the sound. */
export interface Frame {
  readonly t: number;
  readonly witnesses: readonly Salience[];
}

export interface Framing {
  readonly windowS: number;
  readonly hopS: number;
}

export const floorWidthHz = 70;

/**
 * Windows over the whole sound; a sound shorter than the window is one frame, taken whole.
 *
 * `slope` is the rate at which the speed is taken to change within a window, in logarithms a second: time is bent so
 * that an engine speeding up at that rate turns evenly, and its lines stand as sharp as those of a steady one.
 */
export function framesOf(bands: Bands, { windowS, hopS }: Framing, slope = 0): readonly Frame[] {
  const { rate, low } = bands;
  const length = Math.min(low.length, Math.round(windowS * rate));
  const hop = Math.max(1, Math.round(hopS * rate));
  const taper = hann(length);
  const count = 1 + Math.floor((low.length - length) / hop);
  const offset = Math.floor((low.length - length - (count - 1) * hop) / 2);
  return Array.from({ length: count }, (_, n) => frameAt(bands, offset + n * hop, taper, slope));
}

/** The part of each band from a sample on; with a slope, read at the moments of equal turns. */
function partsOf({ rate, low, middle, high }: Bands, from: number, length: number, slope: number) {
  if (slope === 0) return [low, middle, high].map((band) => band.subarray(from, from + length));
  const center = (from + length / 2) / rate;
  const times = Float64Array.from({ length }, (_, i) => {
    const turned = (i - length / 2) / rate;
    return center + Math.log1p(slope * turned) / slope;
  });
  return [low, middle, high].map((band) => sampleAt(band, rate, times));
}

function frameAt(bands: Bands, from: number, taper: Float64Array, slope: number): Frame {
  const { rate } = bands;
  const length = taper.length;
  const size = nextPowerOfTwo(1.5 * length);
  const [low, middle, high] = partsOf(bands, from, length, slope).map((part) => tapered(part, taper));
  const [powerLow, powerMiddle] = powerPair(size, low!, middle!);
  const [powerHigh] = powerPair(size, high!, null);
  const scale = { step: rate / size, floorWidth: floorWidthHz, averages: 1 };
  const envelopeTop = Math.ceil(envelopeTopHz / scale.step);
  return {
    t: (from + length / 2) / rate,
    witnesses: [
      powerLow.subarray(0, Math.ceil(lowTopHz / scale.step)),
      powerMiddle.subarray(0, envelopeTop),
      powerHigh.subarray(0, envelopeTop),
    ].map((power) => salienceOf(power, scale)),
  };
}

/** Firing orders above this are smeared by the least unsteadiness. */
export const lowTopHz = 1600;

/** An envelope says nothing above a few hundred firings a second. */
export const envelopeTopHz = 700;
