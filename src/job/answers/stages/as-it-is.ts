import { byId, canHurt } from '../../../catalog/index.js';
import { capital, counted, withinSentence } from '../../../phrase/index.js';
import type { Answers } from '../answers.js';

/** A machine that goes back without the work: what its owner must know, in words. */
export interface AsItIs {
  /** "It runs", "It ran when it came", "It does not run", "Whether it runs is not known" */
  readonly runs: string;
  /** "5 pieces lie beside it" */
  readonly inPieces?: string;
  /** what can hurt someone, each a line */
  readonly unsafe: readonly string[];
}

/** What the machine is when it goes back as it stands: nothing is barred, everything unsafe is said. */
export function asItIsOf({ catalog, engine, faultsSaid, safetyFound, stillOff }: Answers): AsItIs {
  const faults = byId(catalog.faults);
  const confirmed = faultsSaid
    .filter((f) => f.present && f.repairedAt === undefined)
    .flatMap((f) => faults.get(f.fault) ?? [])
    .filter(canHurt)
    .map((f) => f.name);
  const named = new Set([...safetyFound, ...confirmed]);
  // what stands behind a stop is said once, by the fault that was found
  const stops = engine.hazards.filter((h) => !h.faults?.some((id) => named.has(faults.get(id)?.name ?? '')));
  const apart = stillOff.length > 0;
  const runs = {
    yes: apart ? 'It ran when it came' : 'It runs',
    no: 'It does not run',
    'not known': 'Whether it runs is not known',
  };
  return {
    runs: runs[engine.state.runs],
    ...(apart && { inPieces: `${counted(stillOff.length, 'piece')} not back on` }),
    unsafe: [...stops.map((h) => capital(h.words)), ...named],
  };
}

/** Choices with which the machine goes back or away without having to be safe to run. */
const withoutWork: ReadonlySet<string> = new Set(['donor', 'scrap', 'declined']);

export const goesWithoutWork = ({ job }: Pick<Answers, 'job'>): boolean =>
  withoutWork.has(job.decisions.findLast((d) => d.about === 'machine')?.choice ?? '');

/** What keeps a repaired machine from being ready: found and not repaired, in for now, dearer than the owner said. */
export function notReady(answers: Answers): string[] {
  const { job, catalog, faultsSaid, provisionals } = answers;
  const faults = byId(catalog.faults);
  const decided = new Map(job.decisions.filter((d) => d.about === 'fault').map((d) => [d.which, d]));
  const open = faultsSaid.filter((f) => f.present && f.repairedAt === undefined && !f.declined);
  const left = (id: string): boolean => (decided.get(id)?.choice ?? '') === 'provisional';
  return [
    ...open
      .filter((f) => !left(f.fault) || !decided.get(f.fault)?.reason)
      .map((f) => `found and not repaired: ${withinSentence(faults.get(f.fault)?.name ?? f.fault)}`),
    ...provisionals
      .filter(({ decision }) => decision.about !== 'fault' && decision.reason.trim() === '')
      .map(({ decision }) => `in for now, and nobody said why: ${decision.title}`),
    ...overLimit(answers),
  ];
}

function overLimit({ job }: Answers): string[] {
  const { stopLimit } = job.intake;
  const decided = job.decisions.findLast((d) => d.about === 'machine');
  const quoted = decided?.amount;
  if (!stopLimit || !quoted || quoted.currency !== stopLimit.currency) return [];
  if (quoted.amount <= stopLimit.amount || decided.reason.trim() !== '') return [];
  return ['quoted above the owner’s limit: say who agreed'];
}
