import { frictionFactor, headLoss } from '../../src/driven/pipe.js';
import { atSpeed } from '../../src/driven/pump.js';
import { near, published } from '../support/published.js';

const white = published('Fluid Mechanics, 7th ed., chapters 6 and 11');

white('friction factor of smooth pipes', 'from memory', () =>
  (
    [
      [4000, 0.0399],
      [1e4, 0.0309],
      [1e5, 0.018],
      [1e6, 0.0116],
      [1e7, 0.0081],
      [1e8, 0.0059],
    ] as const
  ).map(([re, f]) => near(`Re ${re}`, frictionFactor(re, 0), f, 6e-5)),
);

white('laminar flow: 64/Re', 'from memory', () => [
  near('Re 1000', frictionFactor(1000, 0), 0.064, 1e-12),
  near('Re 2000', frictionFactor(2000, 0), 0.032, 1e-12),
]);

white('example 6.7: oil through 500 m of 200 mm cast iron', 'from memory', () => [
  near('friction factor, read off a chart', frictionFactor(128_000, 0.0013), 0.0225, 4e-4),
  near(
    'head loss, m',
    headLoss({ diameterM: 0.2, flow: 0.2, density: 900, viscosity: 900 * 1e-5, roughnessM: 0.26e-3 }, 500),
    117,
    0.5,
  ),
]);

white('similarity rules for a pump at double speed', 'from memory', () => {
  const twice = atSpeed({ flow: 1, headM: 1, powerW: 1 }, 1800, 3600);
  return [
    near('flow', twice.flow, 2, 1e-12),
    near('head', twice.headM, 4, 1e-12),
    near('power', twice.powerW, 8, 1e-12),
  ];
});
