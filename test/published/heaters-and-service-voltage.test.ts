import { drawnPower, serviceRange, voltageRegulation } from '../../src/driven/electric.js';
import { near, published } from '../support/published.js';

published('heater tables, power at another voltage')('part of the plate’s power', 'from memory', () =>
  (
    [
      [240, 208, 0.75],
      [240, 230, 0.92],
      [240, 220, 0.84],
      [120, 110, 0.84],
      [120, 115, 0.92],
      [277, 240, 0.75],
    ] as const
  ).map(([plate, at, part]) =>
    near(`${plate} V on ${at} V`, drawnPower({ watts: 1, volts: plate }, at), part, 5e-3),
  ),
);

published('ANSI C84.1, range A')('service voltage, V', 'from memory', () => [
  near('least of 120', 120 * serviceRange.least, 114, 1e-9),
  near('most of 120', 120 * serviceRange.most, 126, 1e-9),
  near('least of 240', 240 * serviceRange.least, 228, 1e-9),
  near('most of 240', 240 * serviceRange.most, 252, 1e-9),
]);

published('electric machines textbooks, voltage regulation')(
  'a generator of 125 V without load and 118 V loaded',
  'from memory, recomputed',
  () => [near('part', voltageRegulation(125, 118), 0.0593, 5e-5)],
);
