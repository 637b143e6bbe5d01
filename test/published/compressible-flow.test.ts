import { describe, expect, it } from 'vitest';
import { criticalRatio, flowFunction } from '../../src/engine/orifice.js';

describe('Fundamentals of Engineering Thermodynamics, example 9.14, from memory, recomputed', () => {
  // 0.001 m² from 1 MPa and 360 K, R 287: ṁ = A·p0/√(R·T0)·φ
  const kgPerS = (toPa: number) => ((0.001 * 1e6) / Math.sqrt(287 * 360)) * flowFunction(toPa / 1e6);
  it('into 500 kPa it is choked: 2.13 kg/s', () =>
    expect(Math.abs(kgPerS(500e3) - 2.13)).toBeLessThan(0.005));
  it('into 784 kPa at Mach 0.6: 1.79 kg/s', () => expect(Math.abs(kgPerS(784e3) - 1.79)).toBeLessThan(0.005));
});

describe('worked figures in the documentation of a public fluid-mechanics library, read', () => {
  it('80 psig chokes into anything under 35.3 psig', () =>
    expect(Math.abs(94.696 * criticalRatio(1.4) - 14.696 - 35.3)).toBeLessThan(0.05));
  it('air’s critical ratio is 0.528', () =>
    expect(Math.abs(criticalRatio(1.4) - 0.528)).toBeLessThan(0.0005));
  it('γ 1.289 at 1.4 MPa: critical pressure 766 812.90 Pa', () =>
    expect(Math.abs(1.4e6 * criticalRatio(1.289) - 766_812.9)).toBeLessThan(0.01));
  it('γ 1.289 at 473 K: critical temperature 413.280 908 69 K', () =>
    expect(Math.abs(473 * criticalRatio(1.289) ** (0.289 / 1.289) - 413.28090869)).toBeLessThan(1e-8));
  it('γ 1.11 from 670 kPa: into 532 kPa not choked, into 101 kPa choked', () => {
    expect(532 / 670).toBeGreaterThan(criticalRatio(1.11));
    expect(101 / 670).toBeLessThan(criticalRatio(1.11));
  });
});
