import type { BasketProblem } from '../../src/supply/index.js';

/** What a basket costs by the rules, added up line by line; infinite where it breaks one. */
export function costOf(problem: BasketProblem, counts: readonly number[]): number {
  const { need, offers, suppliers, delayPerDay } = problem;
  const goods = new Map<string, number>();
  const bought = new Map<string, number>();
  let days = 0;
  for (const [i, { supplier, price, contains, leadDays, breaks }] of offers.entries()) {
    const count = counts[i]!;
    if (count === 0) continue;
    const step = (breaks ?? []).filter(({ from }) => from <= count).sort((a, b) => b.from - a.from)[0];
    goods.set(supplier, (goods.get(supplier) ?? 0) + count * (step?.price ?? price));
    for (const [part, n] of Object.entries(contains)) bought.set(part, (bought.get(part) ?? 0) + n * count);
    days = Math.max(days, leadDays ?? 0);
  }
  if (Object.entries(need).some(([part, n]) => (bought.get(part) ?? 0) < n)) return Number.POSITIVE_INFINITY;
  let total = days * (delayPerDay ?? 0);
  for (const { id, minimum, shipping } of suppliers) {
    const here = goods.get(id);
    if (here === undefined) continue;
    if (here < (minimum ?? 0)) return Number.POSITIVE_INFINITY;
    const tier = (shipping ?? []).filter(({ from }) => from <= here).sort((a, b) => b.from - a.from)[0];
    total += here + (tier?.cost ?? 0);
  }
  return total;
}

/**
 * The least cost over every number of every offer that could pay, or infinity where none costs less than `below`:
 * with a basket in hand, just above its total will do, and the search is short.
 */
export function leastByForce(
  problem: BasketProblem,
  mostSuppliers = Number.POSITIVE_INFINITY,
  below = Number.POSITIVE_INFINITY,
): number {
  const { offers } = problem;
  const counts = offers.map(() => 0);
  let best = below;
  let found = Number.POSITIVE_INFINITY;
  const cheapest = offers.map(({ price, breaks }) => Math.min(price, ...(breaks ?? []).map((b) => b.price)));
  const most = offers.map((_, i) => mostThatPays(problem, i, cheapest[i]!));
  const go = (i: number, goods: number): void => {
    // prices are not negative: what already costs as much cannot win
    if (goods >= best) return;
    if (i === offers.length) {
      const used = new Set(offers.filter((_, k) => counts[k]! > 0).map(({ supplier }) => supplier));
      const cost = used.size <= mostSuppliers ? costOf(problem, counts) : best;
      if (cost < best) best = found = cost;
      return;
    }
    for (let count = 0; count <= most[i]!; count += 1) {
      counts[i] = count;
      go(i + 1, goods + count * cheapest[i]!);
    }
    counts[i] = 0;
  };
  go(0, 0);
  return found;
}

/** The whole need by itself, every threshold passed by itself, and the last break: more only costs. */
function mostThatPays({ need, offers, suppliers }: BasketProblem, i: number, price: number): number {
  const supplier = suppliers.find(({ id }) => id === offers[i]!.supplier)!;
  const thresholds = [supplier.minimum ?? 0, ...(supplier.shipping ?? []).map(({ from }) => from)];
  const breaks = (offers[i]!.breaks ?? []).map(({ from }) => from);
  return (
    Math.max(...Object.values(need)) + Math.ceil(Math.max(...thresholds) / price) + Math.max(0, ...breaks)
  );
}
