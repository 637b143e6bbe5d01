import type { Act } from './removals.js';

/** An act and when its hands-on part begins. */
export interface Timed {
  readonly act: number;
  readonly start: number;
}

/**
 * The order in which one pair of hands is done first, when some acts cannot begin before a soak or a cool-down
 * that is started at minute 0 has run its time.
 *
 * Method: always the first by `rank` of what can be begun now; only where nothing can, wait for what is ready
 * soonest. Any order that never waits without need ends earliest: when it waits, everything left waits too, so the
 * end is the end of the last wait plus what is left, and no order can do that sooner. The rank therefore decides
 * freely, and the catalog's own order shows through.
 */
export function inOrder(
  list: readonly Act[],
  minutes: readonly number[],
  notBefore: readonly number[],
  rank: readonly number[],
): Timed[] {
  const left = new Set(list.keys());
  const order: Timed[] = [];
  let now = 0;
  while (left.size > 0) {
    const possible = [...left].filter((act) => list[act]!.after.every((before) => !left.has(before)));
    const next = first(possible, notBefore, rank, now);
    const start = Math.max(now, notBefore[next]!);
    order.push({ act: next, start });
    left.delete(next);
    now = start + minutes[next]!;
  }
  return order;
}

function first(
  possible: readonly number[],
  notBefore: readonly number[],
  rank: readonly number[],
  now: number,
): number {
  const wait = (act: number) => Math.max(now, notBefore[act]!);
  return possible.reduce((a, b) => ((wait(b) - wait(a) || rank[b]! - rank[a]!) < 0 ? b : a));
}
