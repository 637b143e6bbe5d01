import { boilingPressure, saturation, waterDensity, waterViscosity } from '../../src/driven/water.js';
import { near, published } from '../support/published.js';

published('IAPWS-IF97, table 35: saturation pressure')(
  'the three verification values to nine figures, MPa',
  'from memory',
  () =>
    (
      [
        [300, 0.353658941e-2],
        [500, 0.263889776e1],
        [600, 0.123443146e2],
      ] as const
    ).map(([kelvin, mpa]) => near(`${kelvin} K`, saturation(kelvin) / 1e6, mpa, 5e-9 * mpa)),
);

published('steam tables (IAPWS-95)')('pressure at which water boils, kPa', 'from memory', () =>
  (
    [
      [10, 1.2282],
      [20, 2.3393],
      [30, 4.247],
      [40, 7.3849],
      [50, 12.352],
      [60, 19.946],
      [80, 47.414],
      [100, 101.42],
    ] as const
  ).map(([t, kPa]) => near(`${t} °C`, boilingPressure(t) / 1000, kPa, 1.5e-4 * kPa)),
);

published('CRC Handbook of Chemistry and Physics, density of water')('kg/m³', 'from memory', () =>
  (
    [
      [4, 999.97],
      [10, 999.7],
      [20, 998.21],
      [25, 997.05],
      [30, 995.65],
      [40, 992.22],
      [50, 988.03],
      [60, 983.2],
      [80, 971.8],
      [100, 958.4],
    ] as const
  ).map(([t, rho]) => near(`${t} °C`, waterDensity(t), rho, t < 50 ? 0.008 : 0.05)),
);

published('IAPWS R12-08, viscosity of water at 0.1 MPa')('µPa·s', 'from memory', () =>
  (
    [
      [20, 1001.6],
      [25, 890],
      [30, 797.2],
      [40, 652.7],
      [50, 546.5],
      [60, 466],
    ] as const
  ).map(([t, mu]) => near(`${t} °C`, waterViscosity(t) * 1e6, mu, 0.1)),
);
