import { describe, expect, test } from 'vitest';
import { byProbabilityPerCost, expectedCost } from '../../src/infer/index.js';

/**
 * One fault, independent costs, perfect repairs: probability over cost, falling, is the best order, with expected cost
 * Σ cost · (1 − probability of what was tried before) (Commun. ACM 38(3), 1995, p. 49). No worked figures were found in
 * print; the case is calculated over all 24 orders.
 */
const attempts = [
  { probability: 0.2, cost: 10 },
  { probability: 0.4, cost: 50 },
  { probability: 0.3, cost: 20 },
  { probability: 0.1, cost: 5 },
];

function everyOrder<T>(items: readonly T[]): T[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item, i) => everyOrder(items.toSpliced(i, 1)).map((rest) => [item, ...rest]));
}

describe('Expected cost of repair (Commun. ACM 38(3), 1995, p. 49), four repairs (calculated)', () => {
  test('the best order costs 48.0', () => {
    expect(expectedCost(byProbabilityPerCost(attempts))).toBeCloseTo(48.0, 10);
  });

  test('over all 24 orders the best costs 48.0 and the worst 65.5', () => {
    const costs = everyOrder(attempts).map(expectedCost);
    expect(costs.length).toBe(24);
    expect(Math.min(...costs)).toBeCloseTo(48.0, 10);
    expect(Math.max(...costs)).toBeCloseTo(65.5, 10);
  });
});
