import { seeded } from '../../infer/index.js';
import { type BenchProblem, readBenchProblem } from './bench-problem.js';
import { leastEnd, leastLate, type Windows, windowsOf } from './bound.js';
import { evolved } from './evolve.js';
import { forward, improved, type Plan } from './generate.js';
import { type Instance, instanceOf } from './instance.js';
import { jobsOf } from './jobs.js';
import { drawnList, pressing } from './lists.js';
import { refuterOf } from './refute.js';
import { type Table, tableOf } from './table.js';

export interface ScheduleOptions {
  readonly seed?: number;
  /** how many schedules are made at most; with this alone the answer is the same on every machine */
  readonly schedules?: number;
  /** stop when the clock has gone so many milliseconds on */
  readonly budgetMs?: number;
  /** milliseconds; needed with `budgetMs` */
  readonly clock?: () => number;
}

export interface BenchSchedule {
  /** first minute of each activity */
  readonly start: Readonly<Record<string, number>>;
  /** the minute at which all is finished */
  readonly makespan: number;
  /** no schedule is finished sooner */
  readonly bound: number;
  /** minutes behind their due times, over all activities */
  readonly late: number;
  /** no schedule is less late */
  readonly lateBound: number;
  /** proved: nothing is less late, and nothing sooner finished */
  readonly optimal: boolean;
  /** how many schedules were made */
  readonly schedules: number;
}

/** Without a limit of either kind: enough for a day at the bench. */
const usualSchedules = 20_000;

/**
 * A schedule for the bench: least lateness in sum, then the soonest finish, as far as the limit allows.
 *
 * Method: serial schedule generation with forward-backward improvement under a seeded genetic search; it ends when
 * the lower bounds are reached or the limit is. The schedule always keeps capacities, releases and lags.
 * @throws PlanError for a problem that does not hold together
 * @throws RangeError for `budgetMs` without a clock
 * @example two activities of 10 min for one mechanic, the second due at minute 10: the second first, makespan 20
 */
export function benchSchedule(given: BenchProblem, options: ScheduleOptions = {}): BenchSchedule {
  const problem = readBenchProblem(given);
  const instance = instanceOf(problem);
  const table = tableOf(instance);
  table.clear();
  const windows = windowsOf(instance, table.firstFit);
  const limit = limitOf(options);
  const bounds = { end: leastEnd(instance, windows), late: leastLate(instance, windows) };
  const reached = (plan: Plan) => plan.late <= bounds.late && plan.end <= bounds.end;
  const jobs = instance.hasDue ? jobsOf(instance) : [];
  const next = seeded(options.seed ?? 1);
  let best = firstPlan(instance, table, windows);
  const search = (share: number): void => {
    const done = (plan: Plan) => reached(plan) || limit.over(share);
    best = evolved({ instance, table, windows, next, done, ...(jobs.length > 1 && { jobs }) }, best);
  };
  search(searchFirst);
  // the proof is worth its time only against a good answer
  if (!reached(best)) bounds.end = raised(instance, windows, bounds.end, best.end, limit.proving(proofUntil));
  search(1);
  return answer(problem, instance, best, bounds, limit.made());
}

const searchFirst = 0.05;
const proofUntil = 0.5;

/** A trial of the proof takes about as long as so many schedules. */
const schedulesPerTrial = 10;

interface Limit {
  /** counts one schedule; whether this share of the limit is used up */
  readonly over: (share: number) => boolean;
  /** counts one trial of the proof each time; whether time up to this share or the trials are used up */
  readonly proving: (share: number) => () => boolean;
  readonly made: () => number;
}

function limitOf({ schedules, budgetMs, clock }: ScheduleOptions): Limit {
  if (budgetMs !== undefined && !clock)
    throw new RangeError('budgetMs: a budget in milliseconds needs a clock');
  const begin = clock?.() ?? 0;
  const most = schedules ?? (budgetMs === undefined ? usualSchedules : Number.POSITIVE_INFINITY);
  let made = 0;
  const timeOver = (share: number) => budgetMs !== undefined && clock!() - begin >= share * budgetMs;
  return {
    over: (share) => {
      if (made >= share * most || timeOver(share)) return true;
      made += 1;
      return false;
    },
    proving: (share) => {
      let trials = 0;
      return () => {
        trials += 1;
        return trials > most / schedulesPerTrial || timeOver(share);
      };
    },
    made: () => made,
  };
}

/** What presses most first, improved: what a limit of nothing gets. */
function firstPlan(instance: Instance, table: Table, windows: Windows): Plan {
  const latest = pressing(instance, windows, instance.horizon);
  const list = drawnList(instance, latest, Number.POSITIVE_INFINITY, () => 0);
  return improved(instance, table, forward(instance, table, list));
}

/**
 * The bound raised as long as it can be proved that no schedule ends there. Trying starts one by one costs as much as
 * hundreds of schedules: it is done only where it may close the gap, else its time is better spent on the search.
 */
function raised(instance: Instance, windows: Windows, from: number, to: number, over: () => boolean): number {
  const { refutes, refutesByTrying } = refuterOf(instance, windows);
  let bound = from;
  while (bound < to && !over() && refutes(bound)) bound += 1;
  if (to - bound > Math.max(2, closable * to)) return bound;
  while (bound < to && !over() && refutesByTrying(bound, over)) bound += 1;
  return bound;
}

const closable = 0.08;

function answer(
  { activities }: ReturnType<typeof readBenchProblem>,
  { unit }: Instance,
  best: Plan,
  bounds: { readonly end: number; readonly late: number },
  schedules: number,
): BenchSchedule {
  return {
    start: Object.fromEntries(activities.map(({ id }, i) => [id, best.start[i]! * unit])),
    makespan: best.end * unit,
    bound: bounds.end * unit,
    late: Math.round(best.late * unit),
    lateBound: Math.round(bounds.late * unit),
    optimal: best.late <= bounds.late && best.end <= bounds.end,
    schedules,
  };
}
