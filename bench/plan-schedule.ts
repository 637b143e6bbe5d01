/**
 * The bench schedule on made-up projects of 30 activities and 4 resources, one second each: the gap to the lower
 * bound, to a run ten times as long, and to plain sampling in the same time; and a bench of 20 jobs of 30 steps.
 */
import { type BenchSchedule, benchSchedule } from '../src/plan/index.js';
import { bench, project } from './plan/projects.js';

const clock = () => performance.now();
const percent = (part: number) => `${(100 * part).toFixed(3)} %`;
const mean = (xs: readonly number[]) => xs.reduce((a, b) => a + b, 0) / xs.length;

interface Row {
  readonly second: BenchSchedule;
  readonly long: BenchSchedule;
  readonly short: BenchSchedule;
  readonly ms: number;
}

function projects(each: number): void {
  const all: Row[] = [];
  console.log('30 activities, 4 resources; gaps in the mean');
  console.log('  factor  strength   1 s to bound   1 s to 10 s   20 ms to 10 s   proved    slowest');
  for (const factor of [0.25, 0.5, 0.75, 1])
    for (const strength of [0.2, 0.5, 0.7, 1]) {
      const rows = Array.from({ length: each }, (_, i) =>
        run(100 * i + 7, factor, strength, complexities[i % 3]!),
      );
      all.push(...rows);
      const gap = (of: (row: Row) => number, to: (row: Row) => number) =>
        percent(mean(rows.map((row) => of(row) / to(row) - 1)));
      const cells = [
        gap(
          (r) => r.second.makespan,
          (r) => Math.max(r.second.bound, r.long.bound),
        ),
        gap(
          (r) => r.second.makespan,
          (r) => r.long.makespan,
        ),
        gap(
          (r) => r.short.makespan,
          (r) => r.long.makespan,
        ),
        `${rows.filter((r) => r.second.optimal).length}/${each}`,
        `${Math.max(...rows.map((r) => r.ms)).toFixed(0)} ms`,
      ];
      console.log(
        `  ${String(factor).padEnd(8)}${String(strength).padEnd(8)}${cells.map((c) => c.padStart(13)).join('')}`,
      );
    }
  const best = (r: Row) => Math.min(r.second.makespan, r.long.makespan);
  const over = mean(all.map((r) => r.second.makespan / best(r) - 1));
  console.log(
    `  all ${all.length}: ${percent(over)} above the best known in the mean, ${all.filter((r) => r.second.optimal).length} proved`,
  );
}

/** Ties a node, as the literature’s small sets have them. */
const complexities = [1.5, 1.8, 2.1];

function run(seed: number, factor: number, strength: number, complexity: number): Row {
  const problem = project(seed, { factor, strength, complexity });
  const begin = clock();
  const second = benchSchedule(problem, { clock, budgetMs: 1000 });
  const ms = clock() - begin;
  const short = benchSchedule(problem, { clock, budgetMs: 20 });
  const long = second.optimal ? second : benchSchedule(problem, { clock, budgetMs: 10_000, seed: 2 });
  return { second, long, short, ms };
}

function benches(): void {
  console.log(
    '\n20 jobs of 30 steps, 2 mechanics, due within 12 or 3 days, 3 s: minutes late and makespan beside the first plan',
  );
  for (const [seed, days] of [
    [1, 12],
    [2, 12],
    [1, 3],
    [2, 3],
  ] as const) {
    const problem = bench(seed, { days });
    const first = benchSchedule(problem, { schedules: 0 });
    const begin = clock();
    const { late, lateBound, makespan, bound, schedules } = benchSchedule(problem, { clock, budgetMs: 3000 });
    const ms = (clock() - begin).toFixed(0);
    console.log(
      `  late ${late} (bound ${lateBound}, first ${first.late})  makespan ${makespan} (bound ${bound}, first ${first.makespan})  ${schedules} schedules  ${ms} ms`,
    );
  }
}

projects(Number(process.env.WRISTPIN_BENCH_EACH ?? 3));
benches();
