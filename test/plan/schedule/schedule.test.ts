import type { Highs } from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { project } from '../../../bench/plan/projects.js';
import { type BenchProblem, benchSchedule } from '../../../src/plan/index.js';
import { campaign } from '../../support/campaign.js';
import { drawing, times } from '../seeded.js';
import { brokenLaws, endOf, lateOf } from './broken-laws.js';
import { leastByProgram, loadHighs } from './by-program.js';
import { randomBench } from './random-bench.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

describe('the bench schedule', () => {
  test('keeps precedence, lag, capacity, closing and release on random benches', () => {
    for (const problem of times(campaign(50, 200), (seed) => randomBench(seed, 3 + (seed % 25)))) {
      const { start, makespan, late } = benchSchedule(problem, { schedules: 30 });
      expect(brokenLaws(problem, start)).toEqual([]);
      expect(makespan).toBe(endOf(problem, start));
      expect(late).toBe(lateOf(problem, start));
    }
  });

  test('is as little late and as soon finished as an exact solver’s, on small ones', () => {
    const differ = times(campaign(15, 60), (seed) => {
      const problem = randomBench(seed + 500, 2 + (seed % 6), 4);
      const { makespan, late, bound, lateBound, optimal } = benchSchedule(problem, { schedules: 400 });
      const exact = leastByProgram(highs, problem, 60);
      expect(lateBound).toBeLessThanOrEqual(exact.late);
      expect(bound).toBeLessThanOrEqual(exact.end);
      if (optimal) expect({ late, end: makespan }).toEqual(exact);
      return late === exact.late && makespan === exact.end ? [] : [{ seed, late, makespan, exact }];
    });
    expect(differ.flat()).toEqual([]);
  });

  test('the bound is never above the exact end, and what is called optimal is, on some without due times', () => {
    const gaps = times(campaign(12, 40), (seed) => {
      const { resources, activities } = randomBench(seed + 2000, 4 + (seed % 5), 5);
      const problem = { resources, activities: activities.map(({ due, ...activity }) => activity) };
      const { makespan, bound, optimal } = benchSchedule(problem, { schedules: 2000 });
      const { end } = leastByProgram(highs, problem, 70);
      expect(bound).toBeLessThanOrEqual(end);
      expect(makespan).toBe(end);
      return optimal ? 0 : 1;
    });
    // the bounds are no decoration: they close most of these
    expect(gaps.filter((open) => open === 0).length).toBeGreaterThan(0.75 * gaps.length);
  });

  test('trying starts one by one proves what capacities alone do not', () => {
    const problem = project(17, { factor: 0.5, strength: 0.35 });
    const untried = benchSchedule(problem, { schedules: 0 });
    const tried = benchSchedule(problem, { schedules: 20_000 });
    expect(tried.bound).toBeGreaterThan(untried.bound);
    expect(tried).toMatchObject({ optimal: true, makespan: 68 });
  });

  test('no bound lies above any schedule, on projects where capacity is short', () => {
    for (const seed of times(12, (i) => i)) {
      const problem = project(seed, { factor: 0.75, strength: 0.2 });
      const { makespan, bound, optimal } = benchSchedule(problem, { schedules: 300 });
      const other = benchSchedule(problem, { schedules: 300, seed: 99 });
      expect(bound).toBeLessThanOrEqual(Math.min(makespan, other.makespan));
      expect(optimal).toBe(bound === makespan);
    }
  });

  test('a longer search is never worse, and improves on the first plan', () => {
    const ends = times(8, (seed) => {
      const problem = project(seed + 40, { factor: 1, strength: 0.2 });
      return [0, 50, 1000].map((schedules) => benchSchedule(problem, { schedules }).makespan);
    });
    for (const [none, few, many] of ends) {
      expect(few).toBeLessThanOrEqual(none!);
      expect(many).toBeLessThanOrEqual(few!);
    }
    expect(ends.filter(([none, , many]) => many! < none!).length).toBeGreaterThan(3);
  });

  test('jobs that are all overdue are finished shortest first, which is least late for one mechanic', () => {
    const { whole } = drawing(11);
    const jobs = times(12, () => [whole(5, 60), whole(5, 60)] as const);
    const activities = jobs.flatMap(([strip, build], j) => [
      { id: `strip ${j}`, minutes: strip, uses: { mechanic: 1 } },
      { id: `build ${j}`, minutes: build, uses: { mechanic: 1 }, after: [{ id: `strip ${j}` }], due: 0 },
    ]);
    // Smith's rule: the sum of finishes is least in the order of lengths
    const lengths = jobs.map(([strip, build]) => strip + build).sort((x, y) => x - y);
    const least = lengths.reduce((sum, length, i) => sum + length * (lengths.length - i), 0);
    const problem = { resources: [{ id: 'mechanic', capacity: 1 }], activities };
    expect(benchSchedule(problem, { schedules: 0 }).late).toBeGreaterThan(least);
    expect(benchSchedule(problem, { schedules: 6000 }).late).toBe(least);
  });

  test('the same seed and the same number of schedules make the same schedule', () => {
    const problem = project(3, { factor: 1, strength: 0.2 });
    const first = benchSchedule(problem, { schedules: 200, seed: 5 });
    expect(benchSchedule(problem, { schedules: 200, seed: 5 })).toEqual(first);
  });

  test('the clock stops the search', () => {
    let now = 0;
    const clock = () => {
      now += 1;
      return now;
    };
    const problem = project(2, { factor: 1, strength: 0.2 });
    const { optimal, schedules } = benchSchedule(problem, { clock, budgetMs: 100 });
    expect(optimal).toBe(false);
    expect(schedules).toBeGreaterThan(5);
    expect(now).toBeLessThan(130);
    expect(() => benchSchedule(problem, { budgetMs: 100 })).toThrow(RangeError);
  });

  test('lateness goes before the end', () => {
    const problem: BenchProblem = {
      resources: [{ id: 'mechanic', capacity: 1 }],
      activities: [
        { id: 'strip', minutes: 60, uses: { mechanic: 1 } },
        { id: 'wash', minutes: 10, uses: { mechanic: 1 } },
        { id: 'soak', minutes: 100, after: [{ id: 'strip' }] },
        { id: 'adjust', minutes: 20, uses: { mechanic: 1 }, due: 20 },
      ],
    };
    expect(benchSchedule(problem)).toMatchObject({
      start: { adjust: 0, strip: 20, soak: 80, wash: 80 },
      late: 0,
      makespan: 180,
    });
  });

  test('a late part and a closed evening are waited for, and other work fills the time', () => {
    const problem: BenchProblem = {
      resources: [{ id: 'mechanic', capacity: 1, closed: [{ from: 480, to: 1440 }] }],
      activities: [
        { id: 'fit', minutes: 60, uses: { mechanic: 1 }, earliest: 450 },
        { id: 'dry', minutes: 600, after: [{ id: 'wash', lag: 15 }] },
        { id: 'wash', minutes: 45, uses: { mechanic: 1 } },
      ],
    };
    expect(benchSchedule(problem)).toMatchObject({
      start: { wash: 0, dry: 60, fit: 1440 },
      makespan: 1500,
      bound: 1500,
      optimal: true,
    });
  });

  test('nothing to do is finished at once', () => {
    expect(benchSchedule({ resources: [], activities: [] })).toMatchObject({
      start: {},
      makespan: 0,
      optimal: true,
    });
  });
});

describe('what cannot be scheduled is refused by name', () => {
  const bench = (change: object) => ({
    resources: [{ id: 'tank', capacity: 1 }],
    activities: [{ id: 'soak', minutes: 30, uses: { tank: 1 }, ...change }],
  });
  test.each([
    ['an unknown resource', bench({ uses: { press: 1 } }), 'unknown', 'activities[0].uses.press'],
    ['an unknown activity', bench({ after: [{ id: 'wash' }] }), 'unknown', 'activities[0].after[0].id'],
    ['more than there ever is', bench({ uses: { tank: 2 } }), 'capacity', 'activities[0].uses.tank'],
    ['half a minute', bench({ minutes: 0.5 }), 'shape', 'activities[0].minutes'],
    ['minutes as text', bench({ minutes: '30' }), 'shape', 'activities[0].minutes'],
    ['a negative lag', bench({ after: [{ id: 'soak', lag: -1 }] }), 'shape', 'activities[0].after[0].lag'],
    ['an activity after itself', bench({ after: [{ id: 'soak' }] }), 'cycle', 'activities[0].after'],
    ['no activities at all', { resources: [] }, 'shape', 'activities'],
    ['text', 'bench', 'shape', 'the problem'],
    [
      'a span that ends before it begins',
      { resources: [{ id: 'tank', capacity: 1, closed: [{ from: 5, to: 5 }] }], activities: [] },
      'shape',
      'resources[0].closed[0]',
    ],
    [
      'an activity twice',
      {
        resources: [],
        activities: [
          { id: 'soak', minutes: 1 },
          { id: 'soak', minutes: 2 },
        ],
      },
      'duplicate',
      'activities[1].id',
    ],
    ['times that no table holds', bench({ minutes: 99_999_999, earliest: 1 }), 'too-long', 'activities'],
  ])('%s', (_, problem, code, place) => {
    expect(() => benchSchedule(problem as BenchProblem)).toThrow(
      expect.objectContaining({ name: 'PlanError', code, place }),
    );
  });
});
