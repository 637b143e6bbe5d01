import highsLoader, { type Highs } from 'highs';
import type { BenchProblem } from '../../../src/plan/index.js';

// The package is CommonJS: the types promise a namespace where Node hands over the function itself.
export const loadHighs = highsLoader as unknown as () => Promise<Highs>;

/**
 * Least lateness, then the soonest end, as a time-indexed program for an independent solver: one yes-or-no for
 * each activity and start, by the definition of the problem and with nothing of the scheduler's own.
 */
export function leastByProgram(
  highs: Highs,
  problem: BenchProblem,
  horizon: number,
): { late: number; end: number } {
  const { activities, resources } = problem;
  const name = (i: number, t: number) => `x_${i}_${t}`;
  const starts = activities.map(({ minutes, earliest, uses }) =>
    Array.from({ length: horizon - minutes + 1 }, (_, t) => t).filter(
      (t) =>
        t >= (earliest ?? 0) &&
        resources.every((r) => !(minutes > 0 && uses?.[r.id]) || isOpen(r, t, minutes)),
    ),
  );
  const rows: string[] = [];
  for (const [i, list] of starts.entries()) rows.push(`${list.map((t) => name(i, t)).join(' + ')} = 1`);
  const startOf = (i: number, sign: '+' | '-') =>
    starts[i]!.map((t) => `${sign} ${t} ${name(i, t)}`).join(' ');
  for (const [i, { after }] of activities.entries())
    for (const { id, lag } of after ?? []) {
      const b = activities.findIndex((a) => a.id === id);
      rows.push(`${startOf(i, '+')} ${startOf(b, '-')} >= ${activities[b]!.minutes + (lag ?? 0)}`);
    }
  for (const { id, capacity } of resources)
    for (let t = 0; t < horizon; t += 1) {
      const using = activities.flatMap(({ minutes, uses }, i) =>
        uses?.[id]
          ? starts[i]!.filter((s) => s <= t && t < s + minutes).map((s) => `${uses[id]} ${name(i, s)}`)
          : [],
      );
      if (using.length > 0) rows.push(`${using.join(' + ')} <= ${capacity}`);
    }
  for (const [i, { minutes }] of activities.entries()) rows.push(`finish ${startOf(i, '-')} >= ${minutes}`);
  // one minute of lateness outweighs any end
  const late = activities.flatMap(({ minutes, due }, i) =>
    due === undefined
      ? []
      : starts[i]!.filter((t) => t + minutes > due).map((t) => `${(t + minutes - due) * 1000} ${name(i, t)}`),
  );
  const text = [
    'Minimize',
    ` obj: ${['finish', ...late].join(' + ')}`,
    'Subject To',
    ...rows.map((row, k) => ` c${k}: ${row}`),
    'Binary',
    ...starts.flatMap((list, i) => list.map((t) => ` ${name(i, t)}`)),
    'End',
  ].join('\n');
  const solution = highs.solve(text, { output_flag: false, mip_rel_gap: 0 });
  if (solution.Status !== 'Optimal') throw new Error(solution.Status);
  const value = Math.round(solution.ObjectiveValue);
  return { late: Math.floor(value / 1000), end: value % 1000 };
}

function isOpen(resource: BenchProblem['resources'][number], from: number, minutes: number): boolean {
  return (resource.closed ?? []).every((span) => from + minutes <= span.from || from >= span.to);
}
