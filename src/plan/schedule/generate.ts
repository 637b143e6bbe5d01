import type { Instance } from './instance.js';
import type { Table } from './table.js';

/** Starts of all activities, and how good that is: lateness first, then the end. */
export interface Plan {
  readonly start: Int32Array;
  readonly late: number;
  readonly end: number;
}

export const better = (a: Plan, b: Plan): boolean => a.late < b.late || (a.late === b.late && a.end < b.end);

/**
 * Serial schedule generation: each activity of the list as early as it fits. One list makes the best schedule.
 * The list must bring everything after what it waits for.
 */
export function forward(instance: Instance, table: Table, list: Int32Array): Plan {
  const { before, earliest, length } = instance;
  const start = new Int32Array(instance.count);
  table.clear();
  for (const activity of list) {
    let from = earliest[activity]!;
    for (const { to, lag } of before[activity]!) from = Math.max(from, start[to]! + length[to]! + lag);
    start[activity] = table.firstFit(activity, from);
    table.take(activity, start[activity]!);
  }
  return judged(instance, start);
}

/**
 * Everything as late as it fits, the last to end first, nothing later than the plan's end nor later than it may
 * be without growing late. Each activity can at least keep its place: what is planned already and is in its way
 * now was in its way before.
 */
function backward(instance: Instance, table: Table, plan: Plan): Int32Array {
  const { behind, length, due } = instance;
  const start = new Int32Array(instance.count);
  const end = (i: number) => plan.start[i]! + length[i]!;
  table.clear();
  for (const activity of lastToEnd(instance, plan.start)) {
    let to = Math.min(plan.end, Math.max(Math.floor(due[activity]!), end(activity)));
    for (const { to: next, lag } of behind[activity]!) to = Math.min(to, start[next]! - lag);
    start[activity] = table.lastFit(activity, to - length[activity]!);
    table.take(activity, start[activity]!);
  }
  return start;
}

/** Forward-backward improvement (double justification) until it gains nothing. Never makes a plan worse. */
export function improved(instance: Instance, table: Table, plan: Plan): Plan {
  let best = plan;
  for (;;) {
    const next = forward(instance, table, listOf(instance, backward(instance, table, best)));
    if (!better(next, best)) return best;
    best = next;
  }
}

/**
 * The list that makes this schedule, or a better one. Ties go by precedence, so that what takes no time still comes
 * behind what it waits for. Keys in one number each sort several times faster than with a comparison.
 */
export function listOf({ count, rank, order }: Instance, start: Int32Array): Int32Array {
  const keys = new Float64Array(count);
  for (let i = 0; i < count; i += 1) keys[i] = start[i]! * count + rank[i]!;
  keys.sort();
  const list = new Int32Array(count);
  for (let k = 0; k < count; k += 1) list[k] = order[keys[k]! % count]!;
  return list;
}

/** By the end, then the start, then precedence, each from the last. */
function lastToEnd(instance: Instance, start: Int32Array): Int32Array {
  const { count, rank, order, length, horizon } = instance;
  // above this a key is no exact number any more, and would name another activity
  if ((horizon + 1) ** 2 * count > Number.MAX_SAFE_INTEGER) return lastToEndCompared(instance, start);
  const keys = new Float64Array(count);
  for (let i = 0; i < count; i += 1)
    keys[i] = ((start[i]! + length[i]!) * (horizon + 1) + start[i]!) * count + rank[i]!;
  keys.sort();
  const list = new Int32Array(count);
  for (let k = 0; k < count; k += 1) list[count - 1 - k] = order[keys[k]! % count]!;
  return list;
}

function lastToEndCompared({ count, rank, length }: Instance, start: Int32Array): Int32Array {
  const end = (i: number) => start[i]! + length[i]!;
  const list = Int32Array.from({ length: count }, (_, i) => i);
  return list.sort((a, b) => end(b) - end(a) || start[b]! - start[a]! || rank[b]! - rank[a]!);
}

function judged({ count, length, due, hasDue }: Instance, start: Int32Array): Plan {
  let end = 0;
  let late = 0;
  for (let i = 0; i < count; i += 1) {
    const finish = start[i]! + length[i]!;
    if (finish > end) end = finish;
    if (hasDue && finish > due[i]!) late += finish - due[i]!;
  }
  return { start, late, end };
}
