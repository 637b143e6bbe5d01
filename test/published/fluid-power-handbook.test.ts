import {
  hoseSafety,
  hydraulicPower,
  lineSpeeds,
  ramAreas,
  ramForce,
  strokeTime,
} from '../../src/driven/ram.js';
import { between, near, published, same } from '../support/published.js';

const inch = 0.0254;
const psi = 6894.757293;
const gallonPerMinute = 3.785411784e-3 / 60;
const ram = (boreIn: number) => ramAreas({ boreM: boreIn * inch, rodM: 1.25 * inch, strokeM: 24 * inch });
const handbook = published('fluid-power handbook, cylinders and pumps');

handbook('push of a cylinder at 1000 psi, lbf', 'from memory', () =>
  (
    [
      [1.5, 1767],
      [2, 3142],
      [2.5, 4909],
      [3, 7069],
      [3.5, 9621],
      [4, 12_566],
      [5, 19_635],
    ] as const
  ).map(([bore, lbf]) => near(`${bore} in`, ramForce(ram(bore).out, 1000 * psi) / 4.4482216, lbf, 0.6)),
);

handbook('pull of a 3 in cylinder with a rod of 1 1/4 in at 1000 psi, lbf', 'from memory, recomputed', () => [
  near('lbf', ramForce(ram(3).back, 1000 * psi) / 4.4482216, 5841, 1),
]);

handbook('pump input: gal/min·psi/(1714·η), hp', 'from memory', () =>
  (
    [
      [11, 2500, 0.85],
      [5, 2000, 0.85],
      [16, 3000, 1],
    ] as const
  ).map(([gpm, pressure, eta]) => {
    const hp = (gpm * pressure) / (1714 * eta);
    return near(
      `${gpm} gal/min at ${pressure} psi`,
      hydraulicPower(gpm * gallonPerMinute, pressure * psi, eta) / 745.699872,
      hp,
      5e-4 * hp,
    );
  }),
);

handbook('piston speed: 19.25·gal/min/in², in/s ÷ 5', 'from memory', () =>
  (
    [
      [4, 11],
      [3, 8],
    ] as const
  ).map(([bore, gpm]) => {
    const inchesPerSecond = (231 * gpm) / (60 * (Math.PI / 4) * bore ** 2);
    return near(
      `${bore} in`,
      24 / strokeTime(ram(bore).out, 24 * inch, gpm * gallonPerMinute),
      inchesPerSecond,
      1e-6,
    );
  }),
);

handbook('speeds that oil lines are laid out for, ft/s', 'common practice', () => [
  ...between('suction', lineSpeeds.suction / 0.3048, 2, 4),
  ...between('return', lineSpeeds.return / 0.3048, 8, 12),
  ...between('pressure', lineSpeeds.pressure / 0.3048, 15, 25),
]);

published('SAE J517, hydraulic hose')('burst over working pressure', 'from memory', () => [
  same('ratio', hoseSafety, 4),
]);
