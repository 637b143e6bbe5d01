import { type Bands, envelopeStep } from './bands.js';
import { type Salience, salienceOf } from './salience.js';
import { hann, nextPowerOfTwo, power, powerPair, tapered } from './transform.js';
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
  const length = even(Math.min(low.length - 1, windowS * rate));
  const hop = even(Math.max(envelopeStep, hopS * rate));
  const views = {
    low: viewOf(length, rate, slope),
    envelope: viewOf(length / envelopeStep, rate / envelopeStep, slope),
  };
  const count = 1 + Math.floor((low.length - length) / hop);
  const offset = even((low.length - length - (count - 1) * hop) / 2);
  return Array.from({ length: count }, (_, n) => frameAt(bands, offset + n * hop, views));
}

/** A number of low-band samples that is whole in samples of the envelopes too. */
const even = (samples: number): number => envelopeStep * Math.floor(samples / envelopeStep);

/** How a part of a band is looked at: under a taper, and with a slope at the moments of equal turns. */
interface View {
  readonly rate: number;
  readonly taper: Float64Array;
  /** seconds from the middle of the part; null where time runs evenly */
  readonly bend: Float64Array | null;
}

function viewOf(length: number, rate: number, slope: number): View {
  const bend = Float64Array.from({ length }, (_, i) => Math.log1p((slope * (i - length / 2)) / rate) / slope);
  return { rate, taper: hann(length), bend: slope === 0 ? null : bend };
}

function seen(band: Float32Array, from: number, { rate, taper, bend }: View): Float64Array {
  const { length } = taper;
  if (bend === null) return tapered(band.subarray(from, from + length), taper);
  const center = (from + length / 2) / rate;
  return tapered(
    sampleAt(
      band,
      rate,
      bend.map((offset) => center + offset),
    ),
    taper,
  );
}

function frameAt(bands: Bands, from: number, views: { readonly low: View; readonly envelope: View }): Frame {
  const { rate } = bands;
  const { length } = views.low.taper;
  const size = nextPowerOfTwo(1.5 * length);
  const scale = { step: rate / size, floorWidth: floorWidthHz, averages: 1 };
  const lowPower = power(size, seen(bands.low, from, views.low));
  const envelopePowers = powerPair(
    size / envelopeStep,
    seen(bands.middle, from / envelopeStep, views.envelope),
    seen(bands.high, from / envelopeStep, views.envelope),
  );
  const upTo = (powers: Float64Array, topHz: number) =>
    salienceOf(powers.subarray(0, Math.ceil(topHz / scale.step)), scale);
  return {
    t: (from + length / 2) / rate,
    witnesses: [upTo(lowPower, lowTopHz), ...envelopePowers.map((each) => upTo(each, envelopeTopHz))],
  };
}

/** Firing orders above this are smeared by the least unsteadiness. */
export const lowTopHz = 1600;

/** An envelope says nothing above a few hundred firings a second. */
export const envelopeTopHz = 700;
