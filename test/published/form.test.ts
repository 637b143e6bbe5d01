import { flatness } from '../../src/gauge/flatness.js';
import { roundness } from '../../src/gauge/roundness.js';
import { near, published, same } from '../support/published.js';

const flat = published('definitions of ISO 12781-1, flatness');
flat(
  'a saddle of ±h at the corners of a square is 2h by least squares and by minimum zone',
  'calculated',
  () =>
    (
      [
        [1, 2],
        [0.05, 0.1],
        [7, 14],
      ] as const
    ).flatMap(([h, width]) => {
      const points = [
        { x: 1, y: 1, z: h },
        { x: 1, y: -1, z: -h },
        { x: -1, y: -1, z: h },
        { x: -1, y: 1, z: -h },
      ];
      const { leastSquares, minimumZone } = flatness({ points, u: 0 });
      return [
        near(`least squares, ${h}`, leastSquares.peakToValley, width, 5e-13),
        near(`minimum zone, ${h}`, minimumZone.width, width, 5e-13),
      ];
    }),
);

flat('a 3 × 3 grid of 60 × 80 mm: 7.333 µm by least squares, 6.5 µm by minimum zone', 'calculated', () => {
  const z = [0, 2, -1, 3, 5, 1, -2, 4, 0];
  const points = z.map((height, i) => ({ x: 30 * Math.floor(i / 3), y: 40 * (i % 3), z: height }));
  const { leastSquares, minimumZone, above } = flatness({ points, u: 0 });
  return [
    near('least squares', leastSquares.peakToValley, 7.333, 5e-4),
    near('minimum zone', minimumZone.width, 6.5, 5e-13),
    near('highest place', Math.max(...above), 6.5, 5e-13),
    same('lowest place', Math.min(...above), 0),
  ];
});

published('formulas of ISO 4291, roundness')('own case of eight radii, mm', 'calculated', () => {
  const radii = [25, 25.004, 25.01, 25.006, 24.998, 24.996, 24.992, 24.997];
  const { leastSquares, minimumZone } = roundness({ radii, u: 0 });
  return [
    near('a', leastSquares.centerX, 0.000323, 5.1e-7),
    near('b', leastSquares.centerY, 0.007505, 5.1e-7),
    near('R', leastSquares.radius, 25.000375, 5.1e-7),
    near('by least squares', leastSquares.roundness, 0.004172, 5.1e-7),
    near('by minimum zone', minimumZone.roundness, 0.00395, 5.1e-7),
  ];
});
