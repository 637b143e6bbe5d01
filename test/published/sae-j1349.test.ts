import { describe, expect, it } from 'vitest';
import { iso1585Factor, saeJ1349Factor } from '../../src/engine/power-correction.js';

describe('SAE J1349 (June 1990), read', () => {
  it('990 mbar and 25 °C are the standard: 1.000', () =>
    expect(Math.abs(saeJ1349Factor(99_000, 25) - 1)).toBeLessThan(0.0005));
  it('850 mbar and 25 °C: about 1.19', () =>
    expect(Math.abs(saeJ1349Factor(85_000, 25) - 1.19)).toBeLessThan(0.005));
});

describe('ISO 1585 / ISO 3046-1 for spark ignition, from memory', () => {
  it('99 kPa and 25 °C are the standard: 1', () => expect(iso1585Factor(99_000, 25)).toBeCloseTo(1, 12));
  it('(99/p)^1.2 · (T/298)^0.6: 96 kPa and 35 °C, 1.058 (computed from the form)', () =>
    expect(Math.abs(iso1585Factor(96_000, 35) - (99 / 96) ** 1.2 * (308 / 298) ** 0.6)).toBeLessThan(5e-4));
});
