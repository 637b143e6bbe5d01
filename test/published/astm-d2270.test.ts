import { describe, expect, it } from 'vitest';
import { referenceViscosities, viscosityIndex } from '../../src/engine/viscosity-index.js';

describe('ASTM D2270, worked examples 5.1.4 and 6.1.4, read', () => {
  it('73.30 and 8.86: L 119.94, H 69.48, index 92.43, reported 92', () => {
    const { l, h } = referenceViscosities(8.86);
    // coefficients stand in for the table: a unit or two in the last printed place
    expect(Math.abs(l - 119.94)).toBeLessThan(0.03);
    expect(Math.abs(h - 69.48)).toBeLessThan(0.01);
    const { index, procedure } = viscosityIndex(73.3, 8.86);
    expect(procedure).toBe('A');
    expect(Math.abs(index - 92.43)).toBeLessThan(0.05);
    expect(Math.round(index)).toBe(92);
  });

  it('22.83 and 5.05: H 28.97, index 156.37, reported 156', () => {
    expect(Math.abs(referenceViscosities(5.05).h - 28.97)).toBeLessThan(0.015);
    const { index, procedure } = viscosityIndex(22.83, 5.05);
    expect(procedure).toBe('B');
    expect(Math.abs(index - 156.37)).toBeLessThan(0.1);
    expect(Math.round(index)).toBe(156);
  });

  it('53.47 and 7.80: H 57.31, index 111 (inputs partly read, result from memory, recomputed)', () => {
    expect(Math.abs(referenceViscosities(7.8).h - 57.31)).toBeLessThan(0.01);
    expect(Math.round(viscosityIndex(53.47, 7.8).index)).toBe(111);
  });
});

describe('ASTM D2270, table rows and the formula above 70 mm²/s, read', () => {
  it.each([
    [5, 40.23, 28.49],
    [10, 147.7, 82.87],
    [20, 493.2, 229.5],
  ])('%d at 100 °C: L %d, H %d', (y, l, h) => {
    const found = referenceViscosities(y);
    expect(Math.abs(found.l / l - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.h / h - 1)).toBeLessThan(1e-3);
  });

  it('above 70: L = 0.8353 Y² + 14.67 Y − 216, H = 0.1684 Y² + 11.85 Y − 97', () => {
    const { l, h } = referenceViscosities(80);
    expect(l).toBeCloseTo(0.8353 * 6400 + 14.67 * 80 - 216, 9);
    expect(h).toBeCloseTo(0.1684 * 6400 + 11.85 * 80 - 97, 9);
  });
});

describe('a public table of viscosity indices, read; it cuts the decimals off', () => {
  it.each([
    [30, 5.23, 104],
    [68, 8.6, 96],
    [70, 11.1, 150],
  ])('%d and %d: %d', (at40, at100, index) =>
    expect(Math.floor(viscosityIndex(at40, at100).index)).toBe(index),
  );
});
