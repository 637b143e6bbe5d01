import { sums, type Windows } from './bound.js';
import type { Instance } from './instance.js';

/** Above this many activities the intervals are too many for what they bring. */
const mostActivities = 130;

/** Above this many, trying starts one by one takes longer than the search it is to end. */
const mostTried = 60;

/**
 * Proofs that no schedule ends by a given step.
 *
 * Method (destructive bound): every activity gets the window [head, end − tail]; the windows are narrowed along the
 * precedences, by pairs that cannot run together, and by what must run in its window anyway (compulsory parts);
 * and in every interval between window bounds the work that must fall into it may not exceed what is free
 * (energetic reasoning). A window that becomes too short, or an interval too full, is the proof. Where that is not
 * enough, each activity is put at the first and at the last start of its window; what is refuted so narrows the
 * window (shaving), over again until nothing changes.
 */
export interface Refuter {
  /** by the windows and intervals alone: fast */
  readonly refutes: (end: number) => boolean;
  /** with shaving. `over` is asked between trials; once it says yes, what is not proved counts as not provable */
  readonly refutesByTrying: (end: number, over: () => boolean) => boolean;
}

export function refuterOf(instance: Instance, { head, tail }: Windows): Refuter {
  if (instance.count > mostActivities) return { refutes: () => false, refutesByTrying: () => false };
  const known: Known = {
    apart: pairsApart(instance),
    loads: instance.free.map((_, r) => loadOf(instance, r)),
  };
  const windows = (end: number): Starts => ({
    from: head.slice(),
    to: Int32Array.from(tail, (q, i) => end - q - instance.length[i]!),
  });
  return {
    refutes: (end) => {
      const { from, to } = windows(end);
      return impossible(instance, known, from, to);
    },
    refutesByTrying: (end, over) => {
      const { from, to } = windows(end);
      if (impossible(instance, known, from, to)) return true;
      return instance.count <= mostTried && shavedAway(instance, known, { from, to }, over);
    },
  };
}

interface Starts {
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** Whether shaving empties a window. Every narrowing is kept: what follows is refuted with its help. */
function shavedAway(instance: Instance, known: Known, windows: Starts, over: () => boolean): boolean {
  for (let changed = true; changed; ) {
    changed = false;
    for (let i = 0; i < instance.count; i += 1)
      for (const side of ['from', 'to'] as const) {
        if (over()) return false;
        if (!cannotStartAt(instance, known, windows, i, side)) continue;
        windows[side][i]! += side === 'from' ? 1 : -1;
        changed = true;
        if (impossible(instance, known, windows.from, windows.to)) return true;
      }
  }
  return false;
}

function cannotStartAt(
  instance: Instance,
  known: Known,
  windows: Starts,
  i: number,
  side: keyof Starts,
): boolean {
  const from = windows.from.slice();
  const to = windows.to.slice();
  const start = windows[side][i]!;
  from[i] = start;
  to[i] = start;
  return impossible(instance, known, from, to);
}

/** Narrows the windows; whether that shows that nothing fits them. */
function impossible(instance: Instance, known: Known, from: Int32Array, to: Int32Array): boolean {
  const closed = () => from.some((start, i) => start > to[i]!);
  for (let changed = true; changed; ) {
    changed = alongTies(instance, from, to);
    changed = byPairs(instance, known.apart, from, to) || changed;
    // what follows reads the table between the bounds and needs them in order
    if (closed()) return true;
    const parts = byCompulsoryParts(instance, from, to);
    if (parts === 'impossible') return true;
    changed = parts === 'changed' || changed;
  }
  return closed() || overloaded(instance, known.loads, from, to);
}

type Pairs = readonly (readonly [number, number])[];

/** What the proofs need again and again and no window changes. */
interface Known {
  readonly apart: Pairs;
  readonly loads: readonly Load[];
}

/** Who uses a resource, how much, and what is free of it before each step. */
interface Load {
  readonly users: readonly number[];
  readonly amounts: readonly number[];
  readonly total: Float64Array;
}

function loadOf({ uses, free }: Instance, resource: number): Load {
  const amounts = uses.map((list) => list.find((use) => use.resource === resource)?.amount ?? 0);
  const users = [...amounts.keys()].filter((i) => amounts[i]! > 0);
  return { users, amounts, total: sums(free[resource]!) };
}

/** Pairs that together want more of a resource than there is. */
function pairsApart({ uses, free, count }: Instance): [number, number][] {
  const most = free.map((steps) => steps.reduce((a, b) => Math.max(a, b), 0));
  const clash = (a: number, b: number) =>
    uses[a]!.some(({ resource, amount }) => {
      const other = uses[b]!.find((use) => use.resource === resource);
      return other !== undefined && amount + other.amount > most[resource]!;
    });
  const pairs: [number, number][] = [];
  for (let a = 0; a < count; a += 1)
    for (let b = a + 1; b < count; b += 1) if (clash(a, b)) pairs.push([a, b]);
  return pairs;
}

function alongTies({ order, before, length }: Instance, from: Int32Array, to: Int32Array): boolean {
  let changed = false;
  for (const i of order)
    for (const { to: b, lag } of before[i]!)
      if (from[b]! + length[b]! + lag > from[i]!) {
        from[i] = from[b]! + length[b]! + lag;
        changed = true;
      }
  for (const i of order.toReversed())
    for (const { to: b, lag } of before[i]!)
      if (to[i]! - lag - length[b]! < to[b]!) {
        to[b] = to[i]! - lag - length[b]!;
        changed = true;
      }
  return changed;
}

/** Where one of a pair cannot be first, the other is. Where neither can, the windows close and that is found out. */
function byPairs({ length }: Instance, pairs: Pairs, from: Int32Array, to: Int32Array): boolean {
  let changed = false;
  const puts = (first: number, second: number): void => {
    const soonest = from[first]! + length[first]!;
    const latest = to[second]! - length[first]!;
    if (soonest > from[second]!) {
      from[second] = soonest;
      changed = true;
    }
    if (latest < to[first]!) {
      to[first] = latest;
      changed = true;
    }
  };
  for (const [a, b] of pairs) {
    if (from[a]! + length[a]! > to[b]!) puts(b, a);
    if (from[b]! + length[b]! > to[a]!) puts(a, b);
  }
  return changed;
}

/** An activity surely runs between its latest start and its earliest finish; others must go round that. */
function byCompulsoryParts(
  { uses, length, free, count }: Instance,
  from: Int32Array,
  to: Int32Array,
): 'impossible' | 'changed' | 'same' {
  const left = free.map((steps) => steps.slice());
  const part = (i: number) => [to[i]!, from[i]! + length[i]!] as const;
  for (let i = 0; i < count; i += 1) {
    const [begin, stop] = part(i);
    for (const { resource, amount } of uses[i]!)
      for (let t = begin; t < stop; t += 1) {
        left[resource]![t]! -= amount;
        if (left[resource]![t]! < 0) return 'impossible';
      }
  }
  let changed = false;
  const short = (i: number, t: number): boolean => {
    const [begin, stop] = part(i);
    const own = t >= begin && t < stop;
    return uses[i]!.some(({ resource, amount }) => left[resource]![t]! + (own ? amount : 0) < amount);
  };
  for (let i = 0; i < count; i += 1) {
    const was = [from[i]!, to[i]!];
    from[i] = pushed(i, from[i]!, to[i]!, length[i]!, short);
    to[i] = pulled(i, from[i]!, to[i]!, length[i]!, short);
    changed ||= from[i] !== was[0] || to[i] !== was[1];
  }
  return changed ? 'changed' : 'same';
}

type Short = (activity: number, step: number) => boolean;

function pushed(i: number, from: number, to: number, length: number, short: Short): number {
  let start = from;
  for (let t = start + length - 1; t >= start && start <= to; t -= 1)
    if (short(i, t)) {
      start = t + 1;
      t = start + length;
    }
  return start;
}

function pulled(i: number, from: number, to: number, length: number, short: Short): number {
  let start = to;
  for (let t = start; t < start + length && start >= from; t += 1)
    if (short(i, t)) {
      start = t - length;
      t = start - 1;
    }
  return start;
}

function overloaded({ length }: Instance, loads: readonly Load[], from: Int32Array, to: Int32Array): boolean {
  return loads.some(({ users, amounts, total }) => {
    const begins = new Set(users.flatMap((i) => [from[i]!, to[i]!]));
    const stops = new Set(users.flatMap((i) => [to[i]! + length[i]!, from[i]! + length[i]!]));
    for (const begin of begins)
      for (const stop of stops) {
        if (stop <= begin) continue;
        const room = total[stop]! - total[begin]!;
        let work = 0;
        for (const i of users) work += amounts[i]! * inside(from[i]!, to[i]!, length[i]!, begin, stop);
        if (work > room) return true;
      }
    return false;
  });
}

/** The least of an activity that falls into [begin, stop), wherever in its window it starts. */
function inside(from: number, to: number, length: number, begin: number, stop: number): number {
  const early = from + length - begin;
  const late = stop - to;
  return Math.max(0, Math.min(length, stop - begin, early, late));
}
