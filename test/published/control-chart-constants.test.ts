import { describe, expect, it } from 'vitest';
import { meanNoiseRange, noiseRangeQuantile } from '../../src/gauge/noise-range.js';

describe('control chart factor d2 (ASTM STP 15D), from memory', () => {
  const printed: [number, number][] = [
    [2, 1.128],
    [3, 1.693],
    [4, 2.059],
    [5, 2.326],
    [6, 2.534],
    [9, 2.97],
    [10, 3.078],
    [25, 3.931],
  ];
  for (const [n, d2] of printed)
    it(`${n} readings: ${d2}`, () => expect(Math.abs(meanNoiseRange(n) - d2)).toBeLessThanOrEqual(5e-4));
});

describe('upper 5 % points of the studentized range at infinite degrees of freedom, from memory', () => {
  const printed: [number, number][] = [
    [2, 2.77],
    [3, 3.31],
    [4, 3.63],
    [5, 3.86],
    [9, 4.39],
    [10, 4.47],
    [20, 5.01],
  ];
  for (const [n, q] of printed)
    it(`${n} readings: ${q}`, () =>
      expect(Math.abs(noiseRangeQuantile(0.95, n) - q)).toBeLessThanOrEqual(5e-3));
});
