import type { Catalog } from '../../../catalog/index.js';
import {
  type Enough,
  enoughToAct,
  type Findings,
  findings,
  nextChecks,
  type Ranked,
  safetyQuestions,
} from '../../../diagnose/index.js';
import { byFault, infer } from '../../../infer/index.js';
import type { Job } from '../../job.js';
import { contradiction, isContradiction } from '../contradiction.js';
import { tally } from '../steps/tally.js';
import { machineOf } from './machine-case.js';

export interface FindingsOptions {
  /** the shop's own frequencies of faults, see `frequenciesFor` */
  readonly frequencies?: ReadonlyMap<string, number>;
  /** instruments that the shop owns, in the catalog's words; left out when not known */
  readonly instruments?: ReadonlySet<string>;
  /** how many checks to advise; five when left out */
  readonly checks?: number;
}

/** What is wrong with a job's machine, what to check next and whether enough is seen. */
export type JobFindings =
  | { readonly state: 'cannot'; readonly because: 'contradiction'; readonly words: string }
  | {
      readonly state: 'answered';
      readonly findings: Findings;
      /** left out when the answer is bounded only: then no check can be told from another */
      readonly next?: Ranked;
      readonly enough?: Enough;
    };

const usualChecks = 5;

/** Computed from the log and the catalog alone; the same log gives the same answer. */
export function findingsOf(job: Job, catalog: Catalog, options: FindingsOptions = {}): JobFindings {
  const machine = machineOf(job, catalog, options.frequencies);
  try {
    const inference = infer(machine.network);
    const said = findings(machine, inference);
    if (inference.kind === 'bounded') return { state: 'answered', findings: said };
    const next = nextChecks(machine, inference, shopNow(job, options), options.checks ?? usualChecks);
    return { state: 'answered', findings: said, next, enough: enoughToAct(machine, inference, next) };
  } catch (error) {
    if (!isContradiction(error)) throw error;
    return contradiction;
  }
}

/**
 * Names of the safety faults that are rather there than not, or confirmed, and not repaired: while one of them stands
 * the machine is not handed over. None while the log contradicts itself: then the findings say so.
 */
export function safetyFound(job: Job, catalog: Catalog, frequencies?: ReadonlyMap<string, number>): string[] {
  const machine = machineOf(job, catalog, frequencies);
  try {
    const likely = byFault(infer(machine.network));
    const asked = safetyQuestions(machine, (fault) => likely[machine.now(fault)] ?? 0);
    return asked.filter((q) => q.state === 'found').map((q) => q.name);
  } catch (error) {
    if (isContradiction(error)) return [];
    throw error;
  }
}

function shopNow(job: Job, { instruments }: FindingsOptions) {
  const off = new Set(tally(job).notPutBack.flatMap((s) => s.component ?? []));
  return { off, ...(instruments && { instruments }) };
}
