import highsLoader, { type Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type FacePoint, fitLinear, flatness, roundness } from '../../src/gauge/index.js';
import { minimumZone, type ZoneReading } from '../../src/gauge/minimum-zone.js';
import { campaign } from '../support/campaign.js';
import { normals, times, uniform } from './seeded.js';

// The package is CommonJS: the types promise a namespace where Node hands over the function itself.
const loadHighs = highsLoader as unknown as () => Promise<Highs>;
let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

/** The narrowest zone as a linear program for an independent solver: minimize w, every residual within ±w/2. */
function byLinearProgram(readings: readonly ZoneReading[]): number {
  const term = (value: number, name: string) =>
    `${value < 0 ? '-' : '+'} ${Math.abs(value).toFixed(15)} ${name}`;
  const rows = readings.flatMap(({ at, z }, i) => {
    const surface = [term(at[0], 'a'), term(at[1], 'b'), term(at[2], 'c')].join(' ');
    return [
      ` u${i}: ${surface} + 0.5 w >= ${z.toFixed(15)}`,
      ` l${i}: ${surface} - 0.5 w <= ${z.toFixed(15)}`,
    ];
  });
  const program = [
    'Minimize',
    ' obj: w',
    'Subject To',
    ...rows,
    'Bounds',
    ' a free',
    ' b free',
    ' c free',
    'End',
  ];
  const solution = highs.solve(program.join('\n'), { presolve: 'off', solver: 'simplex' });
  expect(solution.Status).toBe('Optimal');
  return solution.ObjectiveValue;
}

/** Grids of 4 to 36 places, some jittered, with heights that are noisy, warped, twisted, stepped or rounded. */
function grid(seed: number): FacePoint[] {
  const draw = uniform(seed);
  const noise = normals(seed + 1_000_000);
  const [nx, ny] = [2 + Math.floor(draw() * 5), 2 + Math.floor(draw() * 5)];
  const [bow, twist, tilt, jitter] = [3 * noise(), 3 * noise(), 5 * noise(), seed % 3 === 0 ? 0.3 : 0];
  return times(nx * ny, (k) => {
    const x = (k % nx) + jitter * draw();
    const y = Math.floor(k / nx) + jitter * draw();
    const z = bow * (x - nx / 2) ** 2 + twist * x * y + tilt * x + noise();
    // every fourth grid is read in whole steps: many ties, many degenerate contacts
    return { x, y, z: seed % 4 === 0 ? Math.round(z) : z };
  });
}

const readingsOf = (points: readonly FacePoint[]): ZoneReading[] =>
  points.map(({ x, y, z }) => ({ at: [1, x, y], z }));

describe('the minimum zone of a face', () => {
  it('equals an independent linear program on seeded grids', () => {
    for (let seed = 1; seed <= campaign(60, 300); seed += 1) {
      const points = grid(seed);
      const { width } = flatness({ points, u: 0 }).minimumZone;
      const oracle = byLinearProgram(readingsOf(points));
      // the oracle's own feasibility tolerance is 1e-7
      const gap = Math.abs(width - oracle) / Math.max(1, oracle);
      expect(gap, `seed ${seed}`).toBeLessThan(1e-6);
    }
  });

  it('is never wider than the least-squares peak to valley, on the same grids', () => {
    for (let seed = 1; seed <= campaign(60, 300); seed += 1) {
      const { minimumZone: zone, leastSquares } = flatness({ points: grid(seed), u: 0 });
      expect(zone.width, `seed ${seed}`).toBeLessThanOrEqual(leastSquares.peakToValley * (1 + 1e-12) + 1e-12);
    }
  });

  it('proves itself: all readings inside, and the contacts forbid anything narrower', () => {
    for (let seed = 1; seed <= campaign(60, 300); seed += 1) {
      const readings = readingsOf(grid(seed));
      const { coefficients, width, contacts } = minimumZone(readings);
      const range = Math.max(...readings.map(({ z }) => Math.abs(z)));
      for (const { at, z } of readings) {
        const residual = z - at.reduce((sum, value, i) => sum + value * coefficients[i]!, 0);
        expect(Math.abs(residual)).toBeLessThanOrEqual(width / 2 + 1e-9 * range);
      }
      const total = (f: (r: ZoneReading) => number) =>
        contacts.reduce((sum, { index, side, weight }) => sum + side * weight * f(readings[index]!), 0);
      expect(contacts.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
      for (const i of [0, 1, 2]) expect(total(({ at }) => at[i]!)).toBeCloseTo(0, 8);
      expect(2 * total(({ z }) => z)).toBeCloseTo(width, 8);
    }
  });

  it('does not change when the part is tilted, lifted, turned over, or its points are shuffled', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const points = grid(seed);
      const width = flatness({ points, u: 0 }).minimumZone.width;
      const of = (change: (p: FacePoint) => FacePoint) =>
        flatness({ points: points.map(change), u: 0 }).minimumZone.width;
      expect(of((p) => ({ ...p, z: p.z + 3 * p.x - 7 * p.y + 11 }))).toBeCloseTo(width, 8);
      expect(of((p) => ({ ...p, z: -p.z }))).toBeCloseTo(width, 8);
      expect(of((p) => ({ x: p.y, y: -p.x, z: p.z }))).toBeCloseTo(width, 8);
      expect(flatness({ points: [...points].reverse(), u: 0 }).minimumZone.width).toBeCloseTo(width, 8);
    }
  });

  it('a point more never narrows the zone', () => {
    for (let seed = 1; seed <= campaign(20, 60); seed += 1) {
      const points = grid(seed);
      const more = [...points, { x: 1.37, y: 0.61, z: 4 * normals(seed)() }];
      expect(flatness({ points: more, u: 0 }).minimumZone.width).toBeGreaterThanOrEqual(
        flatness({ points, u: 0 }).minimumZone.width - 1e-9,
      );
    }
  });

  it('of a plane is nothing', () => {
    const points = times(9, (k) => ({ x: k % 3, y: Math.floor(k / 3), z: 2 * (k % 3) - Math.floor(k / 3) }));
    const { minimumZone: zone, leastSquares } = flatness({ points, u: 0 });
    expect(zone.width).toBeLessThan(1e-12);
    expect(leastSquares.peakToValley).toBeLessThan(1e-12);
    expect(flatness({ points: points.map((p) => ({ ...p, z: 5 })), u: 0 }).minimumZone.width).toBeLessThan(
      1e-12,
    );
  });

  it('stays exact for heights far from zero and for places in micrometers', () => {
    const points = grid(17);
    const far = points.map(({ x, y, z }) => ({ x: 1e6 + 1e5 * x, y: 1e5 * y, z: 1e4 + z }));
    expect(flatness({ points: far, u: 0 }).minimumZone.width).toBeCloseTo(
      flatness({ points, u: 0 }).minimumZone.width,
      7,
    );
  });

  it('refuses places on one line, and fewer than four', () => {
    const line = times(6, (i) => ({ x: i, y: 2 * i, z: i % 2 }));
    expect(() => flatness({ points: line, u: 0 })).toThrow('one line');
    expect(() => flatness({ points: line.slice(0, 3), u: 0 })).toThrow('at least 4');
    expect(() => flatness({ points: [...grid(1), { x: Number.NaN, y: 0, z: 0 }], u: 0 })).toThrow(
      'x must be a number',
    );
  });
});

describe('roundness', () => {
  const turn = (seed: number) => {
    const draw = normals(seed);
    const n = 5 + (seed % 20);
    const lobes = 2 + (seed % 4);
    return times(
      n,
      (i) =>
        25 +
        0.01 * Math.cos((2 * Math.PI * lobes * i) / n) +
        0.02 * Math.cos((2 * Math.PI * i) / n) +
        0.003 * draw(),
    );
  };

  it('by minimum zone is never more than by least squares, on seeded turns, and equals the linear program', () => {
    for (let seed = 1; seed <= campaign(60, 300); seed += 1) {
      const radii = turn(seed);
      const { leastSquares, minimumZone: zone } = roundness({ radii, u: 0 });
      expect(zone.roundness, `seed ${seed}`).toBeLessThanOrEqual(leastSquares.roundness + 1e-12);
      if (seed > 60) continue;
      const readings = radii.map((z, i): ZoneReading => {
        const angle = (2 * Math.PI * i) / radii.length;
        // scaled by a thousand, so that the oracle's tolerance stays small beside the zone
        return { at: [1, Math.cos(angle), Math.sin(angle)], z: 1000 * (z - 25) };
      });
      expect(Math.abs(1000 * zone.roundness - byLinearProgram(readings))).toBeLessThan(1e-5);
    }
  });

  it('does not see where the part was set up, nor which way it was turned', () => {
    const radii = turn(8);
    const { roundness: plain } = roundness({ radii, u: 0 }).minimumZone;
    const moved = radii.map((r, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [r * Math.cos(angle) + 0.1, r * Math.sin(angle) - 0.2] as const;
    });
    const elsewhere = roundness({
      radii: moved.map(([x, y]) => Math.hypot(x, y)),
      anglesDeg: moved.map(([x, y]) => (Math.atan2(y, x) * 180) / Math.PI),
      u: 0,
    });
    // to a thousandth of itself
    expect(Math.abs(elsewhere.minimumZone.roundness / plain - 1)).toBeLessThan(2e-3);
    expect(
      roundness({ radii: [...radii.slice(3), ...radii.slice(0, 3)], u: 0 }).minimumZone.roundness,
    ).toBeCloseTo(plain, 10);
  });

  it('at even angles has the center and radius of the sums 2Σx/n, 2Σy/n, Σr/n', () => {
    const radii = turn(5);
    const n = radii.length;
    const sum = (f: (r: number, angle: number) => number) =>
      radii.reduce((total, r, i) => total + f(r, (2 * Math.PI * i) / n), 0);
    const { leastSquares } = roundness({ radii, u: 0 });
    expect(leastSquares.centerX).toBeCloseTo((2 * sum((r, a) => r * Math.cos(a))) / n, 11);
    expect(leastSquares.centerY).toBeCloseTo((2 * sum((r, a) => r * Math.sin(a))) / n, 11);
    expect(leastSquares.radius).toBeCloseTo(sum((r) => r) / n, 11);
  });

  it.each([0.2, 0.5, 2])('of a true circle set up %d mm off center is nothing', (e) => {
    // it read 0.005 mm at half a millimeter: the fit was linear in the offset
    const radii = times(24, (i) => {
      const angle = (2 * Math.PI * i) / 24;
      return e * Math.cos(angle) + Math.sqrt(625 - (e * Math.sin(angle)) ** 2);
    });
    const found = roundness({ radii, u: 0 });
    for (const circle of [found.minimumZone, found.leastSquares]) {
      expect(circle.roundness).toBeLessThan(1e-9);
      expect(circle.centerX).toBeCloseTo(e, 9);
      expect(circle.radius).toBeCloseTo(25, 9);
    }
  });

  it('of three lobes read at four places does not pass: they cannot be seen there', () => {
    const lobed = (n: number) => times(n, (i) => 25 + 0.02 * Math.cos((6 * Math.PI * i) / n + 0.3));
    const four = roundness({ radii: lobed(4), u: 1e-5, max: 0.03 });
    expect(four.minimumZone.roundness).toBeLessThan(0.02);
    expect(four.decision!.verdict).toBe('cannot-decide');
    expect(four.decision!.why).toMatch(/cannot see three lobes/);
    expect(four.mostLobes).toBe(1);
    const twelve = roundness({ radii: lobed(12), u: 1e-5, max: 0.03 });
    expect(twelve.mostLobes).toBe(5);
    expect(twelve.decision!.verdict).toBe('fail');
    expect(roundness({ radii: lobed(12), u: 1e-5, max: 0.06 }).decision!.verdict).toBe('pass');
  });

  it('refuses a part far off center, odd angles and impossible radii', () => {
    const off = times(12, (i) => 25 + 16 * Math.cos((2 * Math.PI * i) / 12));
    expect(() => roundness({ radii: off, u: 0 })).toThrow('off center');
    expect(() => roundness({ radii: [1, 1, 1, 1], anglesDeg: [0, 90], u: 0 })).toThrow('angles');
    expect(() => roundness({ radii: [1, 1, -1, 1], u: 0 })).toThrow('above 0');
  });
});

describe('least squares', () => {
  it('leaves residuals square to every column', () => {
    const draw = normals(3);
    const design = times(40, () => [1, draw(), 1000 * draw(), 1e-3 * draw()]);
    const y = times(40, () => 10 * draw());
    const { residuals, degreesOfFreedom } = fitLinear(design, y);
    expect(degreesOfFreedom).toBe(36);
    for (const j of [0, 1, 2, 3]) {
      const scale = Math.hypot(...design.map((row) => row[j]!)) * Math.hypot(...y);
      expect(Math.abs(residuals.reduce((sum, r, i) => sum + r * design[i]![j]!, 0)) / scale).toBeLessThan(
        1e-14,
      );
    }
  });

  it('has the standard errors of the textbook for a straight line', () => {
    const x = [0, 1, 2, 3];
    const { coefficients, standardErrors, residualSd } = fitLinear(
      x.map((v) => [1, v]),
      [1, 3, 4, 8],
    );
    expect(coefficients[1]).toBeCloseTo(2.2, 12);
    expect(standardErrors[1]).toBeCloseTo(residualSd / Math.sqrt(5), 12);
  });

  it('refuses columns that say the same, too few readings, uneven rows and NaN', () => {
    expect(() =>
      fitLinear(
        times(5, (i) => [1, i, 2 * i]),
        times(5, (i) => i),
      ),
    ).toThrow('two columns say the same');
    expect(() => fitLinear([[1, 2]], [1])).toThrow('cannot fix 2 unknowns');
    expect(() => fitLinear([[1, 2], [1]], [1, 2])).toThrow('differ in length');
    expect(() => fitLinear([[1], [1]], [1])).toThrow('2 rows for 1 values');
    expect(() => fitLinear([[1], [1]], [1, Number.NaN])).toThrow('must be a number');
  });
});
