import { jetReaction, nozzleFlow, nozzleNumber, nozzlePressure } from '../../src/driven/nozzle.js';
import { near, published } from '../support/published.js';

const chart = published('pressure-washer nozzle charts, flow at 4000 psi');

chart('gal/min of a numbered nozzle', 'from memory', () =>
  (
    [
      [2, 1000, 1],
      [3, 1000, 1.5],
      [4, 1000, 2],
      [3, 2000, 2.12],
      [4, 2000, 2.83],
      [3, 3000, 2.6],
      [4, 3000, 3.46],
      [5, 3000, 4.33],
      [5.5, 4000, 5.5],
    ] as const
  ).map(([number, psi, gpm]) => near(`${number} at ${psi} psi`, nozzleFlow(number, psi), gpm, 6e-3)),
);

chart('the number that a pump wants', 'from memory', () => [
  near('3 gal/min at 3000 psi', nozzleNumber(3, 3000), 3.46, 6e-3),
  near('4 gal/min at 4000 psi', nozzleNumber(4, 4000), 4, 1e-12),
  near('2.5 gal/min at 2778 psi', nozzlePressure(3, 2.5), 2778, 1),
]);

published('washer makers’ gun reaction, 0.0526·gal/min·√psi')('lbf', 'from memory', () =>
  (
    [
      [4, 3000],
      [3, 2500],
      [5, 4000],
    ] as const
  ).map(([gpm, psi]) => {
    const lbf = 0.0526 * gpm * Math.sqrt(psi);
    const newtons = jetReaction((gpm * 3.785411784e-3) / 60, psi * 6894.757293, 998.2);
    return near(`${gpm} gal/min at ${psi} psi`, newtons / 4.4482216, lbf, 2e-3 * lbf);
  }),
);
