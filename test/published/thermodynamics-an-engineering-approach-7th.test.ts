import { describe, expect, it } from 'vitest';
import { ottoCycle, ottoEfficiency } from '../../src/engine/index.js';

/** The answers come from memory; the book reads tables to the digits given, our polynomials differ by up to 0.1 %. */
describe('Thermodynamics: An Engineering Approach, 7th ed., example 9-2 (statement read, answers from memory)', () => {
  const cycle = ottoCycle({ ratio: 8, startPa: 100e3, startK: 290, heatJPerKg: 800e3 });
  const within = (value: number, printed: number, part: number) =>
    expect(Math.abs(value / printed - 1)).toBeLessThan(part);

  it('652.4 K after compression', () => within(cycle.compressedK, 652.4, 1e-3));
  it('1575.1 K and 4.345 MPa after the heat', () => {
    within(cycle.hottestK, 1575.1, 1e-3);
    within(cycle.highestPa, 4.345e6, 1e-3);
  });
  it('795.6 K after expansion', () => within(cycle.expandedK, 795.6, 1e-3));
  it('418.17 kJ/kg, 52.3 %, 574 kPa', () => {
    within(cycle.workJPerKg, 418.17e3, 1e-3);
    expect(Math.abs(100 * cycle.efficiency - 52.3)).toBeLessThan(0.05);
    within(cycle.meanPa, 574e3, 1e-3);
  });
  it('with constant specific heats 56.5 %', () =>
    expect(Math.abs(100 * ottoEfficiency(8) - 56.5)).toBeLessThan(0.05));
});

describe('Fundamentals of Engineering Thermodynamics, example 9.1, from memory', () => {
  // 540 °R, 1 atm, ratio 8, 3600 °R at the hottest: the heat that gets there
  const hottest = 2000;
  const heatFor = (heatJPerKg: number) =>
    ottoCycle({ ratio: 8, startPa: 101_325, startK: 300, heatJPerKg }).hottestK;
  let [low, high] = [800e3, 1500e3];
  for (let i = 0; i < 40; i += 1) {
    const middle = (low + high) / 2;
    if (heatFor(middle) < hottest) low = middle;
    else high = middle;
  }
  const cycle = ottoCycle({ ratio: 8, startPa: 101_325, startK: 300, heatJPerKg: low });

  it('efficiency 51 %', () => expect(Math.abs(100 * cycle.efficiency - 51)).toBeLessThan(0.5));
  it('mean effective pressure 118 psi', () =>
    expect(Math.abs(cycle.meanPa / 6894.757 - 118)).toBeLessThan(0.5));
});
