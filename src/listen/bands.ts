import { averaged, decimate, type Signal } from './resample.js';
import type { Sound } from './sound.js';

/**
 * The sound as three witnesses at one rate: its low band as it is, and the envelopes of its middle and high bands.
 *
 * A phone or a filter that took the lowest octave away leaves the beat in the envelopes: each firing is a burst.
 */
export interface Bands {
  readonly rate: number;
  readonly low: Float32Array;
  readonly middle: Float32Array;
  readonly high: Float32Array;
}

const workingRate = 5500;
const middleFromHz = 350;
const highFromHz = 1800;

export function bandsOf({ samples, sampleRate }: Sound): Bands {
  const step = Math.max(1, Math.floor(sampleRate / workingRate));
  const { values: low, rate } = decimate({ values: samples, rate: sampleRate }, step);
  const middle = envelope({ values: low, rate }, middleFromHz);
  const high = averaged(
    { values: envelope({ values: samples, rate: sampleRate }, highFromHz), rate: sampleRate },
    step,
  );
  return { rate, low, middle, high: high.values };
}

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
