import { describe, expect, it } from 'vitest';
import { burnedPart } from '../../src/engine/firing/burn.js';
import { automotiveFriction } from '../../src/engine/firing/friction.js';
import { stoichiometricAir } from '../../src/engine/fuel.js';
import { cylinderVolumeCc, pistonTravelMm } from '../../src/engine/slider-crank.js';
import { meanPistonSpeed } from '../../src/engine/speeds.js';
import { hohenbergCoefficient } from '../../src/engine/wall-heat.js';

describe('Internal Combustion Engine Fundamentals 1988', () => {
  it('eq. 3.6, from memory: 14.6 for CH1.87, 15.13 for isooctane, 9.00 for ethanol', () => {
    expect(Math.abs(stoichiometricAir(1.87) - 14.6)).toBeLessThan(0.05);
    expect(Math.abs(stoichiometricAir(2.25) - 15.13)).toBeLessThan(0.005);
    expect(Math.abs(stoichiometricAir(3, 0.5) - 9)).toBeLessThan(0.005);
  });

  it('eq. 2.6: ratio 8, rod over throw 3.5, 90°: 5.0106 clearance volumes (computed from the printed form)', () => {
    const crank = { boreMm: 65, strokeMm: 62, rodMm: 108.5 };
    expect(cylinderVolumeCc(crank, 8, 90) / cylinderVolumeCc(crank, 8, 0)).toBeCloseTo(5.0106, 4);
  });

  it('Hohenberg’s form (SAE 790825) with constants from memory: 818 W/(m²·K)', () => {
    const h = hohenbergCoefficient({ volumeM3: 30e-6, bar: 20, kelvin: 1500, pistonSpeed: 7.44 });
    expect(Math.abs(h - 818)).toBeLessThan(0.5);
  });

  describe('Wiebe’s burned part, §9.2.2, constants a 5 and m 2 from memory', () => {
    it.each([
      [0.25, 0.07515],
      [0.5, 0.46474],
      [0.75, 0.87869],
      [1, 0.99326],
    ])('%d of the duration: %d', (part, burned) =>
      expect(Math.abs(burnedPart(part) - burned)).toBeLessThan(5e-6),
    );
  });

  describe('friction, eq. 13.6, automotive at full throttle, coefficients from memory; small air-cooled singles not covered', () => {
    it.each([
      [1800, 1.402],
      [3000, 1.87],
      [3600, 2.158],
    ])('%d rpm: %d bar', (rpm, bar) =>
      expect(Math.abs(automotiveFriction(rpm) / 1e5 - bar)).toBeLessThan(5e-4),
    );
  });

  describe('slider-crank, eq. 2.5: travel over the throw at 30, 60, 90, 120, 150 and 180° (computed from the printed form)', () => {
    it.each([
      [3, [0.17593, 0.62772, 1.17157, 1.62772, 1.90799, 2]],
      [3.5, [0.16987, 0.60884, 1.1459, 1.60884, 1.90192, 2]],
      [4, [0.16535, 0.59488, 1.12702, 1.59488, 1.8974, 2]],
    ] as const)('rod over throw %d', (rodOverThrow, printed) => {
      const crank = { strokeMm: 62, rodMm: 31 * rodOverThrow };
      for (const [i, travel] of printed.entries())
        expect(Math.abs(pistonTravelMm(crank, 30 * (i + 1)) / 31 - travel)).toBeLessThan(6e-6);
    });
  });

  it('mean piston speed, eq. 2.9: 62 mm at 3600 rpm is 7.44 m/s', () =>
    expect(Math.abs(meanPistonSpeed(62, 3600) - 7.44)).toBeLessThan(0.005));
});
