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
    /** a letter for each fault of the catalog, in its order: y it was there, n it was not, - nothing is known */
    readonly faults: string;
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
  const letter = (there: boolean | undefined) => (there === undefined ? '-' : there ? 'y' : 'n');
  return {
    finished: { ...rest, faults: catalog.faults.map(({ id }) => letter(faults[id])).join('') },
    times,
  };
}

export function finishedOf(job: string, lesson: Lesson | undefined, catalog: Catalog): FinishedHere[] {
  const finished = lesson?.finished;
  if (!finished) return [];
  const said = catalog.faults.flatMap(({ id }, i) =>
    finished.faults[i] === '-' ? [] : [[id, finished.faults[i] === 'y'] as const],
  );
  return [{ ...finished, job, faults: Object.fromEntries(said) }];
}
