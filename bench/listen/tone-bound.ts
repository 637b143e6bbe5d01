/**
 * The least standard deviation of a tone's frequency, in hertz, phase and amplitude unknown.
 *
 * Source: Rife and Boorstyn, IEEE Trans. Inf. Theory IT-20 (1974) 591, from memory:
 * variance ≥ 12 fs² / ((2π)² η N (N² − 1)) with η the amplitude squared over twice the noise variance.
 * Example: 8000 a second, 4096 samples, η = 1 → 0.0168 Hz.
 */
export function toneBoundHz(sampleRate: number, samples: number, ratio: number): number {
  return Math.sqrt((12 * sampleRate ** 2) / ((2 * Math.PI) ** 2 * ratio * samples * (samples ** 2 - 1)));
}

/** Harmonics of one fundamental: their information adds, each weighed by the square of its order. */
export function harmonicsBoundHz(sampleRate: number, samples: number, ratios: readonly number[]): number {
  const weight = ratios.reduce((sum, ratio, i) => sum + ratio * (i + 1) ** 2, 0);
  return toneBoundHz(sampleRate, samples, weight);
}
