import type { Windows } from './bound.js';
import { better, forward, improved, listOf, type Plan } from './generate.js';
import type { Instance } from './instance.js';
import { type Job, jobByJob, jobMoved } from './jobs.js';
import { crossed, drawnList, mutate, pressing } from './lists.js';
import type { Table } from './table.js';

interface One {
  readonly list: Int32Array;
  readonly plan: Plan;
}

/** What the search works with. `done` is asked after each schedule and told the best so far. */
export interface Search {
  readonly instance: Instance;
  readonly table: Table;
  readonly windows: Windows;
  readonly next: () => number;
  readonly done: (best: Plan) => boolean;
  /** where there are due times and several jobs */
  readonly jobs?: readonly Job[];
}

/**
 * A seeded genetic search over activity lists: each list is made a schedule, the schedule improved forward and
 * backward, and the list of the improved schedule goes on (after Valls, Ballestín and Quintanilla, a hybrid genetic
 * algorithm for the resource-constrained project scheduling problem, Eur. J. Oper. Res. 185, 2008). A population
 * that has become all alike is begun anew beside its best.
 */
export function evolved(search: Search, first: Plan): Plan {
  let best = first;
  while (!search.done(best)) {
    best = generations(search, best, populationSize(search.instance.count));
  }
  return best;
}

/** Long lists cost more each, so fewer of them leave time for generations. */
const populationSize = (count: number): number => Math.max(10, Math.min(40, Math.round(3000 / (count + 1))));

function generations(search: Search, known: Plan, size: number): Plan {
  const { done } = search;
  let best = known;
  let population: One[] = [];
  const keep = (one: One): void => {
    if (better(one.plan, best)) best = one.plan;
    population.push(one);
  };
  while (population.length < size && !done(best)) keep(fresh(search, best, population.length));
  for (let idle = 0; idle < idleGenerations && !done(best); idle += 1) {
    const before = best;
    const parents = population;
    for (let k = 0; k < size && !done(best); k += 1) keep(child(search, parents.slice(0, size)));
    population = survivors(population, size);
    if (best !== before) idle = 0;
    if (alike(population)) break;
  }
  return best;
}

const idleGenerations = 25;

function made({ instance, table }: Search, list: Int32Array): One {
  const plan = improved(instance, table, forward(instance, table, list));
  return { list: listOf(instance, plan.start), plan };
}

/** The first lists press hard, the later ones leave more to chance. */
function fresh(search: Search, best: Plan, drawnBefore: number): One {
  const latest = pressing(search.instance, search.windows, best.end);
  if (search.jobs && drawnBefore % 2 === 1) return made(search, jobByJob(search.jobs, search.next));
  const bias = [3, 1, 2, 0][drawnBefore % 4]!;
  return made(search, drawnList(search.instance, latest, bias, search.next));
}

function child(search: Search, parents: readonly One[]): One {
  if (search.jobs && search.next() < 0.5)
    return made(search, jobMoved(parent(search, parents).list, search.jobs, search.next));
  const list = crossed(parent(search, parents).list, parent(search, parents).list, search.next);
  mutate(search.instance, list, 0.05, search.next);
  return made(search, list);
}

/** The better of two. */
function parent({ next }: Search, parents: readonly One[]): One {
  const pick = () => parents[Math.floor(next() * parents.length)]!;
  const [a, b] = [pick(), pick()];
  return better(b.plan, a.plan) ? b : a;
}

/** The best, each schedule once: copies would crowd out everything else. */
function survivors(population: readonly One[], size: number): One[] {
  const seen = new Set<number>();
  const sorted = population.toSorted((a, b) => a.plan.late - b.plan.late || a.plan.end - b.plan.end);
  const once = sorted.filter(({ plan }) => {
    const key = markOf(plan.start);
    return !seen.has(key) && seen.add(key);
  });
  return once.slice(0, size);
}

/** Equal schedules have equal marks; that two others share one is as unlikely as it is harmless (FNV-1a). */
function markOf(start: Int32Array): number {
  let mark = 0x811c9dc5;
  for (const step of start) mark = Math.imul(mark ^ step, 0x01000193);
  return mark;
}

function alike(population: readonly One[]): boolean {
  return population.length < 4;
}
