import { GaugeError } from './error.js';
import { normalBelow } from './normal.js';

/**
 * The chance that the range (largest less smallest) of n independent standard normal errors is at most q.
 *
 * Source: Order Statistics, 2.3: n∫φ(x)[Φ(x) − Φ(x − q)]^(n−1) dx (from memory).
 * Method: trapezoid rule of step 1/8 from −8.5 to 8.5, which converges exponentially for such integrands.
 * Error: absolute ≤ 1e-10 for n ≤ 200. Refuses other n.
 * Example: n = 3, q = 3.314 → 0.950 (the studentized range at infinite degrees of freedom).
 */
export function noiseRangeBelow(q: number, n: number): number {
  requireCount(n);
  if (n === 1) return q >= 0 ? 1 : 0;
  if (q <= 0) return 0;
  const sum = places.reduce(
    (total, { x, density, below }) => total + density * (below - normalBelow(x - q)) ** (n - 1),
    0,
  );
  return Math.min(1, n * sum * step);
}

const step = 1 / 8;
/** Where the integrals are sampled; the ends weigh under 1e-15, so that no half weights are needed. */
const places = Array.from({ length: 137 }, (_, i) => {
  const x = (i - 68) * step;
  return {
    x,
    density: Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI),
    below: normalBelow(x),
    above: normalBelow(-x),
  };
});

/**
 * The range that n readings of one and the same size show on average, in units of their standard uncertainty
 * (the control chart factor d2).
 *
 * Source: Biometrika 17 (1925) 364: ∫ 1 − Φⁿ − (1 − Φ)ⁿ dx (from memory). Error: absolute ≤ 1e-9.
 * Example: n = 3 → 1.692569.
 */
export function meanNoiseRange(n: number): number {
  requireCount(n);
  return step * places.reduce((total, { below, above }) => total + 1 - below ** n - above ** n, 0);
}

/**
 * The widest of the ranges that `groups` times n readings show on average: what taper or out-of-round reads on a perfect
 * part, being picked from several lines.
 *
 * Method: ∫ 1 − F(q)^groups dq over `noiseRangeBelow` F, Simpson's rule of step 1/16 to 12. Error: absolute ≤ 1e-6.
 * Examples: three readings in each of two groups: 2.190; two in each of three: 1.876.
 */
export function meanWidestRange(n: number, groups: number): number {
  if (groups === 1) return meanNoiseRange(n);
  const h = 1 / 16;
  let sum = 0;
  for (let i = 0; i <= 192; i += 1) {
    const weight = i === 0 || i === 192 ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * (1 - noiseRangeBelow(i * h, n) ** groups);
  }
  return (sum * h) / 3;
}

function requireCount(n: number): void {
  if (!Number.isInteger(n) || n < 1 || n > 200)
    throw new GaugeError(`the count must be a whole number from 1 to 200; got ${n}.`, 'count', n);
}
