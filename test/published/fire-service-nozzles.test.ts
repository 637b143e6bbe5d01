import { boreOf, jetReaction } from '../../src/driven/nozzle.js';
import { near, published } from '../support/published.js';

const gallonPerMinute = 3.785411784e-3 / 60;
const psi = 6894.757293;

published('fire-service hydraulics, smooth-bore tips')(
  'bore from the tabulated flow at 50 psi, C 0.99, in',
  'from memory',
  () =>
    // the tables round the flow to a gallon
    (
      [
        [209, 1],
        [265, 1.125],
        [327, 1.25],
      ] as const
    ).map(([gpm, inches]) =>
      near(`${gpm} gal/min`, boreOf(gpm * gallonPerMinute, 50 * psi, 998.2, 0.99) / 25.4, inches, 0.002),
    ),
);

published('fire-service hydraulics, nozzle reaction 1.57·d²·p')('lbf', 'from memory', () =>
  (
    [
      [1, 50, 209],
      [1.125, 50, 265],
      [1.25, 50, 327],
    ] as const
  ).map(([inches, pressure, gpm]) => {
    const lbf = 1.57 * inches ** 2 * pressure;
    return near(
      `${inches} in at ${pressure} psi`,
      jetReaction(gpm * gallonPerMinute, pressure * psi, 998.2) / 4.4482216,
      lbf,
      0.015 * lbf,
    );
  }),
);
