import { PlanError } from '../error.js';
import type { CheckedBench } from './bench-problem.js';

export interface Tie {
  readonly to: number;
  readonly lag: number;
}

/** A bench problem by numbers. Times are in steps of `unit` minutes. */
export interface Instance {
  readonly unit: number;
  readonly count: number;
  readonly length: Int32Array;
  readonly earliest: Int32Array;
  /** in steps, not whole where the unit does not divide it; infinite without a due time */
  readonly due: Float64Array;
  readonly hasDue: boolean;
  readonly before: readonly (readonly Tie[])[];
  readonly behind: readonly (readonly Tie[])[];
  /** an order in which everything comes after what it waits for */
  readonly order: Int32Array;
  /** place in `order` */
  readonly rank: Int32Array;
  /** what an activity uses, as resource and amount; nothing for an activity without length */
  readonly uses: readonly (readonly { readonly resource: number; readonly amount: number }[])[];
  /** what is free of each resource in each step before anything is planned */
  readonly free: readonly Int32Array[];
  /** every active schedule ends by this step */
  readonly horizon: number;
}

/** Cells of the table of what is free when; above this it would take gigabytes. */
const mostCells = 60_000_000;

/** @throws PlanError where the times are too far apart for a table of minutes */
export function instanceOf(problem: CheckedBench): Instance {
  const { activities, resources } = problem;
  const unit = commonUnit(problem);
  const at = new Map(activities.map(({ id }, i) => [id, i]));
  const count = activities.length;
  const before = activities.map(({ after }) =>
    after.map(({ id, lag }) => ({ to: at.get(id)!, lag: lag / unit })),
  );
  const order = orderOf(before);
  const horizon = horizonOf(problem, unit);
  if (horizon * Math.max(1, resources.length) > mostCells)
    throw new PlanError('too-long', `${horizon} steps of ${unit} min on ${resources.length} resources`, {
      place: 'activities',
      value: horizon,
      bound: `${mostCells} cells`,
    });
  const resourceAt = new Map(resources.map(({ id }, i) => [id, i]));
  return {
    unit,
    count,
    length: Int32Array.from(activities, ({ minutes }) => minutes / unit),
    earliest: Int32Array.from(activities, ({ earliest }) => (earliest ?? 0) / unit),
    due: Float64Array.from(activities, ({ due }) =>
      due === undefined ? Number.POSITIVE_INFINITY : due / unit,
    ),
    hasDue: activities.some(({ due }) => due !== undefined),
    before,
    behind: turned(before),
    order,
    rank: ranks(order),
    uses: activities.map(({ uses, minutes }) => (minutes === 0 ? [] : usesOf(uses, resourceAt))),
    free: resources.map((resource) => freeOf(resource, unit, horizon)),
    horizon,
  };
}

function usesOf(uses: Readonly<Record<string, number>>, at: ReadonlyMap<string, number>) {
  return Object.entries(uses)
    .filter(([, amount]) => amount > 0)
    .map(([name, amount]) => ({ resource: at.get(name)!, amount }));
}

/** Planning in steps of 5 min where all times are multiples of 5 costs a fifth. */
function commonUnit({ activities, resources }: CheckedBench): number {
  const all = [
    ...activities.flatMap(({ minutes, earliest, after }) => [
      minutes,
      earliest ?? 0,
      ...after.map(({ lag }) => lag),
    ]),
    ...resources.flatMap(({ closed }) => closed.flatMap(({ from, to }) => [from, to])),
  ];
  return all.reduce(divisor, 0) || 1;
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

/** One after the other behind the last release and the last opening: nothing sensible ends later. */
function horizonOf({ activities, resources }: CheckedBench, unit: number): number {
  const begin = [
    ...activities.map(({ earliest }) => earliest ?? 0),
    ...resources.flatMap(({ closed }) => closed.map(({ to }) => to)),
  ].reduce((a, b) => Math.max(a, b), 0);
  const rest = activities.reduce(
    (sum, { minutes, after }) => sum + minutes + after.reduce((most, { lag }) => Math.max(most, lag), 0),
    0,
  );
  return (begin + rest) / unit;
}

function freeOf({ capacity, closed }: CheckedBench['resources'][number], unit: number, horizon: number) {
  const free = new Int32Array(horizon).fill(capacity);
  for (const { from, to } of closed) free.fill(0, from / unit, to / unit);
  return free;
}

function turned(before: readonly (readonly Tie[])[]): Tie[][] {
  const behind: Tie[][] = before.map(() => []);
  for (const [i, ties] of before.entries()) for (const { to, lag } of ties) behind[to]!.push({ to: i, lag });
  return behind;
}

function orderOf(before: readonly (readonly Tie[])[]): Int32Array {
  const behind = turned(before);
  const waiting = before.map((ties) => ties.length);
  const order = [...waiting.keys()].filter((i) => waiting[i] === 0);
  for (let next = 0; next < order.length; next += 1)
    for (const { to } of behind[order[next]!]!) {
      waiting[to]! -= 1;
      if (waiting[to] === 0) order.push(to);
    }
  return Int32Array.from(order);
}

function ranks(order: Int32Array): Int32Array {
  const rank = new Int32Array(order.length);
  for (const [place, i] of order.entries()) rank[i] = place;
  return rank;
}
