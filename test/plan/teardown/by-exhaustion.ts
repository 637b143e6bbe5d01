import type { Case } from './random-graph.js';

/**
 * The least minutes by trying every order: shortest paths over the sets of pieces that are off. Knows nothing of
 * choices or closures; it only follows the rules of what may come off next.
 */
export function leastByExhaustion({ graph, goal }: Case): number {
  const ids = graph.pieces.map(({ id }) => id);
  const bits = (list: readonly string[]) => list.reduce((set, id) => set | (1 << ids.indexOf(id)), 0);
  const off = bits(goal.off ?? []);
  const reach = bits(goal.reach) & ~off;
  const wanted = (bits(goal.reach) | bits(goal.clear ?? [])) & ~off;
  const before = graph.pieces.map((piece) => bits(piece.before));
  const wholes = graph.together.map(({ pieces, minutes }) => ({ set: bits(pieces), minutes }));
  const cost = new Float64Array(1 << ids.length).fill(Number.POSITIVE_INFINITY);
  cost[off] = 0;
  // an act only ever adds pieces, so a set is final when all smaller numbers have been gone through
  for (let set = off; set < cost.length; set += 1) {
    if (cost[set] === Number.POSITIVE_INFINITY) continue;
    const offer = (next: number, minutes: number) => {
      cost[next] = Math.min(cost[next]!, cost[set]! + minutes);
    };
    for (const [i, { minutes }] of graph.pieces.entries())
      if (!(set & (1 << i)) && (before[i]! & ~set) === 0) offer(set | (1 << i), minutes);
    for (const whole of wholes) {
      const leaving = whole.set & ~set;
      // what is to be reached may not leave inside an assembly
      if (count(leaving) < 2 || leaving & reach) continue;
      const waits = before.reduce((all, b, i) => (leaving & (1 << i) ? all | b : all), 0);
      if ((waits & ~set & ~leaving) === 0) offer(set | leaving, whole.minutes);
    }
  }
  return cost.reduce(
    (least, minutes, set) => ((set & wanted) === wanted ? Math.min(least, minutes) : least),
    Number.POSITIVE_INFINITY,
  );
}

function count(set: number): number {
  let n = 0;
  for (let left = set; left; left &= left - 1) n += 1;
  return n;
}
