import type { BenchProblem } from '../../src/plan/index.js';

/** Uniform numbers in [0, 1) from a seed (mulberry32). */
export function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/**
 * Made-up projects with the proportions usual in the literature on project scheduling: lengths 1 to 10, up to three
 * ties forward, each resource wanted with probability `factor` (1 to 10 of it), and a capacity between the largest
 * single want (`strength` 0) and what the schedule without capacities would use at most (1).
 */
export function project(
  seed: number,
  { count = 30, resources = 4, factor = 0.5, strength = 0.2, ties = 1.8 } = {},
): BenchProblem {
  const next = uniform(seed);
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  const minutes = Array.from({ length: count }, () => whole(1, 10));
  const after: { id: string; lag: number }[][] = minutes.map(() => []);
  for (let t = 0; t < count * ties; t += 1) {
    const to = whole(1, count - 1);
    const id = `a${whole(Math.max(0, to - 12), to - 1)}`;
    if (after[to]!.length < 3 && after[to]!.every((tie) => tie.id !== id)) after[to]!.push({ id, lag: 0 });
  }
  const uses = minutes.map(() =>
    Array.from({ length: resources }, () => (next() < factor ? whole(1, 10) : 0)),
  );
  const start: number[] = [];
  for (const [i, list] of after.entries())
    start[i] = Math.max(0, ...list.map(({ id }) => start[+id.slice(1)]! + minutes[+id.slice(1)]!));
  const peak = (r: number) =>
    Math.max(
      ...Array.from({ length: 10 * count }, (_, t) =>
        uses.reduce(
          (sum, use, i) => (start[i]! <= t && t < start[i]! + minutes[i]! ? sum + use[r]! : sum),
          0,
        ),
      ),
    );
  return {
    resources: Array.from({ length: resources }, (_, r) => {
      const most = Math.max(1, ...uses.map((use) => use[r]!));
      return { id: `r${r}`, capacity: most + Math.round(strength * Math.max(0, peak(r) - most)) };
    }),
    activities: minutes.map((length, i) => ({
      id: `a${i}`,
      minutes: length,
      uses: Object.fromEntries(uses[i]!.map((amount, r) => [`r${r}`, amount])),
      after: after[i]!,
    })),
  };
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
