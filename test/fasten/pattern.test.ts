import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkOrder, tighteningOrder } from '../../src/fasten/pattern.js';
import { apart, fitCircle } from '../../src/fasten/plane.js';
import { crossByRule, legacyCrossPatterns } from '../../src/fasten/round-pattern.js';
import type { Point } from '../../src/worksheet/index.js';

const seed = { seed: 20_240_604 };
const flange = (n: number, radiusMm = 50): Point[] =>
  Array.from({ length: n }, (_, i) => ({
    xMm: radiusMm * Math.cos((2 * Math.PI * i) / n),
    yMm: radiusMm * Math.sin((2 * Math.PI * i) / n),
  }));
const rows = (columns: number, pitchMm = 40, widthMm = 60): Point[] =>
  [widthMm / 2, -widthMm / 2].flatMap((yMm) =>
    Array.from({ length: columns }, (_, i) => ({ xMm: i * pitchMm, yMm })),
  );
const oval: Point[] = flange(8).map(({ xMm, yMm }) => ({ xMm: 1.3 * xMm, yMm: 0.8 * yMm }));
const shapes = [...[4, 5, 6, 7, 8, 10, 12, 16].map((n) => flange(n)), rows(3), rows(4), rows(5), oval];

interface Motion {
  readonly turnRad: number;
  readonly scale: number;
  readonly mirrored: boolean;
  readonly dxMm: number;
  readonly dyMm: number;
}
const motion = fc.record({
  turnRad: fc.double({ min: 0, max: 6.28, noNaN: true }),
  scale: fc.double({ min: 0.2, max: 5, noNaN: true }),
  mirrored: fc.boolean(),
  dxMm: fc.double({ min: -500, max: 500, noNaN: true }),
  dyMm: fc.double({ min: -500, max: 500, noNaN: true }),
});
const move = (points: readonly Point[], { turnRad, scale, mirrored, dxMm, dyMm }: Motion): Point[] =>
  points.map(({ xMm, yMm }) => {
    const [x, y] = [mirrored ? -xMm : xMm, yMm];
    return {
      xMm: scale * (x * Math.cos(turnRad) - y * Math.sin(turnRad)) + dxMm,
      yMm: scale * (x * Math.sin(turnRad) + y * Math.cos(turnRad)) + dyMm,
    };
  });
const stepAngles = (points: readonly Point[], order: readonly number[]): number[] => {
  const angle = (hole: number) => Math.atan2(points[hole - 1]!.yMm, points[hole - 1]!.xMm);
  return order.slice(1).map((hole, i) => (apart(angle(hole), angle(order[i]!)) * 180) / Math.PI);
};

describe('laws of every pattern', () => {
  test('each hole comes once, in the order and in the round', () => {
    const scattered = fc.array(
      fc.record({ xMm: fc.integer({ min: -100, max: 100 }), yMm: fc.integer({ min: -100, max: 100 }) }),
      {
        minLength: 1,
        maxLength: 24,
      },
    );
    fc.assert(
      fc.property(scattered, (points) => {
        const places = [...new Map(points.map((p) => [`${p.xMm},${p.yMm}`, p])).values()];
        const all = places.map((_, i) => i + 1);
        const { order, around } = tighteningOrder(places);
        expect([...order].sort((a, b) => a - b)).toEqual(all);
        expect([...around].sort((a, b) => a - b)).toEqual(all);
      }),
      { ...seed, numRuns: 300 },
    );
  });

  test('turning, mirroring, moving and scaling the face change neither the kind of pattern nor the order', () => {
    fc.assert(
      fc.property(fc.constantFrom(...shapes), motion, (points, how) => {
        const before = tighteningOrder(points);
        const after = tighteningOrder(move(points, how));
        expect(after.rule).toBe(before.rule);
        expect(after.order).toEqual(before.order);
        expect(after.around).toEqual(before.around);
      }),
      { ...seed, numRuns: 400 },
    );
  });

  test('numbering the holes otherwise leaves the kind of pattern', () => {
    fc.assert(
      fc.property(fc.constantFrom(...shapes), fc.integer({ min: 1, max: 1e6 }), (points, mix) => {
        const shuffled = points
          .map((point, i) => ({ point, key: ((i + 1) * mix * 7919) % 104_729 }))
          .sort((a, b) => a.key - b.key)
          .map(({ point }) => point);
        expect(tighteningOrder(shuffled).rule).toBe(tighteningOrder(points).rule);
      }),
      seed,
    );
  });
});

describe('round flanges', () => {
  test('the order goes by the place of the holes, not by how they were numbered', () => {
    const points = flange(8);
    // the same face, numbered crosswise: 1 and 2 opposite, and so on
    const crosswise = [0, 4, 2, 6, 1, 5, 3, 7].map((i) => points[i]!);
    expect(tighteningOrder(crosswise).order).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  test('it begins where one says, and runs in the direction of the numbers', () => {
    expect(tighteningOrder(flange(8), { start: 3 }).order).toEqual([3, 7, 1, 5, 2, 6, 8, 4]);
    expect(tighteningOrder(flange(8), { start: 3 }).around).toEqual([3, 2, 1, 8, 7, 6, 5, 4]);
    expect(tighteningOrder(flange(8)).around).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  test.each([4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 17, 18, 19, 21, 22, 23, 24])(
    'with %i bolts each lies at least 85° from the one before',
    (n) => {
      const points = flange(n);
      expect(Math.min(...stepAngles(points, tighteningOrder(points).order))).toBeGreaterThan(85);
    },
  );

  test('the legacy tables for 16 and 20 bolts come nearer once between rounds: 67 and 36°; the rule would not', () => {
    expect(Math.min(...stepAngles(flange(16), legacyCrossPatterns[16]!))).toBeCloseTo(67.5, 6);
    expect(Math.min(...stepAngles(flange(20), legacyCrossPatterns[20]!))).toBeCloseTo(36, 6);
    for (const n of [16, 20]) {
      const angles = Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n);
      expect(
        Math.min(
          ...stepAngles(
            flange(n),
            crossByRule(angles).map((i) => i + 1),
          ),
        ),
      ).toBeCloseTo(90, 6);
    }
  });

  test('five bolts give the star', () => {
    expect(tighteningOrder(flange(5)).order).toEqual([1, 3, 5, 2, 4]);
  });

  test('six bolts: opposite pairs, then the next pair (common practice)', () => {
    expect(tighteningOrder(flange(6)).order).toEqual([1, 4, 2, 5, 3, 6]);
  });

  test('holes measured a little off their circle change nothing', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(4, 6, 8, 12),
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 24, maxLength: 24 }),
        (n, noise) => {
          const tapped = flange(n).map(({ xMm, yMm }, i) => ({
            xMm: xMm + noise[2 * i]!,
            yMm: yMm + noise[2 * i + 1]!,
          }));
          expect(tighteningOrder(tapped).order).toEqual(tighteningOrder(flange(n)).order);
        },
      ),
      seed,
    );
  });

  test('a flange with one hole left out is round, uneven, and still crosses over', () => {
    const seven = flange(8).slice(0, 7);
    const found = tighteningOrder(seven);
    expect(found.rule).toBe('round cross pattern');
    expect(found.why).toMatch(/unevenly/);
    expect(Math.min(...stepAngles(seven, found.order))).toBeGreaterThanOrEqual(90 - 1e-9);
  });

  test('holes along an arc are no flange', () => {
    expect(tighteningOrder(flange(12).slice(0, 5)).rule).not.toBe('round cross pattern');
  });

  test('the circle found has the radius drilled, and no scatter', () => {
    const circle = fitCircle(flange(7, 42).map(({ xMm, yMm }) => ({ xMm: xMm + 300, yMm: yMm - 80 })))!;
    expect(circle.radiusMm).toBeCloseTo(42, 9);
    expect(circle.center.xMm).toBeCloseTo(300, 9);
    expect(circle.rmsMm).toBeLessThan(1e-9);
    expect(
      fitCircle([
        { xMm: 0, yMm: 0 },
        { xMm: 1, yMm: 1 },
        { xMm: 2, yMm: 2 },
      ]),
    ).toBeUndefined();
  });
});

describe('heads and covers', () => {
  test('two rows of five: center first, then outward, crossing over (common practice)', () => {
    expect(tighteningOrder(rows(5))).toMatchObject({
      order: [3, 8, 2, 9, 7, 4, 6, 5, 1, 10],
      rule: 'center-out crosswise',
    });
  });

  test('no hole is opened while one nearer the center, by more than a twentieth of the pattern, is left', () => {
    for (const points of [rows(3), rows(4), rows(5), rows(7, 35, 50), oval]) {
      const { order } = tighteningOrder(points);
      const middle = points.reduce(
        (s, p) => ({ xMm: s.xMm + p.xMm / points.length, yMm: s.yMm + p.yMm / points.length }),
        { xMm: 0, yMm: 0 },
      );
      const out = (hole: number) =>
        Math.hypot(points[hole - 1]!.xMm - middle.xMm, points[hole - 1]!.yMm - middle.yMm);
      const size = Math.max(...points.map((_, i) => out(i + 1)));
      for (let i = 0; i < order.length; i += 2) {
        const nearest = Math.min(...order.slice(i).map(out));
        expect(out(order[i]!)).toBeLessThanOrEqual(nearest + 0.05 * size + 1e-9);
      }
    }
  });

  test('in two rows each pair lies across the center', () => {
    for (const columns of [2, 3, 4, 5, 6]) {
      const points = rows(columns, 50, 60);
      const { order, rule } = tighteningOrder(points);
      if (rule !== 'center-out crosswise') continue;
      const middleMm = ((columns - 1) * 50) / 2;
      for (let i = 0; i < order.length; i += 2) {
        const [a, b] = [points[order[i]! - 1]!, points[order[i + 1]! - 1]!];
        expect(a.xMm + b.xMm).toBeCloseTo(2 * middleMm, 9);
        expect(a.yMm + b.yMm).toBeCloseTo(0, 9);
      }
    }
  });

  test('a hole across the center but far out waits for the nearer ones', () => {
    const cover = [
      { xMm: 0, yMm: 20 },
      { xMm: 0, yMm: -35 },
      { xMm: 30, yMm: 7.5 },
      { xMm: -30, yMm: 7.5 },
    ];
    expect(tighteningOrder(cover)).toMatchObject({ order: [1, 3, 4, 2], rule: 'center-out crosswise' });
  });

  test('an oval ring of eight crosses over and begins at its narrow waist', () => {
    const { order, rule } = tighteningOrder(oval);
    expect(rule).toBe('center-out crosswise');
    expect(order.slice(0, 2)).toEqual([3, 7]);
    expect(order.slice(-2).sort()).toEqual([1, 5]);
  });

  test('a long rectangle of four is crossed, a square of four is round', () => {
    const long = [0, 200].flatMap((xMm) => [0, 40].map((yMm) => ({ xMm, yMm })));
    expect(tighteningOrder(long)).toMatchObject({ rule: 'center-out crosswise', order: [1, 4, 2, 3] });
    expect(tighteningOrder(flange(4)).rule).toBe('round cross pattern');
  });
});

describe('few holes and odd ones', () => {
  const at = (...places: readonly (readonly [number, number])[]) =>
    places.map(([xMm, yMm]) => ({ xMm, yMm }));

  test('one, two and three bolts', () => {
    expect(tighteningOrder(at([5, 5]))).toMatchObject({ order: [1], rule: 'single bolt' });
    expect(tighteningOrder(at([0, 0], [40, 0]))).toMatchObject({ order: [1, 2], rule: 'straight pair' });
    expect(tighteningOrder(flange(3))).toMatchObject({ order: [1, 2, 3], rule: 'three in turn' });
  });

  test('a line goes from the middle out, side to side', () => {
    expect(tighteningOrder(at([0, 0], [10, 10], [20, 20]))).toMatchObject({
      order: [2, 1, 3],
      rule: 'straight line, center-out',
    });
    const line = at([0, 0], [10, 0], [20, 0], [30, 0], [40, 0]);
    expect(tighteningOrder(line).order).toEqual([3, 2, 4, 1, 5]);
    expect(tighteningOrder(at([0, 0], [10, 0.1], [20, -0.1], [30, 0.1])).rule).toBe(
      'straight line, center-out',
    );
  });

  test('no hole, a hole without a place, two at one place and a start that is none are refused by name', () => {
    expect(() => tighteningOrder([])).toThrow(expect.objectContaining({ field: 'holes' }));
    expect(() => tighteningOrder(at([0, 0], [Number.NaN, 1]))).toThrow(/hole 2 has no place/);
    expect(() => tighteningOrder(at([0, 0], [9, 9], [0, 0]))).toThrow(/1 and 3 are at the same place/);
    expect(() => tighteningOrder(flange(6), { start: 7 })).toThrow(/from 1 to 6; 7/);
    expect(() => tighteningOrder(flange(6), { start: 1.5 })).toThrow(
      expect.objectContaining({ field: 'start' }),
    );
  });
});

describe("a maker's sequence", () => {
  test('one that names each hole once stands as it is', () => {
    expect(checkOrder([3, 1, 2], 3)).toEqual([3, 1, 2]);
  });

  test('holes left out, named twice or not there are told apart', () => {
    expect(() => checkOrder([1, 2, 2], 4)).toThrow(/2 named more than once; 3, 4 left out/);
    expect(() => checkOrder([1, 5, 2, 3], 4)).toThrow(/5 is no hole of 1 to 4; 4 left out/);
    expect(() => checkOrder([1, 2.5], 2)).toThrow(/2\.5 is no hole/);
    expect(() => checkOrder([], 1)).toThrow(expect.objectContaining({ field: 'order' }));
  });

  test('every order worked out here passes the same check', () => {
    for (const points of shapes) {
      expect(() => checkOrder(tighteningOrder(points).order, points.length)).not.toThrow();
    }
  });
});
