import type { Windows } from './bound.js';
import type { Instance } from './instance.js';

/** For each activity the latest finish that keeps the due times and the end: what presses comes first. */
export function pressing(
  { count, order, behind, length, due }: Instance,
  { tail }: Windows,
  end: number,
): Float64Array {
  const latest = new Float64Array(count);
  for (const i of order.toReversed()) {
    latest[i] = Math.min(due[i]!, end - tail[i]!);
    for (const { to, lag } of behind[i]!) latest[i] = Math.min(latest[i]!, latest[to]! - length[to]! - lag);
  }
  return latest;
}

/**
 * A list that keeps the precedences, drawn step by step from what is possible: with `bias` 0 each equally likely,
 * with more bias rather what presses (regret-based biased random sampling), with an infinite one always what
 * presses most.
 */
export function drawnList(
  { count, before, behind }: Instance,
  latest: Float64Array,
  bias: number,
  next: () => number,
): Int32Array {
  const waiting = before.map((ties) => ties.length);
  const possible = [...waiting.keys()].filter((i) => waiting[i] === 0);
  const list = new Int32Array(count);
  for (let place = 0; place < count; place += 1) {
    const k = drawn(possible, latest, bias, next);
    const activity = possible[k]!;
    possible[k] = possible.at(-1)!;
    possible.pop();
    list[place] = activity;
    for (const { to } of behind[activity]!) {
      waiting[to]! -= 1;
      if (waiting[to] === 0) possible.push(to);
    }
  }
  return list;
}

function drawn(possible: readonly number[], latest: Float64Array, bias: number, next: () => number): number {
  if (bias === Number.POSITIVE_INFINITY)
    return possible.reduce((a, i, k) => (latest[i]! < latest[possible[a]!]! ? k : a), 0);
  if (bias === 0) return Math.floor(next() * possible.length);
  const most = possible.reduce((a, i) => Math.max(a, latest[i]!), Number.NEGATIVE_INFINITY);
  const weights = possible.map((i) => (most - latest[i]! + 1) ** bias);
  let left = next() * weights.reduce((a, b) => a + b, 0);
  for (const [k, weight] of weights.entries()) {
    left -= weight;
    if (left < 0) return k;
  }
  return possible.length - 1;
}

/** Two-point crossover: the middle in the order of the other parent. What keeps the precedences twice keeps them here. */
export function crossed(a: Int32Array, b: Int32Array, next: () => number): Int32Array {
  const count = a.length;
  const [p, q] = [Math.floor(next() * (count + 1)), Math.floor(next() * (count + 1))];
  const [from, to] = [Math.min(p, q), Math.max(p, q)];
  const child = new Int32Array(count);
  const taken = new Uint8Array(count);
  let place = 0;
  const fill = (parent: Int32Array, until: number): void => {
    for (let k = 0; place < until; k += 1) {
      const activity = parent[k]!;
      if (taken[activity]) continue;
      taken[activity] = 1;
      child[place] = activity;
      place += 1;
    }
  };
  fill(a, from);
  fill(b, to);
  fill(a, count);
  return child;
}

/** Neighbors change places now and then where neither waits for the other. */
export function mutate({ before }: Instance, list: Int32Array, rate: number, next: () => number): void {
  for (let k = 0; k + 1 < list.length; k += 1) {
    if (next() >= rate) continue;
    const [a, b] = [list[k]!, list[k + 1]!];
    if (before[b]!.some(({ to }) => to === a)) continue;
    list[k] = b;
    list[k + 1] = a;
  }
}
