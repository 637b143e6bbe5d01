import { beltSlip } from '../../src/driven/belt.js';
import { near, published } from '../support/published.js';

const inch = 25.4;
/** Driven speed that a handbook prints for pulleys without slip: the slip that is worked out from it is none. */
const none = (d: number, D: number, rpm: number, driven: number) =>
  near(
    `${d} to ${D} in at ${rpm} rpm`,
    beltSlip({ oneMm: d * inch, otherMm: D * inch, oneRpm: rpm, otherRpm: driven }),
    0,
    // driven speeds are whole turns
    0.51 / driven,
  );

published('Machinery’s Handbook, pulley speeds')(
  'speed of the driven pulley, rpm, without slip',
  'from memory, recomputed',
  () => [
    none(3, 6, 1750, 875),
    none(4, 12, 1750, 583),
    none(5, 4, 1160, 1450),
    none(2.5, 7.5, 3450, 1150),
    none(3, 4, 3450, 2588),
    none(6, 8, 1140, 855),
  ],
);

published('belt makers’ service notes')('creep of a V-belt in order, 1 to 3 %', 'common practice', () =>
  [0.01, 0.02, 0.03].map((slip) =>
    near(
      `${slip}`,
      beltSlip({ oneMm: 100, otherMm: 200, oneRpm: 3000, otherRpm: 1500 * (1 - slip) }),
      slip,
      1e-12,
    ),
  ),
);
