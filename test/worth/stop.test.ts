import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betweenByRatio, triangular } from '../../src/worth/inverse.js';
import { quantile } from '../../src/worth/spread.js';
import { type Ending, stopPoint } from '../../src/worth/stop.js';

const right = (cost: number): Ending => ({ cost, scrap: false });
const scrap = (cost: number): Ending => ({ cost, scrap: true });

/** What a stop leaves, machine by machine. */
function left(endings: readonly Ending[], value: number, stop: number): number {
  const each = endings.map((e) => (e.cost > stop ? -stop : e.scrap ? -e.cost : value - e.cost));
  return each.reduce((a, b) => a + b, 0) / each.length;
}

const endings = fc.array(fc.record({ cost: fc.integer({ min: 0, max: 1000 }), scrap: fc.boolean() }), {
  minLength: 1,
  maxLength: 40,
});

describe('the stop point', () => {
  test('leaves out the one machine in three that would eat what the others bring', () => {
    // at 100: (200 + 200 − 100)/3 = 100; at 1000: (200 + 200 − 700)/3 = −100
    expect(stopPoint([right(100), right(100), right(1000)], 300, undefined)).toEqual({
      amount: 100,
      rule: 'most-left',
      chanceWithin: 2 / 3,
      leftOnAverage: 100,
    });
  });

  test('is nowhere when every machine costs more than it is worth', () => {
    expect(stopPoint([right(400), right(500)], 300, 1000)).toMatchObject({
      amount: 0,
      rule: 'not-worth-starting',
    });
  });

  test('is the owner’s limit when that comes first', () => {
    expect(stopPoint([right(100)], 300, 60)).toEqual({
      amount: 60,
      rule: 'limit',
      chanceWithin: 0,
      leftOnAverage: 0,
    });
  });

  test('is what four in five stay below when no value is known', () => {
    const ten = Array.from({ length: 10 }, (_, i) => right((i + 1) * 10));
    expect(stopPoint([...ten, scrap(5)], undefined, undefined)).toMatchObject({
      amount: 80,
      rule: 'four-in-five',
    });
  });

  test('is never above the value or the limit, and no other amount leaves noticeably more', () => {
    fc.assert(
      fc.property(endings, fc.integer({ min: 1, max: 1000 }), (all, value) => {
        const stop = stopPoint(all, value, undefined)!;
        const most = Math.max(0, ...all.map((e) => left(all, value, e.cost)));
        expect(stop.amount).toBeLessThanOrEqual(value);
        expect(stopPoint(all, value, 50)!.amount).toBeLessThanOrEqual(50);
        if (stop.rule === 'most-left') {
          expect(stop.leftOnAverage).toBeCloseTo(left(all, value, stop.amount), 9);
          expect(stop.leftOnAverage!).toBeGreaterThanOrEqual(most - 0.005 * value - 1e-9);
        }
        if (stop.rule === 'not-worth-starting') expect(most).toBeLessThanOrEqual(0.005 * value + 1e-9);
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });
});

test('quantiles go by straight lines between the values', () => {
  expect(quantile([1, 2, 4], 0.75)).toBe(3);
  expect(quantile([7], 0.05)).toBe(7);
});

test('a triangle begins, turns and ends where it is said to', () => {
  expect(triangular(0.8, 1, 1.6, 0)).toBeCloseTo(0.8, 12);
  expect(triangular(0.8, 1, 1.6, 0.25)).toBeCloseTo(1, 12);
  expect(triangular(0.8, 1, 1.6, 1)).toBeCloseTo(1.6, 12);
  expect(triangular(1, 1, 1, 0.4)).toBe(1);
});

test('a price in the middle by ratio is as many times the low one as the high one is of it', () => {
  expect(betweenByRatio(4, 9, 0.5)).toBeCloseTo(6, 12);
});
