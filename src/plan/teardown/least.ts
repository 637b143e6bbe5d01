import { PlanError } from '../error.js';
import { numbered } from './choice.js';
import { checkGraph, checkIds, type TeardownGraph, without } from './graph.js';
import { inOrder } from './order.js';
import type { Act } from './removals.js';
import { search } from './search.js';

/** A soak or a cool-down, started at once, before a piece can be taken off. */
export interface Wait {
  readonly piece: string;
  readonly minutes: number;
}

export interface Goal {
  /** to have in the hand by themselves: to replace, to measure, to look at from all sides */
  readonly reach: readonly string[];
  /** only to have out of the way: leaving inside an assembly will do */
  readonly clear?: readonly string[];
  /** off already, whoever took them off */
  readonly off?: readonly string[];
  readonly waits?: readonly Wait[];
  /** how many choices the search may look at; the catalog's graphs need some hundreds */
  readonly limit?: number;
}

export interface Removal {
  /** the piece's id, or the assembly's */
  readonly id: string;
  readonly how: 'alone' | 'whole';
  readonly pieces: readonly string[];
  readonly minutes: number;
  /** minute at which it can be begun */
  readonly start: number;
  /** ids of removals that must be done before */
  readonly after: readonly string[];
}

export interface LeastTeardown {
  /** in an order that can be followed */
  readonly removals: readonly Removal[];
  /** hands-on minutes */
  readonly minutes: number;
  /** hands-on minutes and the waiting that cannot be filled */
  readonly elapsed: number;
  /** no set of removals takes fewer minutes than this */
  readonly bound: number;
  /** proved: nothing cheaper exists */
  readonly optimal: boolean;
}

/**
 * The cheapest set of removals that reaches the goal, and an order for it.
 *
 * A piece may come off by itself once everything before it is off. What is still on of an assembly may leave as
 * one, once everything before its pieces that is not of it is off; it then counts as out of the way, but not as
 * reached. Minutes first, then the number of removals, then the number of pieces off.
 * @throws PlanError for a graph or a goal that does not hold together
 * @example a shroud (3 min) under a starter (3) and a tank (4) that can leave together in 4 min: clearing the
 * shroud takes 4 min, reaching it 10
 */
export function leastTeardown(graph: TeardownGraph, goal: Goal): LeastTeardown {
  checkGraph(graph);
  checkGoal(graph, goal);
  const off = new Set(goal.off ?? []);
  const left = without(graph, off);
  const at = new Map(left.pieces.map(({ id }, i) => [id, i]));
  const places = (ids: readonly string[]) => ids.flatMap((id) => at.get(id) ?? []);
  const found = search(numbered(left), places(goal.reach), places(goal.clear ?? []), goal.limit ?? 200_000);
  const removals = removalsOf(left, found.acts, goal.waits ?? []);
  const elapsed = removals.reduce((end, { start, minutes }) => Math.max(end, start + minutes), 0);
  return { removals, minutes: found.minutes, elapsed, bound: found.bound, optimal: found.optimal };
}

function checkGoal(graph: TeardownGraph, goal: Goal): void {
  const known = new Set(graph.pieces.map(({ id }) => id));
  checkIds(goal.reach, known, 'reach');
  checkIds(goal.clear ?? [], known, 'clear');
  checkIds(goal.off ?? [], known, 'off');
  for (const [i, { piece, minutes }] of (goal.waits ?? []).entries()) {
    checkIds([piece], known, `waits[${i}].piece`);
    if (!(minutes >= 0 && Number.isFinite(minutes)))
      throw new PlanError('shape', `${minutes} is no number of minutes`, {
        place: `waits[${i}].minutes`,
        value: minutes,
        bound: 'finite, ≥ 0',
      });
  }
}

function removalsOf(graph: TeardownGraph, acts: readonly Act[], waits: readonly Wait[]): Removal[] {
  const untimed = acts.map(({ whole, pieces }) => {
    const holder = whole === undefined ? graph.pieces[pieces[0]!]! : graph.together[whole]!;
    const how: Removal['how'] = whole === undefined ? 'alone' : 'whole';
    return { id: holder.id, how, pieces: pieces.map((i) => graph.pieces[i]!.id), minutes: holder.minutes };
  });
  const notBefore = untimed.map(({ pieces }) =>
    Math.max(0, ...waits.filter(({ piece }) => pieces.includes(piece)).map(({ minutes }) => minutes)),
  );
  const rank = acts.map(({ pieces }) => Math.min(...pieces));
  const minutes = untimed.map((removal) => removal.minutes);
  return inOrder(acts, minutes, notBefore, rank).map(({ act, start }) => ({
    ...untimed[act]!,
    start,
    after: acts[act]!.after.map((before) => untimed[before]!.id),
  }));
}
