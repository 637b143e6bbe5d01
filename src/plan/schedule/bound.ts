import type { Instance } from './instance.js';

export interface Windows {
  /** earliest start */
  readonly head: Int32Array;
  /** least time from an activity's finish to the end of everything */
  readonly tail: Int32Array;
}

/** Heads along the precedences from the releases on, past the spans in which something is closed; tails likewise. */
export function windowsOf(instance: Instance, firstFit: (activity: number, from: number) => number): Windows {
  const { count, order, before, behind, earliest, length } = instance;
  const head = new Int32Array(count);
  const tail = new Int32Array(count);
  for (const i of order) {
    let from = earliest[i]!;
    for (const { to, lag } of before[i]!) from = Math.max(from, head[to]! + length[to]! + lag);
    head[i] = firstFit(i, from);
  }
  for (const i of order.toReversed())
    for (const { to, lag } of behind[i]!) tail[i] = Math.max(tail[i]!, lag + length[to]! + tail[to]!);
  return { head, tail };
}

/** No schedule ends sooner: the longest chain, and for each resource the work that lies between a head and a tail. */
export function leastEnd(instance: Instance, windows: Windows): number {
  const { count, length, free } = instance;
  let least = 0;
  for (let i = 0; i < count; i += 1)
    least = Math.max(least, windows.head[i]! + length[i]! + windows.tail[i]!);
  for (const resource of free.keys()) least = Math.max(least, leastForWork(instance, windows, resource));
  return least;
}

/**
 * For each head h and tail q: all work of the activities that begin no sooner than h and have at least q behind
 * them must be done within the free capacity from h on, and q comes after that.
 */
function leastForWork({ uses, length, free }: Instance, { head, tail }: Windows, resource: number): number {
  const work = uses.map(
    (list, i) => (list.find((use) => use.resource === resource)?.amount ?? 0) * length[i]!,
  );
  const users = [...work.keys()].filter((i) => work[i]! > 0).sort((a, b) => tail[b]! - tail[a]!);
  const total = sums(free[resource]!);
  let least = 0;
  for (const from of new Set(users.map((i) => head[i]!))) {
    let sum = 0;
    for (const i of users) {
      if (head[i]! < from) continue;
      sum += work[i]!;
      least = Math.max(least, firstReaching(total, total[from]! + sum) + tail[i]!);
    }
  }
  return least;
}

/** sums[t] = what is free before step t */
export function sums(free: Int32Array): Float64Array {
  const total = new Float64Array(free.length + 1);
  for (let t = 0; t < free.length; t += 1) total[t + 1] = total[t]! + free[t]!;
  return total;
}

function firstReaching(total: Float64Array, wanted: number): number {
  let [low, high] = [0, total.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (total[middle]! >= wanted) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** No schedule is less late in sum: each activity finishes no sooner than its head allows. */
export function leastLate({ count, length, due }: Instance, { head }: Windows): number {
  let late = 0;
  for (let i = 0; i < count; i += 1) late += Math.max(0, head[i]! + length[i]! - due[i]!);
  return late;
}
