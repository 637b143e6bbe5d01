import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decide, decideSpread, decidingU, settle } from '../../src/gauge/index.js';

test('for a single reading it is what settle works out', () => {
  const at = (u: number) => decide({ value: 9, u, limit: { max: 10 } }).verdict;
  expect(decidingU(at, 1)).toBeCloseTo(settle({ value: 9, u: 1, limit: { max: 10 } }).neededU, 7);
});

test('with the found uncertainty a spread is decided, a little above it is not', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.2, max: 3, noNaN: true }), (spread) => {
      fc.pre(Math.abs(spread - 1) > 0.05);
      const at = (u: number) => decideSpread({ spread, u, count: 6, max: 1 }).verdict;
      const found = decidingU(at, 5);
      expect(at(found)).not.toBe('cannot-decide');
      expect(found === 5 || at(found * 1.001) === 'cannot-decide').toBe(true);
    }),
    { seed: 11, numRuns: 60 },
  );
});

test('a figure on its limit is settled by nothing, and one decided already needs nothing finer', () => {
  expect(decidingU((u) => decide({ value: 10, u, limit: { max: 10 } }).verdict, 1)).toBe(0);
  expect(decidingU((u) => decide({ value: 5, u, limit: { max: 10 } }).verdict, 1)).toBe(1);
});
