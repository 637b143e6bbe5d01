import { describe, expect, it } from 'vitest';
import { viscosityAt, viscosityLine } from '../../src/engine/viscosity.js';

describe('a public worked example of ASTM D341 (with T = t + 273), read', () => {
  const line = viscosityLine({ celsius: 40, mm2PerS: 32 }, { celsius: 100, mm2PerS: 5.4 });
  it('32 at 40 °C and 5.4 at 100 °C: 8.5 at 80 °C', () =>
    expect(Math.abs(viscosityAt(line, 80) - 8.5)).toBeLessThan(0.05));
  it('A 9.5259 and B 3.7449 there; with 273.15 they are 0.05 % larger, and do not mix with these', () => {
    expect(Math.abs(line.a / 9.5259 - 1)).toBeLessThan(6e-4);
    expect(Math.abs(line.b / 3.7449 - 1)).toBeLessThan(6e-4);
    expect(line.a).toBeGreaterThan(9.53);
  });
});

describe('a public table made with the form of constant 0.8, read', () => {
  it('68 at 40 °C and 8.6 at 100 °C: 28.6455 at 60 °C there; this form, with 0.7, is within 0.6 % of it', () => {
    const line = viscosityLine({ celsius: 40, mm2PerS: 68 }, { celsius: 100, mm2PerS: 8.6 });
    expect(Math.abs(viscosityAt(line, 60) / 28.6455 - 1)).toBeLessThan(6e-3);
  });
});
