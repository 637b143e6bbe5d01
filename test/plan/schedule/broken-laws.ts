import type { BenchProblem } from '../../../src/plan/index.js';

type Start = Readonly<Record<string, number>>;

/** Every law that a schedule breaks, minute by minute; empty for a schedule that can be worked. */
export function brokenLaws({ resources, activities }: BenchProblem, start: Start): string[] {
  const at = new Map(activities.map((activity) => [activity.id, activity]));
  const ends = (id: string) => start[id]! + at.get(id)!.minutes;
  return [
    ...activities.flatMap(({ id, earliest, after }) => [
      ...(Number.isInteger(start[id]) && start[id]! >= (earliest ?? 0) ? [] : [`${id} before its release`]),
      ...(after ?? []).flatMap((tie) =>
        start[id]! >= ends(tie.id) + (tie.lag ?? 0) ? [] : [`${id} too soon after ${tie.id}`],
      ),
    ]),
    ...resources.flatMap(({ id, capacity, closed }) => {
      const end = Math.max(0, ...activities.map((activity) => ends(activity.id)));
      return Array.from({ length: end }, (_, t) => t).flatMap((t) => {
        const used = activities
          .filter((a) => start[a.id]! <= t && t < ends(a.id))
          .reduce((sum, a) => sum + (a.uses?.[id] ?? 0), 0);
        const open = (closed ?? []).every(({ from, to }) => t < from || t >= to);
        return used <= (open ? capacity : 0) ? [] : [`${id} overdrawn at ${t}`];
      });
    }),
  ];
}

export const lateOf = ({ activities }: BenchProblem, start: Start): number =>
  activities.reduce(
    (sum, { id, minutes, due }) =>
      sum + Math.max(0, start[id]! + minutes - (due ?? Number.POSITIVE_INFINITY)),
    0,
  );

export const endOf = ({ activities }: BenchProblem, start: Start): number =>
  Math.max(0, ...activities.map(({ id, minutes }) => start[id]! + minutes));
