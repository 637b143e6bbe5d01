import { criticalRatio, flowFunction } from '../../src/engine/orifice.js';
import { near, published, same } from '../support/published.js';

/** 0.001 m² from 1 MPa and 360 K, R 287: ṁ = A·p0/√(R·T0)·φ. */
const kgPerS = (toPa: number) => ((0.001 * 1e6) / Math.sqrt(287 * 360)) * flowFunction(toPa / 1e6);

published('Fundamentals of Engineering Thermodynamics')(
  'example 9.14, kg/s',
  'from memory, recomputed',
  () => [
    near('into 500 kPa, choked', kgPerS(500e3), 2.13, 0.005),
    near('into 784 kPa, Mach 0.6', kgPerS(784e3), 1.79, 0.005),
  ],
);

const library = published('documentation of a public fluid-mechanics library');
library('critical pressure and temperature', 'seen', () => [
  near('80 psig chokes into anything under, psig', 94.696 * criticalRatio(1.4) - 14.696, 35.3, 0.05),
  near('γ 1.289 at 1.4 MPa, Pa', 1.4e6 * criticalRatio(1.289), 766_812.9, 0.01),
  near('γ 1.289 at 473 K, K', 473 * criticalRatio(1.289) ** (0.289 / 1.289), 413.28090869, 1e-8),
]);
library('γ 1.11 from 670 kPa: not choked into 532 kPa, choked into 101 kPa', 'seen', () => [
  same('532 kPa', 532 / 670 > criticalRatio(1.11), true),
  same('101 kPa', 101 / 670 < criticalRatio(1.11), true),
]);

const naca = published('NACA Report 1135, tables of compressible flow');
naca('the sonic ratios of air, γ 1.4', 'from memory, recomputed', () => [
  near('p*/p0', criticalRatio(1.4), 0.5283, 5e-5),
  near('T*/T0', criticalRatio(1.4) ** (0.4 / 1.4), 0.8333, 5e-5),
  near('ρ*/ρ0', criticalRatio(1.4) ** (1 / 1.4), 0.6339, 5e-5),
]);

/**
 * Subsonic rows: Mach number, p/p0 and A/A*. A stream of a given mass flow needs A/A* times the sonic area, so the
 * flow function at p/p0 is the sonic one over A/A*.
 */
naca('area over sonic area at p/p0 of a subsonic stream, γ 1.4', 'from memory, recomputed', () =>
  (
    [
      [0.1, 0.993, 5.8218],
      [0.2, 0.9725, 2.9635],
      [0.3, 0.9395, 2.0351],
      [0.4, 0.8956, 1.5901],
      [0.5, 0.843, 1.3398],
      [0.6, 0.784, 1.1882],
      [0.7, 0.7209, 1.0944],
      [0.8, 0.656, 1.0382],
      [0.9, 0.5913, 1.0089],
    ] as const
  ).map(([mach, ratio, area]) => {
    // the printed p/p0 is rounded to four places: near Mach 0 the flow hangs on 1 − p/p0
    const slack = 5e-5 / (1 - ratio);
    return near(`Mach ${mach}`, flowFunction(0.1) / flowFunction(ratio), area, (slack + 5e-5) * area);
  }),
);
