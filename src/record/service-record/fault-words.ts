import { byId } from '../../catalog/index.js';
import type { From } from '../../job/index.js';
import { lowerFirst } from '../../phrase/index.js';
import { choiceLabel } from './labels.js';
import type { Sheet } from './sheet.js';

/** The fault's own name: a title written by a sheet says what was to be done with it, too. */
export function faultName({ answers }: Sheet, { about, which, title, choice }: From<'decision'>): string {
  if (about === 'machine' && choice !== 'declined') return 'The machine';
  const name = about === 'fault' ? byId(answers.catalog.faults).get(which ?? '')?.name : undefined;
  return name !== undefined && title.startsWith(`${name}: `) ? name : title;
}

/** What became of what was decided, in the past tense where it was done. */
export function outcomeOf({ answers, job }: Sheet, decision: From<'decision'>): string {
  const { about, which, choice } = decision;
  if (about === 'machine') return choiceLabel(decision, job.handOver !== undefined);
  if (about !== 'fault' || choice === 'declined') return choiceLabel(decision);
  const said = answers.faultsSaid.find((f) => f.fault === which);
  if (said?.repairedAt !== undefined) return 'repaired';
  return choice === 'repair' ? 'not repaired yet' : choiceLabel(decision);
}

/** Service that the owner took, done by now: "oil changed" */
export function servicesDone({ answers, job }: Sheet): string[] {
  const faults = byId(answers.catalog.faults);
  return answers.servicesMade.flatMap((fault) => {
    const done = faults.get(fault)?.service?.done;
    return done && job.decisions.some((d) => d.which === fault) ? [lowerFirst(done)] : [];
  });
}
