import { describe, expect, it } from 'vitest';
import { fire } from '../../src/engine/firing/fire.js';
import { ottoEfficiency } from '../../src/engine/geometry.js';
import { airAlone } from '../engine/air-alone.js';

/** The air-standard Otto cycle at ratio 8: the firing stroke with air alone, burning within half a degree, no wall heat. */
const otto = (startPa: number, startK: number, heatJPerKg: number) =>
  fire(
    {
      ...{ boreMm: 65, strokeMm: 62, rodMm: 108.5, compressionRatio: 8, chamberMm2: 7000 },
      ...{ closedFromDeg: 180, openFromDeg: 180 },
    },
    { startPa, startK, residualPart: 0, heatJPerKg },
    { startsDeg: -0.25, durationDeg: 0.5 },
    { rpm: 3000, wallK: 290, heatFactor: 0, ambientPa: startPa },
    { gas: airAlone },
  );

/** The book reads tables to the digits given, our polynomials differ by up to 0.1 %. */
describe('Thermodynamics: An Engineering Approach, 7th ed., example 9-2 (statement read, answers from memory)', () => {
  const cycle = otto(100e3, 290, 800e3);
  const within = (value: number, printed: number, part: number) =>
    expect(Math.abs(value / printed - 1)).toBeLessThan(part);

  it('652.4 K after compression', () => {
    const before = cycle.trace.filter(({ angleDeg }) => angleDeg <= -0.25);
    within(before.at(-1)!.kelvin, 652.4, 1e-3);
  });
  it('1575.1 K and 4.345 MPa after the heat', () => {
    within(cycle.hottestK, 1575.1, 1e-3);
    within(cycle.peakPa, 4.345e6, 1e-3);
  });
  it('795.6 K after expansion', () => within(cycle.openingK, 795.6, 1e-3));
  it('418.17 kJ/kg, 52.3 %, 574 kPa', () => {
    within(cycle.workJ / cycle.chargeKg, 418.17e3, 1e-3);
    expect(Math.abs((100 * cycle.workJ) / cycle.releasedJ - 52.3)).toBeLessThan(0.05);
    within(cycle.meanPa, 574e3, 1e-3);
  });
  it('with constant specific heats 56.5 %', () =>
    expect(Math.abs(100 * ottoEfficiency(8) - 56.5)).toBeLessThan(0.05));
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
  let [low, high] = [800e3, 1500e3];
  for (let i = 0; i < 30; i += 1) {
    const middle = (low + high) / 2;
    if (otto(101_325, 300, middle).hottestK < hottest) low = middle;
    else high = middle;
  }
  const cycle = otto(101_325, 300, low);

  it('efficiency 51 %', () => expect(Math.abs((100 * cycle.workJ) / cycle.releasedJ - 51)).toBeLessThan(0.5));
  it('mean effective pressure 118 psi', () =>
    expect(Math.abs(cycle.meanPa / 6894.757 - 118)).toBeLessThan(0.5));
});
