import { GaugeError, requireFinite } from './error.js';

/**
 * The standard normal distribution function Φ(z).
 *
 * Source: Handbook of Mathematical Functions, 26.2.11 (series) and 26.2.14 (continued
 * fraction). Method: the series of positive terms for |z| < 3, the continued fraction beyond, mirrored for z > 0.
 * Error: absolute ≤ 1e-15, relative ≤ 1e-13 in the lower tail, down to z = −37 where the result underflows.
 * Special cases: Φ(−∞) = 0, Φ(∞) = 1; NaN is refused.
 * Own code: `@stdlib/stats-base-dists-normal-cdf` is as exact but adds 7 kB (compressed) to the page for these 30 lines.
 * Example: Φ(1.4) = 0.919243340766229.
 */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) throw new GaugeError('z must be a number; got NaN.', 'z', z);
  if (z > 0) return 1 - normalBelow(-z);
  return z > -3 ? 0.5 - density(z) * oddSeries(-z) : lowerTail(-z);
}

function density(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/** x + x³/3 + x⁵/(3·5) + …, for 0 ≤ x < 3: at most 60 terms. */
function oddSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 3; term > sum * 1e-17; n += 2) {
    term *= (x * x) / n;
    sum += term;
  }
  return sum;
}

/** φ(x)/(x + 1/(x + 2/(x + 3/…))), from the inside out; 60 levels give 1e-16 at x = 3. */
function lowerTail(x: number): number {
  if (x > 38) return 0;
  let fraction = x;
  for (let n = 60; n > 0; n -= 1) fraction = x + n / fraction;
  return density(x) / fraction;
}

/**
 * The z below which a normal quantity falls with this probability: Φ(z) = p.
 *
 * Method: bisection on `normalBelow` down to neighboring floating-point numbers.
 * Error: that of `normalBelow`. Refuses p outside (0, 1).
 * Example: 0.95 → 1.6448536269514722.
 */
export function normalQuantile(p: number): number {
  if (!(requireFinite(p, 'p') > 0 && p < 1))
    throw new GaugeError(`p must lie between 0 and 1; got ${p}.`, 'p', p);
  if (p > 0.5) return -normalQuantile(1 - p);
  let low = -39;
  let high = 0;
  for (let step = 0; step < 80; step += 1) {
    const middle = (low + high) / 2;
    if (normalBelow(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
