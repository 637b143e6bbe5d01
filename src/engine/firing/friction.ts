import { requireWithin } from '../error.js';
import { meanPistonSpeed } from '../speeds.js';

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

/**
 * Friction and crankcase pumping of a small two-stroke as a mean effective pressure, Pa: it runs on rolling bearings, drives
 * no valves and pumps its charge by its own crankcase.
 *
 * Source: trade judgement, none published: 50 kPa and 12 kPa for each m/s of mean piston speed; take it within a factor
 * of 1.6. Valid 500 to 12 000 rpm, outside which it throws EngineError. Example: stroke 34 mm, 7500 rpm: 152 kPa.
 */
export function twoStrokeFriction(strokeMm: number, rpm: number): number {
  const speed = meanPistonSpeed(strokeMm, requireWithin(rpm, 500, 12_000, 'rpm'));
  return 50e3 + 12e3 * speed;
}
