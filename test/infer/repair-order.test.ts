import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Attempt, byProbabilityPerCost, expectedCost } from '../../src/infer/index.js';

function everyOrder<T>(items: readonly T[]): T[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((x, i) => everyOrder(items.toSpliced(i, 1)).map((rest) => [x, ...rest]));
}

const attempts = fc
  .array(fc.record({ share: fc.integer({ min: 0, max: 50 }), cost: fc.integer({ min: 0, max: 100 }) }), {
    minLength: 1,
    maxLength: 5,
  })
  .map((items) => {
    const sum = Math.max(
      1,
      items.reduce((s, i) => s + i.share, 0),
    );
    return items.map((i): Attempt => ({ probability: i.share / sum, cost: i.cost }));
  });

describe('order of repairs under one fault', () => {
  test('probability over cost, falling, costs least of all orders', () => {
    fc.assert(
      fc.property(attempts, (items) => {
        const best = Math.min(...everyOrder(items).map(expectedCost));
        expect(expectedCost(byProbabilityPerCost(items))).toBeCloseTo(best, 9);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  test('a single attempt is paid in full', () => {
    expect(expectedCost([{ probability: 0.2, cost: 7 }])).toBe(7);
  });

  test('what is no probability or no cost is refused', () => {
    expect(() => expectedCost([{ probability: 1.2, cost: 1 }])).toThrow(RangeError);
    expect(() => expectedCost([{ probability: Number.NaN, cost: 1 }])).toThrow(RangeError);
    expect(() => byProbabilityPerCost([{ probability: 0.5, cost: -1 }])).toThrow(RangeError);
    expect(() =>
      expectedCost([
        { probability: 0.7, cost: 1 },
        { probability: 0.7, cost: 1 },
      ]),
    ).toThrow('only one fault');
  });
});
