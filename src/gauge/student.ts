import { GaugeError, requireFinite } from './error.js';
import { incompleteBeta } from './incomplete-beta.js';

/**
 * Student's t distribution function for ν degrees of freedom, ν > 0 (need not be whole).
 *
 * Source: Handbook of Mathematical Functions, 26.7.1 with the incomplete beta function.
 * Method: half of I_x(ν/2, 1/2) with x = ν/(ν + t²) in the lower tail, mirrored above 0.
 * Error: absolute ≤ 1e-12 for 0.5 ≤ ν ≤ 1e4; beyond, the logarithm of gamma loses digits, to 2e-10 at ν = 1e6.
 * Example: t = 2.92, ν = 16 → 0.995 (the two-sided 99 % point of 16 degrees of freedom).
 */
export function studentBelow(t: number, degreesOfFreedom: number): number {
  requireDegrees(degreesOfFreedom);
  if (Number.isNaN(t)) throw new GaugeError('t must be a number; got NaN.', 't', t);
  if (t > 0) return 1 - studentBelow(-t, degreesOfFreedom);
  if (t === Number.NEGATIVE_INFINITY) return 0;
  return 0.5 * incompleteBeta(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 0.5);
}

/**
 * The t below which the quantity falls with probability p, for ν degrees of freedom.
 *
 * Method: bracket by doubling, then bisection to neighboring floating-point numbers. Error: that of `studentBelow`.
 * Example: p = 0.995, ν = 16 → 2.9208.
 */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  requireDegrees(degreesOfFreedom);
  if (!(requireFinite(p, 'p') > 0 && p < 1))
    throw new GaugeError(`p must lie between 0 and 1; got ${p}.`, 'p', p);
  if (p > 0.5) return -studentQuantile(1 - p, degreesOfFreedom);
  let low = -1;
  while (studentBelow(low, degreesOfFreedom) > p) low *= 2;
  let high = 0;
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    if (studentBelow(middle, degreesOfFreedom) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function requireDegrees(degreesOfFreedom: number): void {
  if (!(requireFinite(degreesOfFreedom, 'degreesOfFreedom') > 0))
    throw new GaugeError(
      `degreesOfFreedom must be above 0; got ${degreesOfFreedom}.`,
      'degreesOfFreedom',
      degreesOfFreedom,
    );
}
