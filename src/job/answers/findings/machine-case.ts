import { roleOf } from '../../../catalog/index.js';
import {
  type CaseHistory,
  type Machine,
  machineNetwork,
  type Repair,
  type SeenCheck,
} from '../../../diagnose/index.js';
import type { From, Job } from '../../job.js';
import type { Answers } from '../answers.js';
import { doneSteps } from '../steps/tally.js';

/** What was decided of a fault, last. */
export interface FaultSaid {
  readonly fault: string;
  readonly present: boolean;
  readonly at: string;
  /** when the repair was in; left out while it is still to be made */
  readonly repairedAt?: string;
  /** the owner will not have it repaired */
  readonly declined?: true;
}

/** Choices that say a fault is not there. */
const soundChoices: ReadonlySet<string> = new Set(['none', 'no-fault', 'reuse', 'excluded', 'absent']);
/** Choices that leave a fault in the machine. */
const leavesIt: ReadonlySet<string> = new Set(['declined', 'provisional', 'ask-owner', 'scrap', 'donor']);

/** The choice by which the owner takes a service that one would do anyway: it says nothing of what is there. */
const asService = 'service';

const lastWords = (job: Job): Map<string, From<'decision'>> =>
  new Map(
    job.decisions.flatMap((d) =>
      d.about === 'fault' && d.which !== undefined ? [[d.which, d] as const] : [],
    ),
  );

/** Service that the owner takes though nobody has found the fault, by fault: still to be made, or made already. */
export const servicesTaken = (job: Job): ReadonlyMap<string, 'wanted' | 'made'> =>
  new Map(
    [...lastWords(job)].flatMap(([fault, d]) =>
      d.choice === asService ? [[fault, repairTime(job, d) === undefined ? 'wanted' : 'made'] as const] : [],
    ),
  );

export const servicesMade = (job: Job): readonly string[] =>
  [...servicesTaken(job)].flatMap(([fault, state]) => (state === 'made' ? [fault] : []));

/**
 * What the log's decisions say of faults, the last word of each. A repair counts as made when the first piece went
 * back on after it was decided, or when the choice itself says "repaired".
 */
export function faultsSaid(job: Job): FaultSaid[] {
  return [...lastWords(job)].flatMap(([fault, decision]) => {
    const { choice, at } = decision;
    if (choice === asService) return [];
    if (soundChoices.has(choice)) return { fault, present: false, at };
    const repairedAt = repairTime(job, decision);
    const declined = choice === 'declined' && { declined: true as const };
    return { fault, present: true, at, ...(repairedAt !== undefined && { repairedAt }), ...declined };
  });
}

function repairTime(job: Job, { choice, at }: From<'decision'>): string | undefined {
  if (choice === 'repaired') return at;
  if (leavesIt.has(choice)) return undefined;
  const back = doneSteps(job, 'assembly').filter((s) => Date.parse(s.at) >= Date.parse(at));
  return back.map((s) => s.at).sort((a, b) => Date.parse(a) - Date.parse(b))[0];
}

/** The machine of a job as the diagnosis sees it. */
export function machineOf(answers: Answers): Machine {
  const { job, catalog, faultsSaid: faults, ownSay } = answers;
  const repairs = faults.flatMap(({ fault, repairedAt }): Repair[] =>
    repairedAt === undefined ? [] : [{ fault, at: inZulu(repairedAt) }],
  );
  const history: CaseHistory = {
    complaints: job.intake.complaints ?? [],
    confirmed: faults.filter((f) => f.present).map((f) => f.fault),
    excluded: faults.filter((f) => !f.present).map((f) => f.fault),
    repairs,
    ...(ownSay && { frequencies: ownSay.frequencies }),
  };
  const said = gaugeSaid(answers);
  const seen = answers.sights.flatMap(({ check, outcomes, doubtful, at }) =>
    check === undefined || (said && check === said.check && samePhase(at, said.at))
      ? []
      : [{ check, outcomes, doubtful, at: inZulu(at) }],
  );
  return machineNetwork(catalog, answers.engine.facts, said ? [...seen, said] : seen, history);
}

/**
 * A gauge reading held against what this very engine should show, as soft evidence; it stands in place of the outcome
 * that was tapped for it. Nothing where the geometry is not known or the reading tells nothing.
 */
function gaugeSaid(answers: Answers): SeenCheck | undefined {
  // the cranking cycle is not run where nothing was read
  if (!answers.job.measurements.some(({ measure }) => measure === roleOf(answers.catalog, 'compression')))
    return undefined;
  const reading = answers.compression?.reading;
  if (!reading?.says.informative) return undefined;
  const { weights } = reading.says;
  const outcomes = Object.keys(weights).toSorted(
    (a, b) => weights[b as keyof typeof weights] - weights[a as keyof typeof weights],
  );
  const check = roleOf(answers.catalog, 'compression-check');
  return { check, outcomes: outcomes.slice(0, 1), weights, at: inZulu(reading.measurement.at) };
}

const oneHourMs = 3_600_000;
const samePhase = (a: string, b: string): boolean => Math.abs(Date.parse(a) - Date.parse(b)) < oneHourMs;

/** Times are compared as text further down; entries carry the offset of the device that wrote them. */
const inZulu = (at: string): string => new Date(at).toISOString();
