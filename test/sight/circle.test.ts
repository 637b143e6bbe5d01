import { expect, test } from 'vitest';
import { unblurred } from '../../src/sight/plate/circle.js';

/** Light of a bright disc at a distance from its middle, blurred by a bell: the integral over the disc, in thin rings. */
function lightAt(far: number, r: number, sigma: number): number {
  const [rings, turns] = [600, 240];
  let sum = 0;
  for (let i = 0; i < rings; i += 1) {
    const rho = ((i + 0.5) * r) / rings;
    for (let k = 0; k < turns; k += 1) {
      const angle = (2 * Math.PI * (k + 0.5)) / turns;
      const off = (rho * Math.cos(angle) - far) ** 2 + (rho * Math.sin(angle)) ** 2;
      sum += Math.exp(-off / (2 * sigma * sigma)) * rho;
    }
  }
  return (sum * (r / rings) * ((2 * Math.PI) / turns)) / (2 * Math.PI * sigma * sigma);
}

test.each([
  [3, 0.3],
  [2.25, 0.2],
])('a hole of radius %s mm blurred by %s mm has its own size again', (r, sigma) => {
  let [low, high] = [r - 0.2, r + 0.1];
  for (let i = 0; i < 14; i += 1) {
    const middle = (low + high) / 2;
    if (lightAt(middle, r, sigma) > 0.5) low = middle;
    else high = middle;
  }
  expect(r - low).toBeGreaterThan(0.005);
  expect(unblurred(low, sigma)).toBeCloseTo(r, 3);
});
