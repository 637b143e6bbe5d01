import { normal, random } from '../../test/listen/engine-sound.js';
import { harmonicsBoundHz } from './tone-bound.js';

export interface Harmonics {
  readonly hz: number;
  readonly orders: number;
  readonly seconds: number;
  readonly sampleRate: number;
  /** of each harmonic: its amplitude squared over twice the noise variance */
  readonly ratio: number;
  readonly seed: number;
}

/** A perfectly steady tone of equal harmonics in white noise, and how well its frequency can be known at best. */
export function noisyHarmonics({ hz, orders, seconds, sampleRate, ratio, seed }: Harmonics) {
  const uniform = random(seed + 1);
  const phases = Array.from({ length: orders }, () => 2 * Math.PI * uniform());
  const length = Math.round(seconds * sampleRate);
  const amplitude = Math.sqrt(2 * ratio);
  const samples = Float32Array.from({ length }, (_, i) => {
    let sum = normal(uniform);
    for (const [k, phase] of phases.entries())
      sum += amplitude * Math.sin((2 * Math.PI * hz * (k + 1) * i) / sampleRate + phase);
    return 0.05 * sum;
  });
  const boundHz = harmonicsBoundHz(sampleRate, length, new Array<number>(orders).fill(ratio));
  return { sound: { samples, sampleRate }, boundHz };
}
