import { describe, expect, it } from 'vitest';
import { ethanolBlend, stoichiometricAir, waterToleranceE10 } from '../../src/engine/fuel.js';

describe('public tables of air–fuel ratios (a forum: low grade; an ethanol page), read', () => {
  it('ethanol 9.0078 there; 9.002 with today’s atomic masses', () =>
    expect(Math.abs(stoichiometricAir(3, 0.5) - 9.0078)).toBeLessThan(0.01));
  it.each([
    [0.1, 14.13, 0.04],
    [0.15, 13.8, 0.04],
    [0.85, 9.7, 0.15],
    [1, 9, 0.05],
  ])('ethanol part %d on a base of 14.7: %d', (part, ratio, tolerance) =>
    expect(Math.abs(ethanolBlend(part, 14.7).airFuelRatio - ratio)).toBeLessThan(tolerance),
  );
});

describe('a figure of the US EPA on water in oxygenated gasoline, from memory', () => {
  it('E10 at 60 °F takes up 0.5 %: 3.8 teaspoons a US gallon', () => {
    const teaspoonsPerGallon = waterToleranceE10(15.56).part * 768;
    expect(Math.abs(teaspoonsPerGallon - 3.8)).toBeLessThan(0.1);
  });
});
