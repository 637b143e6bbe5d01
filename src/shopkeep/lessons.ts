import type { Catalog } from '../catalog/index.js';
import {
  answersFor,
  type FinishedHere,
  foldShop,
  type Job,
  nothingTaught,
  type StepTime,
} from '../job/index.js';

/** What one job teaches, as it is kept beside the log. */
export interface Lesson {
  readonly finished?: Omit<FinishedHere, 'job' | 'faults'> & {
    /** for each fault of the catalog, in its order, the chance that it was there in 1024ths; null where nothing is told */
    readonly faults: readonly (number | null)[];
  };
  readonly times: readonly StepTime[];
}

/** What one job teaches hangs on its log and the catalog alone. */
const noShop = foldShop([]);

/** Nothing for a job that teaches nothing. */
export function lessonOf(job: Job, catalog: Catalog): Lesson | undefined {
  const { finished, stepTimes: times } = answersFor({ job, catalog, shop: noShop, jobs: nothingTaught });
  if (!finished) return times.length > 0 ? { times } : undefined;
  const { job: _, faults, ...rest } = finished;
  const steps = (chance: number | undefined) => (chance === undefined ? null : Math.round(1024 * chance));
  return {
    finished: { ...rest, faults: catalog.faults.map(({ id }) => steps(faults[id])) },
    times,
  };
}

export function finishedOf(job: string, lesson: Lesson | undefined, catalog: Catalog): FinishedHere[] {
  const finished = lesson?.finished;
  if (!finished) return [];
  const said = catalog.faults.flatMap(({ id }, i) => {
    const steps = finished.faults[i];
    return typeof steps === 'number' ? [[id, steps / 1024] as const] : [];
  });
  return [{ ...finished, job, faults: Object.fromEntries(said) }];
}
