import { averaged, decimate, type Signal } from './resample.js';
import type { Sound } from './sound.js';

/**
 * The sound as three witnesses: its low band as it is, and the envelopes of its middle and high bands.
 *
 * A phone or a filter that took the lowest octave away leaves the beat in the envelopes: each firing is a burst.
 */
export interface Bands {
  /** samples of the low band a second */
  readonly rate: number;
  readonly low: Float32Array;
  /** envelopes, one sample for every `envelopeStep` of the low band */
  readonly middle: Float32Array;
  readonly high: Float32Array;
}

/** An envelope's beat lies far below the low band's top: every second sample carries it. */
export const envelopeStep = 2;

const workingRate = 5500;
const middleFromHz = 350;
const highFromHz = 1800;

/** The low band alone. */
export const lowBandOf = ({ samples, sampleRate }: Sound): Signal =>
  decimate({ values: samples, rate: sampleRate }, stepFor(sampleRate));

const stepFor = (sampleRate: number): number => Math.max(1, Math.floor(sampleRate / workingRate));

export function bandsOf(sound: Sound): Bands {
  const { samples, sampleRate } = sound;
  const step = stepFor(sampleRate);
  const { values: low, rate } = lowBandOf(sound);
  return {
    rate,
    low,
    middle: averaged(envelope({ values: low, rate }, middleFromHz), envelopeStep),
    high: averaged(envelope({ values: samples, rate: sampleRate }, highFromHz), envelopeStep * step),
  };
}

/** The part of all bands from one moment to another, seconds. */
export function cut({ rate, low, middle, high }: Bands, from: number, to: number): Bands {
  const part = (values: Float32Array, perSecond: number) =>
    values.subarray(Math.round(from * perSecond), Math.round(to * perSecond));
  const envelopeRate = rate / envelopeStep;
  return {
    rate,
    low: part(low, rate),
    middle: part(middle, envelopeRate),
    high: part(high, envelopeRate),
  };
}

export const lasting = ({ low, rate }: Bands): number => low.length / rate;

/** The size of what lies above an edge, sample by sample: a second-order high-pass, then the absolute value. */
function envelope({ values, rate }: Signal, fromHz: number): Float32Array {
  const w = Math.tan((Math.PI * fromHz) / rate);
  const norm = 1 / (1 + Math.SQRT2 * w + w * w);
  const a1 = 2 * (w * w - 1) * norm;
  const a2 = (1 - Math.SQRT2 * w + w * w) * norm;
  const out = new Float32Array(values.length);
  let x1 = 0;
  let x2 = 0;
  let y1 = 0;
  let y2 = 0;
  for (let i = 0; i < values.length; i += 1) {
    const x = values[i]!;
    const y = norm * (x - 2 * x1 + x2) - a1 * y1 - a2 * y2;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    out[i] = Math.abs(y);
  }
  return out;
}
