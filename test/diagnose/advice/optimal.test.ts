import { describe, expect, test } from 'vitest';
import { Instance } from '../../../bench/advice/optimal.js';
import { tinyCatalog } from '../../../bench/advice/tiny.js';
import { seeded } from '../../../bench/infer/sheet-like.js';
import { builtInCatalog } from '../../../src/catalog/index.js';

const instances = [5, 36, 67, 98, 129, 160, 191, 222].map(
  (seed) => new Instance(tinyCatalog(builtInCatalog(), seeded(seed))),
);

describe('on instances small enough to work out the best order of checks', () => {
  const costs = instances.map((i) => ({ least: i.leastCost(), advised: i.costOf(i.advised) }));

  test('no order costs less than the least, the advice included', () => {
    for (const { least, advised } of costs) {
      expect(least).toBeGreaterThan(0);
      expect(advised).toBeGreaterThanOrEqual(least * (1 - 1e-12));
    }
  });

  test('the advice is within a tenth of the least on average', () => {
    const sum = (of: (c: (typeof costs)[number]) => number) => costs.reduce((s, c) => s + of(c), 0);
    expect(sum((c) => c.advised) / sum((c) => c.least)).toBeLessThan(1.1);
  });

  test('an order that knows nothing of the evidence costs more', () => {
    const listed = instances.map((i) => i.costOf((machine) => machine.checks.findIndex((c) => c.open)));
    const ratios = listed.map((cost, i) => cost / costs[i]!.least);
    expect(ratios.reduce((a, b) => a + b, 0) / ratios.length).toBeGreaterThan(1.15);
    expect(Math.min(...ratios)).toBeGreaterThanOrEqual(1 - 1e-12);
  });
});
