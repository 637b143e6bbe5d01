import { describe, expect, test } from 'vitest';
import { DormandPrince, type Slope } from '../../src/engine/dormand-prince.js';
import { EngineError } from '../../src/engine/error.js';

const circle: Slope = (_x, y, out) => {
  out[0] = -y[1]!;
  out[1] = y[0]!;
};

function turnsOf(turns: number, relative: number, largestStep = 10) {
  const y = Float64Array.from([1, 0]);
  const solver = new DormandPrince(circle, 2, {
    relative,
    absolute: [relative, relative],
    largestStep,
    controlled: 2,
  });
  solver.run(y, 0, 2 * Math.PI * turns, 0.1);
  return { error: Math.hypot(y[0]! - 1, y[1]!), solver };
}

describe('the integrator', () => {
  test('ten turns of a circle at 1e-8 close to 1e-6', () =>
    expect(turnsOf(10, 1e-8).error).toBeLessThan(1e-6));

  test('an error asked ten thousand times smaller is at least a thousand times smaller', () => {
    expect(turnsOf(3, 1e-5).error / turnsOf(3, 1e-9).error).toBeGreaterThan(1000);
  });

  test('is of fifth order: half the step, a thirty-second of the error', () => {
    const error = (h: number) => turnsOf(1, 1, h).error;
    const order = Math.log2(error(0.2) / error(0.1));
    expect(order).toBeGreaterThan(4.8);
    expect(order).toBeLessThan(5.6);
  });

  test('a growth to e² is met within 1e-9', () => {
    const y = Float64Array.from([1]);
    const solver = new DormandPrince((_x, at, out) => out.set(at), 1, {
      relative: 1e-11,
      absolute: [1e-12],
      largestStep: 1,
      controlled: 1,
    });
    solver.run(y, 0, 2, 0.1);
    expect(Math.abs(y[0]! / Math.exp(2) - 1)).toBeLessThan(1e-9);
  });

  test('a sum that rides along is kept to rounding', () => {
    const y = Float64Array.from([1, 0, 0]);
    const solver = new DormandPrince(
      (x, at, out) => {
        circle(x, at, out);
        out[2] = -out[0]! - out[1]!;
      },
      3,
      { relative: 1e-5, absolute: [1e-5, 1e-5], largestStep: 1, controlled: 2 },
    );
    solver.run(y, 0, 20, 0.1);
    expect(Math.abs(y[0]! + y[1]! + y[2]! - 1)).toBeLessThan(1e-13);
  });

  test('ends exactly where it is told and shows every accepted point in rising order', () => {
    const seen: number[] = [];
    const y = Float64Array.from([1, 0]);
    new DormandPrince(circle, 2, {
      relative: 1e-6,
      absolute: [1e-6, 1e-6],
      largestStep: 1,
      controlled: 2,
    }).run(...([y, 0, 3, 0.1, (x: number) => seen.push(x)] as const));
    expect(seen.at(-1)).toBe(3);
    expect(seen.every((x, i) => i === 0 || x > seen[i - 1]!)).toBe(true);
  });

  test('a step that leaves the physics is shortened, a slope without a value refused', () => {
    const root: Slope = (_x, y, out) => {
      out[0] = -Math.sqrt(y[0]!);
    };
    const settings = { relative: 1e-6, absolute: [1e-9], largestStep: 10, controlled: 1 };
    const y = Float64Array.from([1]);
    const solver = new DormandPrince(root, 1, settings);
    solver.run(y, 0, 1.9, 9);
    expect(y[0]).toBeCloseTo(0.05 ** 2, 5);
    expect(solver.refused).toBeGreaterThan(0);
    const nowhere = new DormandPrince((_x, _y, out) => out.fill(Number.NaN), 1, settings);
    expect(() => nowhere.run(Float64Array.from([1]), 0, 1, 0.1)).toThrow(EngineError);
  });
});
