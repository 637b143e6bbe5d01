import { describe, expect, it } from 'vitest';
import {
  isoClassOf,
  leastHighShear,
  leastOfOldSae20,
  summerGrades,
  summerGradesOf,
  winterGrades,
} from '../../src/engine/oil-grades.js';

describe('SAE J300, table of 2015, read', () => {
  it('winter grades: cranking limit and where, pumping, least at 100 °C', () => {
    const table = Object.entries(winterGrades).map(([name, g]) => [
      name,
      g.crankMPaS,
      g.crankC,
      g.pumpC,
      g.least100,
    ]);
    expect(table).toEqual([
      ['0W', 6200, -35, -40, 3.8],
      ['5W', 6600, -30, -35, 3.8],
      ['10W', 7000, -25, -30, 4.1],
      ['15W', 7000, -20, -25, 5.6],
      ['20W', 9500, -15, -20, 5.6],
      ['25W', 13000, -10, -15, 9.3],
    ]);
  });

  it('high-temperature grades: range at 100 °C and least under shear at 150 °C', () => {
    const order = ['8', '12', '16', '20', '30', '40', '50', '60'] as const;
    const table = order.map((name) => {
      const { least100, below100, leastHighShear } = summerGrades[name];
      return [name, least100, below100, leastHighShear];
    });
    expect(table).toEqual([
      ['8', 4, 6.1, 1.7],
      ['12', 5, 7.1, 2],
      ['16', 6.1, 8.2, 2.3],
      ['20', 6.9, 9.3, 2.6],
      ['30', 9.3, 12.5, 2.9],
      ['40', 12.5, 16.3, 3.5],
      ['50', 16.3, 21.9, 3.7],
      ['60', 21.9, 26.1, 3.7],
    ]);
  });

  it('under shear a 40 has 3.5 with 0W, 5W or 10W, and 3.7 with 15W, 20W, 25W or alone', () => {
    for (const light of ['0W', '5W', '10W'] as const) expect(leastHighShear('40', light)).toBe(3.5);
    for (const heavy of ['15W', '20W', '25W'] as const) expect(leastHighShear('40', heavy)).toBe(3.7);
    expect(leastHighShear('40')).toBe(3.7);
    expect(leastHighShear('30', '10W')).toBe(2.9);
  });

  it('an SAE 20 began at 5.6 before 2013', () => expect(leastOfOldSae20).toBe(5.6));

  it('12.5 mm²/s is no longer a 30, 16.3 no longer a 40', () => {
    expect(summerGradesOf(12.4999)).toEqual(['30']);
    expect(summerGradesOf(12.5)).toEqual(['40']);
    expect(summerGradesOf(16.3)).toEqual(['50']);
    expect(summerGradesOf(26.1)).toEqual([]);
  });
});

describe('ISO 3448, from memory, recomputed', () => {
  it.each([
    [22, 19.8, 24.2],
    [32, 28.8, 35.2],
    [46, 41.4, 50.6],
    [68, 61.2, 74.8],
    [100, 90, 110],
  ])('VG %d is %d to %d mm²/s at 40 °C', (vg, least, most) => {
    expect(isoClassOf(least)).toBe(vg);
    expect(isoClassOf(most)).toBe(vg);
    expect(isoClassOf(least - 0.01)).not.toBe(vg);
    expect(isoClassOf(most + 0.01)).not.toBe(vg);
  });
});
