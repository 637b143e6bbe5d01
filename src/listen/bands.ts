import { decimate, type Signal } from './resample.js';
import { type Sound, seconds } from './sound.js';

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

/** The part of a sound from one moment to another, seconds; `lowBand` is that of the whole sound, worked out once. */
export function bandsOf(sound: Sound, lowBand: Signal, from = 0, to = seconds(sound)): Bands {
  const { sampleRate } = sound;
  const step = stepFor(sampleRate);
  const { rate } = lowBand;
  const [first, last] = [Math.round(from * rate), Math.min(lowBand.values.length, Math.round(to * rate))];
  const low = lowBand.values.subarray(first, last);
  const samples = sound.samples.subarray(first * step, last * step);
  return {
    rate,
    low,
    middle: envelope({ values: low, rate }, middleFromHz, envelopeStep),
    high: envelope({ values: samples, rate: sampleRate }, highFromHz, envelopeStep * step),
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

/**
 * The size of what lies above an edge: a second-order high-pass, then the mean of the absolute values of each `step`
 * samples, which is enough for a beat that lies far below the new rate.
 */
function envelope({ values, rate }: Signal, fromHz: number, step: number): Float32Array {
  const w = Math.tan((Math.PI * fromHz) / rate);
  const norm = 1 / (1 + Math.SQRT2 * w + w * w);
  const a1 = 2 * (w * w - 1) * norm;
  const a2 = (1 - Math.SQRT2 * w + w * w) * norm;
  const out = new Float32Array(Math.floor(values.length / step));
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let n = 0; n < out.length; n += 1) {
    let sum = 0;
    for (let i = n * step; i < (n + 1) * step; i += 1) {
      const x = values[i]!;
      const y = norm * (x - 2 * x1 + x2) - a1 * y1 - a2 * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      sum += Math.abs(y);
    }
    out[n] = sum / step;
  }
  return out;
}
