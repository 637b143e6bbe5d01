import { requireWithin } from '../error.js';

/**
 * Friction mean effective pressure, Pa: 0.97 + 0.15·(N/1000) + 0.05·(N/1000)² bar.
 *
 * Source: *Internal Combustion Engine Fundamentals* 1988, eq. 13.6, coefficients from memory: automotive four-strokes of
 * 845 to 2000 cm³ at full throttle, motored, pumping and auxiliaries included. **It does not cover small air-cooled
 * singles**: they have no water pump and less oil to stir, but more rubbing to their displacement; a factor of 1.6
 * either way (k = 2) is trade judgement, no source. Throws EngineError outside 500 to 6000 rpm.
 * Example: 3600 rpm: 2.158 bar.
 */
export function automotiveFriction(rpm: number): number {
  const n = requireWithin(rpm, 500, 6000, 'rpm') / 1000;
  return 1e5 * (0.97 + 0.15 * n + 0.05 * n * n);
}
