/** The cheapest basket: coverings of 200 parts from 1,000 offers in several forms, and a repair's order from 8 suppliers. */
import highsLoader, { type Highs } from 'highs';
import { type BasketProblem, basket } from '../src/supply/index.js';
import { covering, fromSeveral, severalOfEach, shops } from './supply/baskets.js';

const highs = await (highsLoader as unknown as () => Promise<Highs>)();

/** A greedy order: again and again the offer with the least price for each part still missing. */
function byHand({ need, offers }: BasketProblem): number {
  const left = new Map(Object.entries(need));
  let goods = 0;
  while (left.size > 0) {
    const gains = offers.map(({ contains }) => Object.keys(contains).filter((part) => left.has(part)).length);
    const best = offers.reduce(
      (a, { price }, i) => {
        const rate = gains[i]! > 0 ? price / gains[i]! : Number.POSITIVE_INFINITY;
        return rate < a.rate ? { rate, i } : a;
      },
      { rate: Number.POSITIVE_INFINITY, i: -1 },
    );
    const offer = offers[best.i]!;
    goods += offer.price;
    for (const [part, n] of Object.entries(offer.contains)) {
      const rest = (left.get(part) ?? 0) - n;
      if (rest > 0) left.set(part, rest);
      else left.delete(part);
    }
  }
  return goods;
}

function show(title: string, problems: readonly BasketProblem[]): void {
  console.log(title);
  for (const problem of problems) {
    const start = process.cpuUsage().user;
    const { total, goods, optimal } = basket(problem, highs);
    const ms = (process.cpuUsage().user - start) / 1000;
    const hand = (byHand(problem) / goods).toFixed(3);
    console.log(
      `  total ${total}  ${optimal ? 'proved' : 'not proved'}  ${ms.toFixed(0)} ms CPU  goods picked by least price a part: ${hand} ×`,
    );
  }
}

show(
  '200 parts, 1,000 offers, 2 % density',
  [1, 2, 3, 4, 5].map((seed) => covering(seed)),
);
show(
  '200 parts, 1,000 offers, 5 % density',
  [1, 2].map((seed) => covering(seed, 200, 1000, 0.05)),
);
show(
  'the same at 2 %, needs of 1 to 3, offers of 1 or 2 of a part',
  [21, 22, 23].map((seed) => severalOfEach(seed)),
);
show(
  'the same at 3 %, six suppliers without shipping',
  [31, 32, 33].map((seed) => fromSeveral(seed)),
);
show(
  '40 parts, 8 suppliers',
  [1, 2, 3, 4, 5].map((seed) => shops(seed)),
);
