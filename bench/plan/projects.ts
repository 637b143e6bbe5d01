import { seeded as uniform } from '../../src/infer/index.js';

export { uniform };

import type { BenchProblem } from '../../src/plan/index.js';

/**
 * Made-up projects by the three measures of the literature (after Kolisch, Sprecher and Drexl, Management Science 41,
 * 1995; from memory): lengths 1 to 10; three activities at either end; up to three ties to and from each, none of
 * them implied by others, `complexity` a node; each resource wanted by the part `factor` of the activities, 1 to 10
 * of it; and a capacity between the largest single want (`strength` 0) and what the schedule without capacities uses
 * at most (1).
 */
export function project(
  seed: number,
  { count = 30, resources = 4, factor = 0.5, strength = 0.2, complexity = 1.8 } = {},
): BenchProblem {
  const next = uniform(seed);
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  const minutes = Array.from({ length: count }, () => whole(1, 10));
  const before = network(count, complexity, whole);
  const uses = wants(count, resources, factor, whole);
  const start: number[] = [];
  for (const [i, list] of before.entries())
    start[i] = Math.max(0, ...[...list].map((b) => start[b]! + minutes[b]!));
  const usedAt = (r: number, t: number) =>
    uses.reduce((sum, use, i) => (start[i]! <= t && t < start[i]! + minutes[i]! ? sum + use[r]! : sum), 0);
  const peak = (r: number) => Math.max(...Array.from({ length: 10 * count }, (_, t) => usedAt(r, t)));
  return {
    resources: Array.from({ length: resources }, (_, r) => {
      const most = Math.max(1, ...uses.map((use) => use[r]!));
      return { id: `r${r}`, capacity: most + Math.round(strength * Math.max(0, peak(r) - most)) };
    }),
    activities: minutes.map((length, i) => ({
      id: `a${i}`,
      minutes: length,
      uses: Object.fromEntries(uses[i]!.map((amount, r) => [`r${r}`, amount])),
      after: [...before[i]!].map((b) => ({ id: `a${b}`, lag: 0 })),
    })),
  };
}

type Whole = (from: number, to: number) => number;

/** Ends and begins: activities that only the start, or only the finish, is tied to. */
const ends = 3;
const mostTies = 3;

/** What each activity waits for; numbers rise along the ties. */
function network(count: number, complexity: number, whole: Whole): Set<number>[] {
  const before = Array.from({ length: count }, () => new Set<number>());
  const behind = before.map(() => new Set<number>());
  const ahead = before.map(() => new Set<number>());
  const tie = (a: number, b: number): boolean => {
    if (behind[a]!.size >= mostTies || before[b]!.size >= mostTies || implied(a, b)) return false;
    before[b]!.add(a);
    behind[a]!.add(b);
    for (let i = b; i < count; i += 1)
      if (i === b || ahead[i]!.has(b)) for (const x of [a, ...ahead[a]!]) ahead[i]!.add(x);
    return true;
  };
  /** there already by others, or making one of those that are there superfluous */
  const implied = (a: number, b: number) =>
    ahead[b]!.has(a) ||
    [...before[b]!].some((x) => ahead[a]!.has(x)) ||
    [...behind[a]!].some((x) => x === b || ahead[x]!.has(b)) ||
    before.some(
      (list, i) => (i === b || ahead[i]!.has(b)) && [...list].some((x) => x === a || ahead[a]!.has(x)),
    );
  for (let b = ends; b < count; b += 1)
    for (let t = 0; t < 50 && before[b]!.size === 0; t += 1) tie(whole(0, Math.min(b, count - ends) - 1), b);
  for (let a = 0; a < count - ends; a += 1)
    for (let t = 0; t < 50 && behind[a]!.size === 0; t += 1) tie(a, whole(Math.max(a + 1, ends), count - 1));
  const wanted = Math.round(complexity * (count + 2)) - 2 * ends;
  let ties = before.reduce((sum, list) => sum + list.size, 0);
  for (let t = 0; t < 20_000 && ties < wanted; t += 1) {
    const a = whole(0, count - ends - 1);
    if (tie(a, whole(Math.max(a + 1, ends), count - 1))) ties += 1;
  }
  return before;
}

/** Each activity wants one resource at least; the rest falls anywhere until the factor is reached. */
function wants(count: number, resources: number, factor: number, whole: Whole): number[][] {
  const uses = Array.from({ length: count }, () => new Array<number>(resources).fill(0));
  const ask = (i: number, r: number) => {
    uses[i]![r] = whole(1, 10);
  };
  for (let i = 0; i < count; i += 1) ask(i, whole(0, resources - 1));
  for (let asked = count; asked < factor * count * resources; ) {
    const [i, r] = [whole(0, count - 1), whole(0, resources - 1)];
    if (uses[i]![r] !== 0) continue;
    ask(i, r);
    asked += 1;
  }
  return uses;
}

/** A bench: jobs of steps in a chain with side branches, two mechanics, tank, press, bench places, late parts, due times. */
export function bench(seed: number, { jobs = 20, steps = 30, days = 12 } = {}): BenchProblem {
  const next = uniform(seed);
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  const activities = Array.from({ length: jobs }, (_, j) => {
    const due = 480 * whole(1, days);
    const partsAt = 240 * whole(0, 8);
    return Array.from({ length: steps }, (_, s) => {
      const soak = next() < 0.03;
      return {
        id: `j${j}s${s}`,
        minutes: soak ? 60 * whole(1, 8) : whole(2, 20),
        uses: soak ? { tank: 1 } : { mechanic: 1, place: 1, ...(next() < 0.05 && { press: 1 }) },
        after:
          s === 0
            ? []
            : [{ id: `j${j}s${s - (next() < 0.8 || s === 1 ? 1 : 2)}`, lag: next() < 0.05 ? 30 : 0 }],
        ...(s === Math.floor(steps / 2) && { earliest: partsAt }),
        ...(s === steps - 1 && { due }),
      };
    });
  }).flat();
  return {
    resources: [
      { id: 'mechanic', capacity: 2 },
      { id: 'tank', capacity: 2 },
      { id: 'press', capacity: 1 },
      { id: 'place', capacity: 3 },
    ],
    activities,
  };
}
