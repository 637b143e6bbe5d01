import { z } from 'zod';
import { PlanError } from '../error.js';

/**
 * The open form of a bench schedule. Times are whole minutes from minute 0.
 *
 * - A resource (a mechanic, a soak tank, a press, a place on the bench) has a capacity; `closed` lists spans in
 *   which nothing can use it (nights, a day off). Activities are not interrupted.
 * - An activity takes `minutes` and so much of each resource all the while. A soak that needs no hands uses the
 *   tank only; a wait that needs nothing is a lag.
 * - `after` names what must be finished before; with a lag, so many minutes before.
 * - `earliest`: parts arrive. `due`: should be finished; lateness is allowed and made least.
 */
const id = z.string().min(1).max(200);
const minute = z.number().int().min(0).max(100_000_000);
const amount = z.number().int().min(0).max(1_000_000_000);

export const benchProblemSchema = z.object({
  resources: z
    .array(
      z.object({
        id,
        capacity: amount,
        closed: z.array(z.object({ from: minute, to: minute })).default([]),
      }),
    )
    .max(1000),
  activities: z
    .array(
      z.object({
        id,
        minutes: minute,
        uses: z.record(id, amount).default({}),
        after: z.array(z.object({ id, lag: minute.default(0) })).default([]),
        earliest: minute.optional(),
        due: minute.optional(),
      }),
    )
    .max(10_000),
});

/** As written by a person or another program: what has a default may be left out. */
export type BenchProblem = z.input<typeof benchProblemSchema>;
/** Checked, with all defaults filled in. */
export type CheckedBench = z.output<typeof benchProblemSchema>;

/** The problem, or a PlanError that names the first place where it is wrong. */
export function readBenchProblem(given: unknown): CheckedBench {
  const parsed = benchProblemSchema.safeParse(given);
  if (!parsed.success) throw shapeError(parsed.error);
  const resources = uniqueIds(parsed.data.resources, 'resources');
  const activities = uniqueIds(parsed.data.activities, 'activities');
  checkClosed(parsed.data);
  checkUses(parsed.data, resources);
  checkAfter(parsed.data, activities);
  return parsed.data;
}

function shapeError(error: z.ZodError): PlanError {
  const first = error.issues[0]!;
  const place = first.path.map((p) => (typeof p === 'number' ? `[${p}]` : `.${String(p)}`)).join('');
  return new PlanError('shape', first.message, { place: place.replace(/^\./, '') || 'the problem' });
}

function uniqueIds(items: readonly { readonly id: string }[], list: string): Map<string, number> {
  const at = new Map<string, number>();
  for (const [i, item] of items.entries()) {
    if (at.has(item.id))
      throw new PlanError('duplicate', `“${item.id}” is there twice`, {
        place: `${list}[${i}].id`,
        value: item.id,
      });
    at.set(item.id, i);
  }
  return at;
}

function checkClosed({ resources }: CheckedBench): void {
  for (const [r, { closed }] of resources.entries())
    for (const [c, { from, to }] of closed.entries())
      if (from >= to)
        throw new PlanError('shape', `it closes at ${from} and opens at ${to}`, {
          place: `resources[${r}].closed[${c}]`,
          value: to,
          bound: `> ${from}`,
        });
}

function checkUses({ activities, resources }: CheckedBench, at: ReadonlyMap<string, number>): void {
  for (const [a, { uses, minutes }] of activities.entries())
    for (const [name, wanted] of Object.entries(uses)) {
      const place = `activities[${a}].uses.${name}`;
      const resource = at.get(name);
      if (resource === undefined)
        throw new PlanError('unknown', `there is no resource “${name}”`, { place, value: name });
      const { capacity } = resources[resource]!;
      if (wanted > capacity && minutes > 0)
        throw new PlanError('capacity', `${wanted} of “${name}” is wanted and ${capacity} is all there is`, {
          place,
          value: wanted,
          bound: `≤ ${capacity}`,
        });
    }
}

function checkAfter({ activities }: CheckedBench, at: ReadonlyMap<string, number>): void {
  for (const [a, { after }] of activities.entries())
    for (const [i, { id: before }] of after.entries())
      if (!at.has(before))
        throw new PlanError('unknown', `there is no activity “${before}”`, {
          place: `activities[${a}].after[${i}].id`,
          value: before,
        });
  refuseRound(activities, at);
}

function refuseRound(activities: CheckedBench['activities'], at: ReadonlyMap<string, number>): void {
  const waiting = activities.map(({ after }) => new Set(after.map(({ id: before }) => at.get(before)!)));
  const stuck = new Set(waiting.keys());
  for (let moved = true; moved; ) {
    const free = [...stuck].filter((a) => [...waiting[a]!].every((b) => !stuck.has(b)));
    for (const a of free) stuck.delete(a);
    moved = free.length > 0;
  }
  if (stuck.size === 0) return;
  const path: number[] = [];
  let here = [...stuck][0]!;
  while (!path.includes(here)) {
    path.push(here);
    here = [...waiting[here]!].find((b) => stuck.has(b))!;
  }
  const round = [...path.slice(path.indexOf(here)), here].map((a) => activities[a]!.id);
  throw new PlanError('cycle', `each waits for the next: ${round.join(' → ')}`, {
    place: `activities[${here}].after`,
    value: round,
  });
}
