import { applies } from '../../../catalog/index.js';
import {
  type Enough,
  enoughToAct,
  type Findings,
  findings,
  type Machine,
  nextChecks,
  type Ranked,
  safetyQuestions,
} from '../../../diagnose/index.js';
import { byFault, type Inference, infer } from '../../../infer/index.js';
import type { Answers } from '../answers.js';
import { contradiction, isContradiction } from '../contradiction.js';

/** What is wrong with a job's machine, what to check next and whether enough is seen. */
export type JobFindings =
  | { readonly state: 'cannot'; readonly because: 'contradiction'; readonly words: string }
  | {
      readonly state: 'answered';
      readonly findings: Findings;
      /** every check that can be made now, ranked; left out when the answer is bounded only: then none can be told from another */
      readonly next?: Ranked;
      readonly enough?: Enough;
    };

/** As many as the catalog has: the first looks stand in the order of the advice. */
const everyCheck = Number.POSITIVE_INFINITY;

/** A check that can concern this engine and is not to be made now. */
export interface BarredCheck {
  readonly id: string;
  readonly title: string;
  readonly why: string;
}

/** Checks of this engine that cannot or must not be made now, with the reason; those of pieces that it has not are left out. */
export function barredChecks({ catalog, engine }: Pick<Answers, 'catalog' | 'engine'>): BarredCheck[] {
  return catalog.checks
    .filter((check) => applies(check.when, engine.facts) !== 'no')
    .flatMap((check) => {
      const why = engine.barred(check);
      return why === undefined ? [] : [{ id: check.id, title: check.title, why }];
    });
}

/** Undefined where what was seen and what was decided rule each other out. */
export function inferenceOf({ network }: Machine): Inference | undefined {
  try {
    return infer(network);
  } catch (error) {
    if (isContradiction(error)) return undefined;
    throw error;
  }
}

/** Computed from the log, the catalog and the shop alone; the same log gives the same answer. */
export function findingsOf(answers: Answers): JobFindings {
  const { machine, inference, instruments, engine, offNow: off } = answers;
  if (!inference) return contradiction;
  const said = findings(machine, inference);
  if (inference.kind === 'bounded') return { state: 'answered', findings: said };
  const next = nextChecks(machine, inference, { off, instruments, engine }, everyCheck);
  return { state: 'answered', findings: said, next, enough: enoughToAct(machine, inference, next) };
}

/**
 * Names of the safety faults that are rather there than not, or confirmed, and not repaired: while one of them stands
 * the machine is not handed over. None while the log contradicts itself: then the findings say so.
 */
export function safetyFound({ machine, inference }: Answers): string[] {
  if (!inference) return [];
  const likely = byFault(inference);
  const asked = safetyQuestions(machine, (fault) => likely[machine.now(fault)] ?? 0);
  return asked.filter((q) => q.state === 'found').map((q) => q.name);
}
