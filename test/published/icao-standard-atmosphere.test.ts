import { describe, expect, it } from 'vitest';
import { geopotentialM, standardAir, standardAirAtMapHeight } from '../../src/engine/atmosphere.js';

const rows = (
  table: readonly (readonly [m: number, k: number, pa: number, rho: number])[],
  of: typeof standardAir,
  digits: readonly [k: number, pa: number, rho: number],
) => {
  for (const [m, k, pa, rho] of table)
    it(`${m} m: ${k} K, ${pa} Pa, ${rho} kg/m³`, () => {
      const air = of(m);
      expect(Math.abs(air.kelvin - k)).toBeLessThanOrEqual(digits[0]);
      expect(Math.abs(air.pascal - pa)).toBeLessThanOrEqual(digits[1]);
      expect(Math.abs(air.kgPerM3 - rho)).toBeLessThanOrEqual(digits[2]);
    });
};

describe('ICAO Doc 7488 / ISO 2533, sea level, read', () => {
  rows([[0, 288.15, 101_325, 1.225]], standardAir, [0.005, 0.5, 0.000005]);
});

describe('ICAO Doc 7488 / ISO 2533 by geopotential height, from memory, recomputed', () => {
  rows(
    [
      [500, 284.9, 95_460.8, 1.16727],
      [1000, 281.65, 89_874.6, 1.11164],
      [1500, 278.4, 84_556.0, 1.05807],
      [2000, 275.15, 79_495.2, 1.00649],
      [3000, 268.65, 70_108.5, 0.90912],
    ],
    standardAir,
    [0.005, 0.06, 0.000006],
  );
});

describe('US Standard Atmosphere 1976 by geometric height, read', () => {
  rows(
    [
      [2000, 275.154, 79_501, 1.0066],
      [4000, 262.17, 61_660, 0.81935],
    ],
    standardAirAtMapHeight,
    [0.005, 1, 0.00006],
  );

  it('the two heights differ by 12 Pa at 3000 m: a table has to say which it means', () => {
    expect(standardAirAtMapHeight(3000).pascal - standardAir(3000).pascal).toBeCloseTo(12.7, 0);
    expect(3000 - geopotentialM(3000)).toBeCloseTo(1.4, 1);
  });
});
