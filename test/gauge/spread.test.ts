import { describe, expect, it } from 'vitest';
import { decide, decideExtreme, decideSpread } from '../../src/gauge/index.js';
import { normals, times } from './seeded.js';

const rangeOf = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

/** How often readings of places with these true values, u = 1, get this verdict against `max`. */
function rate(truth: readonly number[], max: number, verdict: string, seed: number, draws = 20_000): number {
  const draw = normals(seed);
  let hits = 0;
  for (let i = 0; i < draws; i += 1) {
    const spread = rangeOf(truth.map((value) => value + draw()));
    if (decideSpread({ spread, u: 1, count: truth.length, max }).verdict === verdict) hits += 1;
  }
  return hits / draws;
}
const slack = 3 * Math.sqrt((0.05 * 0.95) / 20_000);

describe('largest less smallest', () => {
  const beyond: [string, number[]][] = [
    ['one high, one low, the rest between', [0, 4, 4, 4, 4, 4, 8]],
    ['half high, half low', [0, 0, 0, 0, 8, 8, 8, 8]],
    ['a slope', times(9, (i) => i)],
    ['two readings only', [0, 8]],
  ];
  for (const [i, [shape, truth]] of beyond.entries())
    it(`a part on its limit (${shape}) is passed at most 5 % of the time`, () =>
      expect(rate(truth, rangeOf(truth), 'pass', 100 + i)).toBeLessThanOrEqual(0.05 + slack));

  const within: [string, number[]][] = [
    ['half high, half low', [0, 0, 0, 0, 8, 8, 8, 8]],
    ['perfect', times(9, () => 0)],
    ['one high', [0, 0, 0, 0, 0, 0, 0, 5]],
    ['two readings only', [0, 8]],
  ];
  for (const [i, [shape, truth]] of within.entries())
    it(`a part within its limit (${shape}) is failed at most 5 % of the time`, () =>
      expect(rate(truth, rangeOf(truth), 'fail', 200 + i)).toBeLessThanOrEqual(0.05 + slack));

  it('the plain rule would break that promise: it fails perfect parts from noise alone', () => {
    const draw = normals(9);
    let failed = 0;
    for (let i = 0; i < 5000; i += 1) {
      const spread = rangeOf(times(9, () => draw()));
      if (decide({ value: spread, u: Math.SQRT2, limit: { max: 0.5 } }).verdict === 'fail') failed += 1;
    }
    expect(failed / 5000).toBeGreaterThan(0.5);
  });

  it('for two readings the guard bands are 1.645·√2 u to pass and 1.960·√2 u to fail', () => {
    const at = (spread: number) => decideSpread({ spread, u: 1, count: 2, max: 10 }).verdict;
    expect([at(10 - 2.327), at(10 - 2.325), at(10 + 2.771), at(10 + 2.773)]).toEqual([
      'pass',
      'cannot-decide',
      'cannot-decide',
      'fail',
    ]);
  });

  it('says what noise alone would show, and when even a perfect part could not pass', () => {
    const fine = decideSpread({ spread: 0.0012, u: 0.0003, count: 9, max: 0.002, unit: 'in' });
    expect(fine.words).toContain('A perfect part would show about 0.00089 in over 9 readings.');
    const coarse = decideSpread({ spread: 0, u: 0.001, count: 9, max: 0.002 });
    expect(coarse).toMatchObject({ verdict: 'cannot-decide', canEverPass: false });
    expect(coarse.words).toContain('even a perfect part');
  });

  it('without uncertainty compares exactly', () => {
    expect(decideSpread({ spread: 0.002, u: 0, count: 4, max: 0.002 }).verdict).toBe('pass');
    expect(decideSpread({ spread: 0.0021, u: 0, count: 4, max: 0.002 }).verdict).toBe('fail');
  });

  it('readings that are not independent need more distance to fail', () => {
    const given = { spread: 10, u: 1, count: 9, max: 5 };
    expect(decideSpread(given).verdict).toBe('fail');
    expect(decideSpread({ ...given, uDifference: 3 }).verdict).toBe('cannot-decide');
  });

  it('refuses a single reading and a negative spread', () => {
    expect(() => decideSpread({ spread: 1, u: 1, count: 1, max: 2 })).toThrow('two readings');
    expect(() => decideSpread({ spread: -1, u: 1, count: 3, max: 2 })).toThrow('spread');
    expect(() => decideSpread({ spread: 1, u: 1, count: 2.5, max: 2 })).toThrow('whole number');
  });
});

describe('the worst of several readings', () => {
  it('on its limit is passed and failed at most 5 % of the time, with a part of the error common to all', () => {
    for (const [i, common] of [0, 0.8].entries()) {
      const draw = normals(300 + i);
      const u = Math.hypot(1, common);
      const verdicts = times(20_000, () => {
        const shift = common * draw();
        const value = Math.max(...[10, 10, 10, 9, 2].map((truth) => truth + shift + draw()));
        return decideExtreme({ value, u, count: 5, limit: { max: 10 } }).verdict;
      });
      const share = (verdict: string) => verdicts.filter((one) => one === verdict).length / verdicts.length;
      expect(share('pass')).toBeLessThanOrEqual(0.05 + slack);
      expect(share('fail')).toBeLessThanOrEqual(0.05 + slack);
    }
  });

  it('of one reading is the plain rule', () => {
    for (const value of [7, 8.3, 8.4, 10, 11.6, 11.7, 13]) {
      const worst = decideExtreme({ value, u: 1, count: 1, limit: { max: 10 } });
      expect(worst.verdict).toBe(decide({ value, u: 1, limit: { max: 10 } }).verdict);
    }
  });

  it('the smallest against a minimum is the largest against a maximum, seen in a mirror', () => {
    for (const value of [-13, -11, -10, -8, -7]) {
      const smallest = decideExtreme({ value: -value, u: 1, count: 4, limit: { min: 10 } });
      expect(smallest.verdict).toBe(decideExtreme({ value, u: 1, count: 4, limit: { max: -10 } }).verdict);
    }
  });
});
