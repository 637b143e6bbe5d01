import { describe, expect, it } from 'vitest';
import { fire } from '../../src/engine/firing/fire.js';
import { airAlone } from '../../src/engine/firing/gas.js';
import { ottoEfficiency } from '../../src/engine/geometry.js';
import { ottoCycle } from '../../src/engine/otto-cycle.js';

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

describe('the same example by the firing stroke over crank angle, burning within half a degree, no walls', () => {
  const engine = {
    ...{ boreMm: 65, strokeMm: 62, rodMm: 108.5, compressionRatio: 8, chamberMm2: 7000 },
    ...{ closedFromDeg: 180, openFromDeg: 180 },
  };
  const fired = fire(
    engine,
    { startPa: 100e3, startK: 290, residualPart: 0, heatJPerKg: 800e3 },
    { startsDeg: -0.25, durationDeg: 0.5 },
    { rpm: 3000, wallK: 290, wallHeat: 'none', ambientPa: 100e3 },
    { gas: airAlone },
  );
  it('4.345 MPa, 1575.1 K and, at the end, 795.6 K, within 0.1 % as the tables allow', () => {
    expect(Math.abs(fired.peakPa / 4.345e6 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(fired.hottestK / 1575.1 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(fired.openingK / 795.6 - 1)).toBeLessThan(1e-3);
  });
  it('418.17 kJ/kg, 52.3 %, 574 kPa', () => {
    expect(Math.abs(fired.workJ / fired.chargeKg / 418.17e3 - 1)).toBeLessThan(1e-3);
    expect(Math.abs((100 * fired.workJ) / fired.releasedJ - 52.3)).toBeLessThan(0.05);
    expect(Math.abs(fired.meanPa / 574e3 - 1)).toBeLessThan(1e-3);
  });
});

describe('efficiency of the cold-air Otto cycle, 1 − r^(1 − 1.4) (computed apart)', () => {
  it.each([
    [5, 0.4747],
    [6, 0.5116],
    [7, 0.5408],
    [8, 0.5647],
    [9, 0.5848],
    [10, 0.6019],
  ])('ratio %d: %d', (ratio, efficiency) =>
    expect(Math.abs(ottoEfficiency(ratio) - efficiency)).toBeLessThan(6e-5),
  );
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
