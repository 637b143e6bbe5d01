import { allowedUnbalance, balanceGrades, centrifugalForce } from '../../src/driven/balance.js';
import { near, published, same } from '../support/published.js';

const iso = published('ISO 21940-11:2016 (ISO 1940-1:2003), balance quality grades');

iso('grades that machines of our kind stand in, mm/s', 'from memory', () => [
  same('fans, flywheels, impellers', balanceGrades.G6_3.grade, 6.3),
  same('agricultural and crushing machines', balanceGrades.G16.grade, 16),
  same('electric rotors', balanceGrades.G2_5.grade, 2.5),
  same('wheels', balanceGrades.G40.grade, 40),
]);

// the figure of the standard is drawn in steps of the speed; its lines are the formula
iso(
  'permissible residual unbalance of one kilogram, µm, along the lines of its figure',
  'from memory, recomputed',
  () =>
    (
      [
        [6.3, 1000, 60.2],
        [6.3, 3000, 20.05],
        [6.3, 10_000, 6.02],
        [2.5, 1500, 15.9],
        [2.5, 3000, 7.96],
        [16, 1000, 153],
        [16, 3000, 50.9],
        [40, 1000, 382],
        [1, 3000, 3.18],
      ] as const
    ).map(([grade, rpm, um]) =>
      near(`G ${grade} at ${rpm} rpm`, allowedUnbalance(grade, { massKg: 1, rpm }), um, um * 2e-3),
    ),
);

published('balancing handbooks, U = 9549·G·m/n')(
  'a rotor of 40 kg at 3600 rpm',
  'from memory, recomputed',
  () => [
    near('G 6.3', allowedUnbalance(6.3, { massKg: 40, rpm: 3600 }), (9549 * 6.3 * 40) / 3600, 0.1),
    near('G 2.5', allowedUnbalance(2.5, { massKg: 40, rpm: 3600 }), (9549 * 2.5 * 40) / 3600, 0.05),
  ],
);

published('balancing handbooks, 6.015·G·W/n in ounce-inches')(
  'a rotor of 100 lb at 3600 rpm',
  'from memory',
  () => {
    const ounceInches = (grade: number) =>
      allowedUnbalance(grade, { massKg: 100 * 0.45359237, rpm: 3600 }) / (28.349523125 * 25.4);
    return [near('G 2.5', ounceInches(2.5), 0.418, 5e-4), near('G 6.3', ounceInches(6.3), 1.053, 1e-3)];
  },
);

published('balancing handbooks, F = 1.77·(rpm/1000)²·oz·in')(
  'force of one ounce-inch, lbf',
  'from memory',
  () =>
    (
      [
        [1000, 1.77],
        [3000, 15.9],
        [3600, 22.9],
      ] as const
    ).map(([rpm, lbf]) =>
      near(`${rpm} rpm`, centrifugalForce(28.349523125 * 25.4, rpm) / 4.4482216, lbf, 0.006 * lbf),
    ),
);
