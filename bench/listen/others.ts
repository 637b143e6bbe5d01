import { pyin, yin } from '@audio/pitch';
import { PitchDetector } from 'pitchy';
import { decimate } from '../../src/listen/resample.js';

/** One estimate of the firing rate of a whole sound, in hertz. */
export type PitchTracker = (
  samples: Float32Array,
  sampleRate: number,
  lowHz: number,
  highHz: number,
) => number;

/** The general trackers get a rate at which their windows of 4096 samples hold several periods of the slowest engine. */
const rate = 6000;
const window = 4096;

function median(estimates: readonly number[]): number {
  const sorted = [...estimates].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

function windowed(
  estimate: (part: Float32Array, sampleRate: number, low: number, high: number) => number,
): PitchTracker {
  return (samples, sampleRate, low, high) => {
    const step = Math.max(1, Math.floor(sampleRate / rate));
    const { values, rate: lower } = decimate({ values: samples, rate: sampleRate }, step);
    const found: number[] = [];
    for (let from = 0; from + window <= values.length; from += window / 2) {
      const hz = estimate(values.subarray(from, from + window), lower, low, high);
      if (hz >= 0.9 * low && hz <= 1.1 * high) found.push(hz);
    }
    return median(found);
  };
}

const detector = PitchDetector.forFloat32Array(window);

export const others: Readonly<Record<string, PitchTracker>> = {
  pitchy: windowed((part, sampleRate) => detector.findPitch(part, sampleRate)[0]),
  YIN: windowed((part, fs) => yin(part, { fs })?.freq ?? Number.NaN),
  pYIN: windowed((part, fs, minFreq, maxFreq) => pyin(part, { fs, minFreq, maxFreq })?.freq ?? Number.NaN),
};
