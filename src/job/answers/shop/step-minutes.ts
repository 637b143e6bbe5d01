import type { ShopMinutes } from '../../../plan/index.js';
import type { From } from '../../job.js';
import type { Answers } from '../answers.js';
import { piecesOf } from '../steps/taken.js';

/** Longer between two steps, and the person was away. */
const mostMinutes = 45;
/** Shorter, and several were logged at once. */
const leastMinutes = 0.5;
/** Fewer say more of that one engine than of the shop. */
const fewest = 3;

/** A component or an assembly, and the minutes that it took once. */
export type StepTime = readonly [id: string, minutes: number];

/**
 * The shop's own minutes by component or assembly: the median of at least three times over all its jobs; what was
 * logged less often keeps the catalog's minutes.
 */
export function shopMinutes(taken: readonly StepTime[]): ShopMinutes {
  const times = new Map<string, number[]>();
  for (const [id, minutes] of taken) {
    const list = times.get(id);
    if (list) list.push(minutes);
    else times.set(id, [minutes]);
  }
  const known = [...times].filter(([, list]) => list.length >= fewest);
  return Object.fromEntries(known.map(([id, list]) => [id, median(list)]));
}

/**
 * What one job's log tells of minutes, from its clock: the time from one step done to the next one done on the same
 * day, where it is long enough to be work and short enough to be without a break.
 */
export function stepTimes(answers: Answers): StepTime[] {
  const { catalog, takenOff } = answers;
  return takenOff.flatMap((step, i): StepTime[] => {
    const minutes = between(takenOff[i - 1], step);
    if (minutes === undefined) return [];
    const pieces = piecesOf(answers, step);
    const id = pieces.length === 1 ? pieces[0]! : catalog.assemblies.find((a) => a.id === step.step)?.id;
    return id === undefined ? [] : [[id, minutes]];
  });
}

function between(before: From<'step'> | undefined, step: From<'step'>): number | undefined {
  if (!before || before.at.slice(0, 10) !== step.at.slice(0, 10)) return undefined;
  const minutes = (Date.parse(step.at) - Date.parse(before.at)) / 60_000;
  return minutes >= leastMinutes && minutes <= mostMinutes ? minutes : undefined;
}

function median(list: readonly number[]): number {
  const sorted = Float64Array.from(list).sort();
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
