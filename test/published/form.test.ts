import { describe, expect, it } from 'vitest';
import { flatness, roundness } from '../../src/gauge/index.js';

describe('flatness by the definitions of ISO 12781-1, own exact cases, calculated', () => {
  it('a saddle of ±h at the corners of a square is 2h by least squares and by minimum zone', () => {
    for (const h of [1, 0.05, 7]) {
      const points = [
        { x: 1, y: 1, z: h },
        { x: 1, y: -1, z: -h },
        { x: -1, y: -1, z: h },
        { x: -1, y: 1, z: -h },
      ];
      const { leastSquares, minimumZone } = flatness({ points, u: 0 });
      expect(leastSquares.peakToValley).toBeCloseTo(2 * h, 12);
      expect(minimumZone.width).toBeCloseTo(2 * h, 12);
    }
  });

  it('a 3 × 3 grid of 60 × 80 mm: 7.333 µm by least squares, 6.5 µm by minimum zone', () => {
    const z = [0, 2, -1, 3, 5, 1, -2, 4, 0];
    const points = z.map((height, i) => ({ x: 30 * Math.floor(i / 3), y: 40 * (i % 3), z: height }));
    const { leastSquares, minimumZone, above } = flatness({ points, u: 0 });
    expect(leastSquares.peakToValley.toFixed(3)).toBe('7.333');
    expect(minimumZone.width).toBeCloseTo(6.5, 12);
    expect(Math.max(...above)).toBeCloseTo(6.5, 12);
    expect(Math.min(...above)).toBe(0);
  });
});

describe('roundness by the formulas of ISO 4291, own case of eight radii, calculated', () => {
  const radii = [25, 25.004, 25.01, 25.006, 24.998, 24.996, 24.992, 24.997];
  const { leastSquares, minimumZone } = roundness({ radii, u: 0 });

  it('least-squares circle: a 0.000323, b 0.007505, R 25.000375, roundness 0.004172 mm', () => {
    expect(leastSquares.centerX.toFixed(6)).toBe('0.000323');
    expect(leastSquares.centerY.toFixed(6)).toBe('0.007505');
    expect(leastSquares.radius.toFixed(6)).toBe('25.000375');
    expect(leastSquares.roundness.toFixed(6)).toBe('0.004172');
  });

  it('minimum zone circles: 0.003950 mm', () => expect(minimumZone.roundness.toFixed(6)).toBe('0.003950'));
});
