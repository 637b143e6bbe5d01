import { doneSteps, fastenerLabel, type Job } from '../job/index.js';
import { counted } from '../phrase/index.js';

/** What hangs on a bag of a teardown, or on a part that waits for its machine. */
export interface Label {
  readonly tag: number;
  /** none on a part that is in no bag */
  readonly bag?: string;
  /** what the machine is, for a bag that strays */
  readonly title: string;
  readonly what: readonly string[];
  /** "8 pieces" */
  readonly count: string;
  /** "8 × 5/16-18 × 1-1/2 in bolt" */
  readonly contents: readonly string[];
  /** what the code on the label says to a phone */
  readonly code: string;
  readonly invented: boolean;
}

export const labelKinds = ['bag', 'part'] as const;
export type LabelKind = (typeof labelKinds)[number];

/**
 * The labels of a job. `address` is where a phone of the shop reaches the bench: the code then opens what is found under
 * the label's words; without one it only says them.
 */
export function labelsOf(job: Job, kind: LabelKind, address?: string): Label[] {
  return kind === 'bag' ? bagLabels(job, address) : partLabels(job, address);
}

/** One label a bag, in the order of the bags; steps that went into the same bag share its label. */
function bagLabels(job: Job, address: string | undefined): Label[] {
  const steps = doneSteps(job, 'teardown').filter((step) => step.bag);
  const bags = [...new Set(steps.map((step) => step.bag!))].sort(byNumberThenName);
  return bags.map((bag) => {
    const own = steps.filter((step) => step.bag === bag);
    const fasteners = own.flatMap((step) => step.fasteners ?? []);
    const count = fasteners.reduce((sum, fastener) => sum + fastener.count, 0);
    return {
      bag,
      what: own.map((step) => step.title),
      contents: fasteners.map((fastener) => `${fastener.count} × ${fastenerLabel(fastener)}`),
      count: count > 0 ? counted(count, 'piece') : 'no fasteners counted',
      ...onEach(job, `bag ${bag}`, address),
    };
  });
}

/** One label a part that is ordered or here and not fitted yet. */
function partLabels(job: Job, address: string | undefined): Label[] {
  const waiting = [...job.parts.values()].filter(({ state }) => state === 'ordered' || state === 'arrived');
  return waiting.map(({ name, count, number, supplier }) => ({
    what: [name],
    count: counted(count, 'piece'),
    contents: [number, supplier].filter((each) => each !== undefined && each !== '') as string[],
    ...onEach(job, number || name, address),
  }));
}

function onEach({ tag, title, invented }: Job, what: string, address: string | undefined) {
  const find = encodeURIComponent(`#${tag} ${what}`);
  const code = address === undefined ? `wristpin tag ${tag} ${what}` : `${address}/?find=${find}`;
  return { tag, title, code, invented };
}

/** Bag 10 comes after bag 9. */
function byNumberThenName(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}
