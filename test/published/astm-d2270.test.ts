import { referenceViscosities, viscosityIndex } from '../../src/engine/viscosity-index.js';
import { near, published, same } from '../support/published.js';

const d2270 = published('ASTM D2270, viscosity index');

// coefficients stand in for the table: a unit or two in the last printed place
d2270('example 5.1.4: 73.30 and 8.86', 'seen', () => {
  const { l, h } = referenceViscosities(8.86);
  const { index, procedure } = viscosityIndex(73.3, 8.86);
  return [
    near('L', l, 119.94, 0.03),
    near('H', h, 69.48, 0.01),
    same('procedure', procedure, 'A'),
    near('index', index, 92.43, 0.05),
    same('reported', Math.round(index), 92),
  ];
});

d2270('example 6.1.4: 22.83 and 5.05', 'seen', () => {
  const { index, procedure } = viscosityIndex(22.83, 5.05);
  return [
    near('H', referenceViscosities(5.05).h, 28.97, 0.015),
    same('procedure', procedure, 'B'),
    near('index', index, 156.37, 0.1),
    same('reported', Math.round(index), 156),
  ];
});

d2270('53.47 and 7.80: H 57.31 and index 111; inputs partly seen', 'from memory, recomputed', () => [
  near('H', referenceViscosities(7.8).h, 57.31, 0.01),
  same('reported', Math.round(viscosityIndex(53.47, 7.8).index), 111),
]);

const rows = (table: readonly (readonly [number, number, number])[]) =>
  table.flatMap(([y, l, h]) => {
    const found = referenceViscosities(y);
    return [near(`L at ${y}`, found.l, l, 1e-3 * l), near(`H at ${y}`, found.h, h, 1e-3 * h)];
  });

d2270('rows of its table: viscosity at 100 °C, L, H', 'seen', () =>
  rows([
    [5, 40.23, 28.49],
    [10, 147.7, 82.87],
    [20, 493.2, 229.5],
  ]),
);

d2270('more rows of its table: viscosity at 100 °C, L, H', 'from memory', () =>
  rows([
    [2, 7.994, 6.394],
    [2.1, 8.64, 6.894],
    [2.2, 9.309, 7.41],
    [2.3, 10, 7.944],
    [2.4, 10.71, 8.496],
    [2.5, 11.45, 9.063],
    [2.6, 12.21, 9.647],
    [2.7, 13, 10.25],
    [2.8, 13.8, 10.87],
    [2.9, 14.63, 11.5],
    [3, 15.49, 12.15],
    [3.1, 16.36, 12.82],
    [3.2, 17.26, 13.51],
    [3.3, 18.18, 14.21],
    [3.4, 19.12, 14.93],
    [3.5, 20.09, 15.66],
    [3.6, 21.08, 16.42],
    [3.7, 22.09, 17.19],
    [3.8, 23.13, 17.97],
    [3.9, 24.19, 18.77],
    [4, 25.32, 19.56],
    [4.1, 26.5, 20.37],
    [4.2, 27.75, 21.21],
    [4.3, 29.07, 22.05],
    [4.4, 30.48, 22.92],
    [4.5, 31.96, 23.81],
    [4.6, 33.52, 24.71],
    [4.7, 35.13, 25.63],
    [4.8, 36.79, 26.57],
    [4.9, 38.5, 27.53],
    [5.1, 41.99, 29.46],
    [5.2, 43.76, 30.43],
    [5.3, 45.53, 31.4],
    [5.4, 47.31, 32.37],
    [5.5, 49.09, 33.34],
    [5.6, 50.87, 34.32],
    [5.7, 52.64, 35.29],
    [5.8, 54.42, 36.26],
    [5.9, 56.2, 37.23],
    [6, 57.97, 38.19],
    [6.1, 59.74, 39.17],
    [6.2, 61.52, 40.15],
    [6.3, 63.32, 41.13],
    [6.4, 65.18, 42.14],
    [6.5, 67.12, 43.18],
    [6.6, 69.16, 44.24],
    [6.7, 71.29, 45.33],
    [6.8, 73.48, 46.44],
    [6.9, 75.72, 47.51],
    [7, 78, 48.57],
  ]),
);

d2270('above 70 mm²/s: L = 0.8353 Y² + 14.67 Y − 216, H = 0.1684 Y² + 11.85 Y − 97, at 80', 'seen', () => [
  near('L', referenceViscosities(80).l, 6303.52, 5e-9),
  near('H', referenceViscosities(80).h, 1928.76, 5e-9),
]);

published('a public table of viscosity indices')('it cuts the decimals off', 'seen', () =>
  (
    [
      [30, 5.23, 104],
      [68, 8.6, 96],
      [70, 11.1, 150],
    ] as const
  ).map(([at40, at100, index]) =>
    same(`${at40} and ${at100}`, Math.floor(viscosityIndex(at40, at100).index), index),
  ),
);
