import type { Highs } from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { covering, shops } from '../../bench/supply/baskets.js';
import {
  alternatives,
  type BasketProblem,
  basket,
  type IntegerSolver,
  SupplyError,
} from '../../src/supply/index.js';
import { times } from '../plan/seeded.js';
import { campaign } from '../support/campaign.js';
import { costOf, leastByForce } from './by-force.js';
import { loadHighs } from './load-highs.js';
import { randomBasket } from './random-basket.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

const countsOf = (problem: BasketProblem, lines: readonly { offer: string; count: number }[]) =>
  problem.offers.map(({ id }) => lines.find(({ offer }) => offer === id)?.count ?? 0);

const orNothing = <T>(act: () => T): T | undefined => {
  try {
    return act();
  } catch (error) {
    if (error instanceof SupplyError && error.code === 'impossible') return undefined;
    throw error;
  }
};

describe('the cheapest basket', () => {
  test('costs what trying every basket finds, on random problems', () => {
    const differ = times(campaign(50, 200), (seed) => {
      const problem = randomBasket(seed);
      const found = orNothing(() => basket(problem, highs));
      const least = leastByForce(problem, undefined, found && found.total + 0.01);
      if (found) expect(costOf(problem, countsOf(problem, found.lines))).toBeCloseTo(found.total, 6);
      const total = found?.total ?? Number.POSITIVE_INFINITY;
      return Math.abs(total - least) < 1e-6 || total === least ? [] : [{ seed, total, least }];
    });
    expect(differ.flat()).toEqual([]);
  });

  test('one-supplier and two-supplier baskets are the cheapest of their kind', () => {
    const kinds = times(campaign(45, 60), (seed) => {
      const problem = randomBasket(seed + 400);
      const found = orNothing(() => alternatives(problem, highs));
      if (!found) return 'none';
      for (const [count, each] of [
        [1, found.fromOne],
        [2, found.fromTwo],
      ] as const) {
        const least = leastByForce(problem, count, each && each.total + 0.01);
        if (least === Number.POSITIVE_INFINITY) expect(each).toBeUndefined();
        else expect(each!.total).toBeCloseTo(least, 6);
        expect(each?.suppliers.length ?? 0).toBeLessThanOrEqual(count);
      }
      return found.fromOne && found.fromOne.total > found.cheapest.total ? 'dearer from one' : 'same';
    });
    expect(new Set(kinds)).toContain('dearer from one');
  });

  test('the total is goods, shipping and delay, and what is left over is what comes beyond the need', () => {
    for (const problem of times(40, (seed) => randomBasket(seed + 900))) {
      const found = orNothing(() => basket(problem, highs));
      if (!found) continue;
      expect(found.goods + found.shipping + found.delay).toBeCloseTo(found.total, 8);
      const counts = countsOf(problem, found.lines);
      for (const part of new Set(problem.offers.flatMap(({ contains }) => Object.keys(contains)))) {
        const bought = problem.offers.reduce(
          (sum, { contains }, i) => sum + counts[i]! * (contains[part] ?? 0),
          0,
        );
        expect(bought).toBe((problem.need[part] ?? 0) + (found.leftOver[part] ?? 0));
      }
    }
  });

  const one: BasketProblem = {
    need: { ring: 2 },
    offers: [
      { id: 'ring alone', supplier: 'mill', price: 3, contains: { ring: 1 } },
      { id: 'kit', supplier: 'mill', price: 2.5, contains: { ring: 1, gasket: 1 } },
    ],
    suppliers: [{ id: 'mill', shipping: [{ from: 0, cost: 4 }] }],
  };

  test('a cheaper kit is taken, and says what it leaves over', () => {
    expect(basket(one, highs)).toEqual({
      total: 9,
      goods: 5,
      shipping: 4,
      delay: 0,
      days: 0,
      suppliers: ['mill'],
      lines: [{ offer: 'kit', count: 2 }],
      leftOver: { gasket: 2 },
      optimal: true,
    });
  });

  test('one more than needed is bought where it saves the shipping', () => {
    const free = {
      ...one,
      suppliers: [
        {
          id: 'mill',
          shipping: [
            { from: 0, cost: 4 },
            { from: 7.5, cost: 0 },
          ],
        },
      ],
    };
    expect(basket(free, highs)).toMatchObject({
      total: 7.5,
      lines: [{ offer: 'kit', count: 3 }],
      shipping: 0,
    });
  });

  test('a threshold reached to the cent counts, a cent below does not', () => {
    const at = (price: number) =>
      basket(
        {
          need: { ring: 3 },
          offers: [{ id: 'ring', supplier: 'mill', price, contains: { ring: 1 } }],
          suppliers: [
            {
              id: 'mill',
              shipping: [
                { from: 0, cost: 9 },
                { from: 0.3, cost: 0 },
              ],
            },
          ],
        },
        highs,
      ).total;
    expect(at(0.1)).toBe(0.3);
    expect(at(0.09)).toBe(0.36);
  });

  test('dear days change the supplier', () => {
    const problem = (delayPerDay: number): BasketProblem => ({
      need: { ring: 1 },
      offers: [
        { id: 'far', supplier: 'mill', price: 10, contains: { ring: 1 }, leadDays: 6 },
        { id: 'near', supplier: 'corner', price: 16, contains: { ring: 1 }, leadDays: 1 },
      ],
      suppliers: [{ id: 'mill' }, { id: 'corner' }],
      delayPerDay,
    });
    expect(basket(problem(1), highs)).toMatchObject({ total: 16, days: 6, delay: 6, suppliers: ['mill'] });
    expect(basket(problem(2), highs)).toMatchObject({ total: 18, days: 1, delay: 2, suppliers: ['corner'] });
  });

  test('from the break on every piece costs the lower price', () => {
    const [ring] = one.offers;
    const offers = [{ ...ring!, breaks: [{ from: 3, price: 1.5 }] }];
    expect(basket({ ...one, offers }, highs)).toMatchObject({
      lines: [{ offer: 'ring alone', count: 3 }],
      goods: 4.5,
    });
  });

  test('needing nothing buys nothing', () => {
    expect(basket({ ...one, need: {} }, highs)).toMatchObject({ total: 0, lines: [], optimal: true });
    expect(basket({ ...one, need: { ring: 0 } }, highs)).toMatchObject({
      total: 0,
      lines: [],
      optimal: true,
    });
  });

  test('a covering of 80 parts from 300 offers is solved to the end', () => {
    const problem = covering(5, 80, 300);
    const found = basket(problem, highs);
    expect(found.optimal).toBe(true);
    expect(costOf(problem, countsOf(problem, found.lines))).toBe(found.total);
  });

  test('40 parts from 8 suppliers take less than 2 s', () => {
    const problem = shops(1);
    const start = process.cpuUsage();
    const found = basket(problem, highs);
    // the time of this process only: other tests run beside it
    expect(process.cpuUsage(start).user / 1000).toBeLessThan(2000);
    expect(found.optimal).toBe(true);
    expect(costOf(problem, countsOf(problem, found.lines))).toBeCloseTo(found.total, 6);
  });

  test('a solver stopped early is not called optimal, and a stop without a basket is said', () => {
    const early: IntegerSolver = {
      solve: (text, options) => ({ ...highs.solve(text, options), Status: 'Time limit reached' }),
    };
    expect(basket(one, early)).toMatchObject({ total: 9, optimal: false });
    const empty: IntegerSolver = { solve: () => ({ Status: 'Time limit reached', Columns: {} }) };
    expect(() => basket(one, empty)).toThrow(expect.objectContaining({ code: 'unsolved' }));
  });
});

describe('what cannot be bought is refused by name', () => {
  const offer = { id: 'ring', supplier: 'mill', price: 3, contains: { ring: 1 } };
  const sheet = (change: object) => ({
    need: { ring: 1 },
    offers: [offer],
    suppliers: [{ id: 'mill' }],
    ...change,
  });
  test.each([
    ['a part nobody offers', sheet({ need: { ring: 1, gasket: 1 } }), 'not-offered', 'need.gasket'],
    [
      'an unknown supplier',
      sheet({ offers: [{ ...offer, supplier: 'corner' }] }),
      'unknown',
      'offers[0].supplier',
    ],
    ['an offer twice', sheet({ offers: [offer, offer] }), 'duplicate', 'offers[1].id'],
    ['a price below nought', sheet({ offers: [{ ...offer, price: -1 }] }), 'shape', 'offers[0].price'],
    ['half a part', sheet({ need: { ring: 0.5 } }), 'shape', 'need.ring'],
    [
      'shipping that begins above nought',
      sheet({ suppliers: [{ id: 'mill', shipping: [{ from: 5, cost: 1 }] }] }),
      'shape',
      'suppliers[0].shipping',
    ],
    [
      'two tiers from the same sum',
      sheet({
        suppliers: [
          {
            id: 'mill',
            shipping: [
              { from: 0, cost: 1 },
              { from: 0, cost: 2 },
            ],
          },
        ],
      }),
      'duplicate',
      'suppliers[0].shipping',
    ],
    [
      'a minimum that gifts never reach',
      sheet({ offers: [{ ...offer, price: 0 }], suppliers: [{ id: 'mill', minimum: 5 }] }),
      'impossible',
      'suppliers',
    ],
  ])('%s', (_, problem, code, place) => {
    expect(() => basket(problem as BasketProblem, highs)).toThrow(
      expect.objectContaining({ name: 'SupplyError', code, place }),
    );
  });
});
