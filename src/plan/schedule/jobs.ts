import type { Instance } from './instance.js';

/** What hangs together by ties: one job, its activities in an order that keeps them. */
export interface Job {
  readonly activities: readonly number[];
  /** all lengths in sum */
  readonly work: number;
  /** the first due time in it; infinite without one */
  readonly due: number;
}

export function jobsOf({ count, order, before, length, due }: Instance): Job[] {
  const root = Int32Array.from({ length: count }, (_, i) => i);
  const find = (i: number): number => {
    while (root[i] !== i) i = root[i] = root[root[i]!]!;
    return i;
  };
  for (const [i, ties] of before.entries()) for (const { to } of ties) root[find(i)] = find(to);
  const groups = new Map<number, number[]>();
  for (const i of order) groups.set(find(i), [...(groups.get(find(i)) ?? []), i]);
  return [...groups.values()].map((activities) => ({
    activities,
    work: activities.reduce((sum, i) => sum + length[i]!, 0),
    due: activities.reduce((first, i) => Math.min(first, due[i]!), Number.POSITIVE_INFINITY),
  }));
}

/**
 * A list that takes whole jobs one after the other. Where not everything can be in time, finishing some jobs and
 * leaving others saves lateness that a bit of everything does not; short jobs first as a rule, pressed by their due
 * times, with chance deciding how much of each.
 */
export function jobByJob(jobs: readonly Job[], next: () => number): Int32Array {
  const [dues, works, noise] = [next(), next(), 0.5 * next()];
  const longest = jobs.reduce((most, { work }) => Math.max(most, work), 1);
  const last = jobs.reduce(
    (most, { due }) => (due < Number.POSITIVE_INFINITY ? Math.max(most, due) : most),
    1,
  );
  const keyed = jobs.map((job) => ({
    job,
    key: (dues * Math.min(job.due, 2 * last)) / last + (works * job.work) / longest + noise * next(),
  }));
  return Int32Array.from(keyed.sort((a, b) => a.key - b.key).flatMap(({ job }) => job.activities));
}

/** One job drawn together and put in elsewhere. Jobs are not tied to one another, so the list still keeps all ties. */
export function jobMoved(list: Int32Array, jobs: readonly Job[], next: () => number): Int32Array {
  const { activities } = jobs[Math.floor(next() * jobs.length)]!;
  const moved = new Set(activities);
  const rest = [...list].filter((i) => !moved.has(i));
  const place = Math.floor(next() * (rest.length + 1));
  return Int32Array.from([...rest.slice(0, place), ...activities, ...rest.slice(place)]);
}
