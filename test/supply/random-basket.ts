import type { BasketProblem } from '../../src/supply/index.js';
import { drawing, times } from '../plan/seeded.js';

/** Few parts, few offers, and everything that can bind: kits, minimums, tiers up and down, breaks, leads, delay. */
export function randomBasket(seed: number): BasketProblem {
  const { chance, whole, some } = drawing(seed);
  const parts = times(whole(1, 4), (i) => `part${i}`);
  const suppliers = times(whole(1, 3), (i) => ({
    id: `s${i}`,
    ...(chance(0.4) && { minimum: whole(2, 14) }),
    ...(chance(0.8) && { shipping: tiers(seed + i) }),
  }));
  const offers = times(whole(2, 5), (i) => ({
    id: `o${i}`,
    supplier: some(suppliers, 1)[0]!.id,
    price: whole(8, 60) / 4,
    contains: Object.fromEntries(some(parts, whole(1, 3)).map((part) => [part, whole(1, 2)])),
    ...(chance(0.6) && { leadDays: whole(0, 4) }),
    ...(chance(0.25) && { breaks: [{ from: whole(2, 3), price: whole(4, 30) / 4 }] }),
  }));
  const offered = [...new Set(offers.flatMap(({ contains }) => Object.keys(contains)))];
  return {
    need: Object.fromEntries(offered.map((part) => [part, whole(0, 3)])),
    offers,
    suppliers,
    ...(chance(0.6) && { delayPerDay: whole(1, 8) / 2 }),
  };
}

/** Mostly free above a threshold; sometimes dearer when heavier. */
function tiers(seed: number): { from: number; cost: number }[] {
  const { chance, whole } = drawing(seed + 7_000);
  const first = { from: 0, cost: whole(0, 8) };
  if (chance(0.3)) return [first];
  const second = { from: whole(4, 15), cost: chance(0.7) ? 0 : whole(0, 10) };
  return chance(0.7)
    ? [first, second]
    : [second, first, { from: second.from + whole(1, 10), cost: whole(0, 6) }];
}
