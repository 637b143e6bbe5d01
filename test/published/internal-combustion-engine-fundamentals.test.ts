import { describe, expect, it } from 'vitest';
import {
  cylinderVolumeCc,
  hohenbergCoefficient,
  stoichiometricAir,
  wallHeatCoefficient,
} from '../../src/engine/index.js';

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

  it('Woschni’s form with constants from memory: 424.8 W/(m²·K)', () => {
    const h = wallHeatCoefficient({ boreM: 0.065, kPa: 2000, kelvin: 1500, pistonSpeed: 7.44, open: false });
    expect(Math.abs(h - 424.8)).toBeLessThan(0.05);
  });

  it('Hohenberg’s form (SAE 790825) with constants from memory: 818 W/(m²·K)', () => {
    const h = hohenbergCoefficient({ volumeM3: 30e-6, bar: 20, kelvin: 1500, pistonSpeed: 7.44 });
    expect(Math.abs(h - 818)).toBeLessThan(0.5);
  });
});
