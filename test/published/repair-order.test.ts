import { byProbabilityPerCost, expectedCost } from '../../src/infer/index.js';
import { near, published, same } from '../support/published.js';

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

published('Commun. ACM 38(3), 1995, p. 49, troubleshooting')(
  'expected cost of four repairs',
  'calculated',
  () => {
    const costs = everyOrder(attempts).map(expectedCost);
    return [
      same('orders', costs.length, 24),
      near('in the order of probability over cost', expectedCost(byProbabilityPerCost(attempts)), 48, 5e-11),
      near('best of all orders', Math.min(...costs), 48, 5e-11),
      near('worst of all orders', Math.max(...costs), 65.5, 5e-11),
    ];
  },
);
