import { viscosityAt, viscosityLine } from '../../src/engine/viscosity.js';
import { near, published } from '../support/published.js';

const line = (at40: number, at100: number) =>
  viscosityLine({ celsius: 40, mm2PerS: at40 }, { celsius: 100, mm2PerS: at100 });

const d341 = published('ASTM D341, viscosity over temperature');

// the example has T = t + 273: with 273.15 A and B are 0.05 % larger, and do not mix with its own
d341('a public worked example, 32 at 40 °C and 5.4 at 100 °C: A, B and 8.5 at 80 °C', 'seen', () => [
  near('80 °C', viscosityAt(line(32, 5.4), 80), 8.5, 0.05),
  near('A', line(32, 5.4).a, 9.5259, 6e-4 * 9.5259),
  near('B', line(32, 5.4).b, 3.7449, 6e-4 * 3.7449),
]);

d341('the same with T = t + 273.15, worked out apart', 'calculated', () => [
  near('A', line(32, 5.4).a, 9.53082, 5.1e-6),
  near('B', line(32, 5.4).b, 3.74658, 5.1e-6),
  near('80 °C', viscosityAt(line(32, 5.4), 80), 8.533, 5.1e-4),
]);

d341('100 at 40 °C and 11.1 at 100 °C at other temperatures, worked out apart', 'calculated', () =>
  (
    [
      [0, 1824, 0.6],
      [20, 341.8, 0.06],
      [60, 39.68, 0.006],
      [80, 19.47, 0.006],
      [120, 7.06, 0.006],
    ] as const
  ).map(([celsius, mm2PerS, half]) =>
    near(`${celsius} °C`, viscosityAt(line(100, 11.1), celsius), mm2PerS, half),
  ),
);

// the table's form has the constant 0.8, this one 0.7: they differ by up to 0.6 % there
published('a public table of viscosities over temperature')(
  '68 at 40 °C and 8.6 at 100 °C: 28.6455 at 60 °C',
  'seen',
  () => [near('60 °C', viscosityAt(line(68, 8.6), 60), 28.6455, 6e-3 * 28.6455)],
);
