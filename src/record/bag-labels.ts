import { doneSteps, fastenerLabel, type Job } from '../job/index.js';

/** What hangs on one bag of a teardown. */
export interface BagLabel {
  readonly tag: number;
  readonly bag: string;
  /** what the machine is, for a bag that strays */
  readonly title: string;
  readonly steps: readonly string[];
  /** "8 × 5/16-18 × 1-1/2 in bolt" */
  readonly contents: readonly string[];
  /** fasteners in all */
  readonly count: number;
  /** what the code on the label says to a phone */
  readonly code: string;
  readonly invented: boolean;
}

/** One label a bag, in the order of the bags; steps that went into the same bag share its label. */
export function bagLabels(job: Job): BagLabel[] {
  const steps = doneSteps(job, 'teardown').filter((step) => step.bag);
  const bags = [...new Set(steps.map((step) => step.bag!))].sort(byNumberThenName);
  return bags.map((bag) => {
    const own = steps.filter((step) => step.bag === bag);
    const fasteners = own.flatMap((step) => step.fasteners ?? []);
    return {
      tag: job.tag,
      bag,
      title: job.title,
      steps: own.map((step) => step.title),
      contents: fasteners.map((fastener) => `${fastener.count} × ${fastenerLabel(fastener)}`),
      count: fasteners.reduce((sum, fastener) => sum + fastener.count, 0),
      code: `wristpin tag ${job.tag} bag ${bag}`,
      invented: job.invented,
    };
  });
}

/** Bag 10 comes after bag 9. */
function byNumberThenName(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}
