import type { BenchProblem } from '../../../src/plan/index.js';
import { drawing, times } from '../seeded.js';

/** A random bench: lags, releases, due times, closed spans, activities without length, resources of nought. */
export function randomBench(seed: number, count: number, longest = 6): BenchProblem {
  const { chance, whole } = drawing(seed);
  const resources = times(whole(1, 3), (r) => ({
    id: `r${r}`,
    capacity: whole(1, 4),
    ...(chance(0.3) && {
      closed: times(whole(1, 2), (k) => ({ from: 5 * k + whole(0, 4), to: 5 * k + whole(5, 7) })),
    }),
  }));
  const activities = times(count, (i) => ({
    id: `a${i}`,
    minutes: chance(0.1) ? 0 : whole(1, longest),
    uses: Object.fromEntries(
      resources.filter(() => chance(0.7)).map(({ id, capacity }) => [id, whole(0, capacity)]),
    ),
    after: times(i, (b) => b)
      .filter(() => chance(1.5 / count))
      .map((b) => ({ id: `a${b}`, ...(chance(0.5) && { lag: whole(0, 5) }) })),
    ...(chance(0.2) && { earliest: whole(0, 12) }),
    ...(chance(0.3) && { due: whole(1, 20) }),
  }));
  return { resources, activities };
}
