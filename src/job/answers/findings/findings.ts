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
  valueAhead,
} from '../../../diagnose/index.js';
import { byFault, type ExactInference, type Inference, infer } from '../../../infer/index.js';
import type { Answers } from '../answers.js';
import { contradiction, isContradiction } from '../contradiction.js';

/** What is wrong with a job's machine, what to check next and whether enough is seen. */
export type JobFindings =
  | { readonly state: 'cannot'; readonly because: 'contradiction'; readonly words: string }
  | {
      readonly state: 'answered';
      readonly findings: Findings;
      /** every check that can be made now, ranked; left out when the answer is bounded only, then none can be told from another, and once it is handed over */
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

const inferred = new WeakMap<Machine, Inference | undefined>();

/** Undefined where what was seen and what was decided rule each other out. The same machine gets the same answer. */
export function inferenceOf(machine: Machine): Inference | undefined {
  if (!inferred.has(machine)) inferred.set(machine, inferenceFor(machine));
  return inferred.get(machine);
}

function inferenceFor({ network }: Machine): Inference | undefined {
  try {
    return infer(network);
  } catch (error) {
    if (isContradiction(error)) return undefined;
    throw error;
  }
}

/** Computed from the log, the catalog and the shop alone; the same log gives the same answer. */
export function findingsOf(answers: Answers): JobFindings {
  const { job, machine, inference } = answers;
  if (!inference) return contradiction;
  const said = findingsSaid(machine, inference);
  // nothing is looked at on a machine that has left the shop
  if (inference.kind === 'bounded' || job.handOver) return { state: 'answered', findings: said };
  const next = nextChecks(machine, inference, benchOf(answers), everyCheck);
  return { state: 'answered', findings: said, next, enough: enoughToAct(machine, inference, next) };
}

const benchOf = ({ instruments, engine, offNow: off }: Answers) => ({ off, instruments, engine });

const kept = new WeakMap<Machine, Findings>();

/** The same machine gets the same findings. */
function findingsSaid(machine: Machine, inference: Inference): Findings {
  const all = kept.get(machine) ?? findings(machine, inference);
  kept.set(machine, all);
  return all;
}

const pieces = 12;

/** The work behind `findings` in pieces, for a page that is to stay awake meanwhile; each leaves the next one less to do. */
export function findingsAhead(answers: Answers): (() => void)[] {
  const exact = (work: (inference: ExactInference) => void) => () => {
    if (answers.inference?.kind === 'exact') work(answers.inference);
  };
  return [
    () => void answers.machine,
    () => void answers.inference,
    exact((inference) => void findingsSaid(answers.machine, inference)),
    ...Array.from({ length: pieces }, (_, piece) =>
      exact((inference) => {
        if (answers.job.handOver) return;
        valueAhead(answers.machine, inference, benchOf(answers), { piece, pieces });
      }),
    ),
    () => void answers.lastMove,
  ];
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
