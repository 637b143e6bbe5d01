import type { BasketProblem } from '../../src/supply/index.js';
import { uniform } from '../plan/projects.js';

/** A covering problem as the literature makes them: each offer holds 2 % of the parts, prices 1 to 100, one seller. */
export function covering(seed: number, parts = 200, offers = 1000, density = 0.02): BasketProblem {
  const next = uniform(seed);
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  const contains: Record<string, number>[] = Array.from({ length: offers }, () => ({}));
  for (let p = 0; p < parts; p += 1)
    for (let n = 0; n < Math.max(2, offers * density); n += 1) contains[whole(0, offers - 1)]![`p${p}`] = 1;
  return {
    need: Object.fromEntries(Array.from({ length: parts }, (_, p) => [`p${p}`, 1])),
    offers: contains.map((list, i) => ({ id: `o${i}`, supplier: 's', price: whole(1, 100), contains: list })),
    suppliers: [{ id: 's' }],
  };
}

/** More than one of a part is needed, and an offer may hold two of it. */
export function severalOfEach(seed: number): BasketProblem {
  const next = uniform(seed);
  const { need, offers, ...rest } = covering(seed);
  const each = (counts: Readonly<Record<string, number>>, most: number) =>
    Object.fromEntries(Object.keys(counts).map((part) => [part, 1 + Math.floor(next() * most)]));
  return {
    need: each(need, 3),
    offers: offers.map((offer) => ({ ...offer, contains: each(offer.contains, 2) })),
    ...rest,
  };
}

export function fromSeveral(seed: number, count = 6): BasketProblem {
  const next = uniform(seed);
  const { need, offers } = covering(seed, 200, 1000, 0.03);
  return {
    need,
    offers: offers.map((offer) => ({ ...offer, supplier: `s${Math.floor(next() * count)}` })),
    suppliers: Array.from({ length: count }, (_, s) => ({ id: `s${s}` })),
  };
}

/** A repair's order: 40 parts, 8 suppliers with shipping, minimums and lead times, some kits, a day worth something. */
export function shops(seed: number, parts = 40, suppliers = 8): BasketProblem {
  const next = uniform(seed);
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  const worth = Array.from({ length: parts }, () => whole(100, 3000) / 100);
  const part = () => whole(0, parts - 1);
  const cents = (value: number) => Math.round(100 * value) / 100;
  const singles = worth.flatMap((price, p) =>
    Array.from({ length: suppliers }, (_, s) => s)
      .filter((s) => next() < 0.6 || s === p % suppliers)
      .map((s) => ({
        id: `p${p}s${s}`,
        supplier: `s${s}`,
        price: cents(price * (0.8 + 0.4 * next())),
        contains: { [`p${p}`]: 1 },
        leadDays: whole(1, 9),
      })),
  );
  const kits = Array.from({ length: 3 * suppliers }, (_, k) => {
    const list = [...new Set(Array.from({ length: whole(2, 6) }, part))];
    const price = cents(list.reduce((sum, p) => sum + worth[p]!, 0) * (0.6 + 0.3 * next()));
    const contains = Object.fromEntries(list.map((p) => [`p${p}`, 1]));
    return { id: `kit${k}`, supplier: `s${k % suppliers}`, price, contains, leadDays: whole(1, 9) };
  });
  return {
    need: Object.fromEntries(worth.map((_, p) => [`p${p}`, next() < 0.2 ? 2 : 1])),
    offers: [...singles, ...kits],
    suppliers: Array.from({ length: suppliers }, (_, s) => ({
      id: `s${s}`,
      minimum: next() < 0.3 ? 20 : 0,
      shipping: [
        { from: 0, cost: whole(500, 1200) / 100 },
        { from: whole(50, 120), cost: 0 },
      ],
    })),
    delayPerDay: whole(0, 4),
  };
}
