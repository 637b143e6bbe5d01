import { applies, byId } from '../../../catalog/index.js';
import { lowerFirst } from '../../../phrase/index.js';
import type { Job } from '../../job.js';
import type { Answers } from '../answers.js';
import { readHours, usualHours, wallMinute } from '../shop/working-hours.js';
import { addAssembly, addCleaning, addMeasuring, addTeardown, looseHold } from './work-apart.js';
import { type Draft, isClosed, type Piece, put, usualMinutes } from './work-piece.js';

export interface JobWork {
  readonly job: string;
  readonly tag: number;
  readonly title: string;
  readonly pieces: readonly Piece[];
  /** what holds the job up, in words */
  readonly waits: readonly string[];
  /** the closing time of the day it is promised for */
  readonly due?: number;
  readonly promised?: string;
  readonly takenAs: readonly string[];
}

/**
 * What is left of a job, piece by piece. Minutes come from the catalog: the components’ own for taking off and
 * putting back, the trade’s usual ones for the rest; a stage that is closed asks for none. `now` is the wall clock.
 */
export function workOf(answers: Answers, now: string): JobWork {
  const { job, shop } = answers;
  const draft: Draft = {
    answers,
    now: wallMinute(now),
    today: now.slice(0, 10),
    pieces: [],
    waits: [],
    takenAs: [],
  };
  const over = givenUp(job);
  if (!over) for (const add of stagesLeft) add(draft);
  const { promised, machine } = job.intake;
  const closing = (readHours(shop.settings['working-hours'] ?? '') ?? usualHours).to;
  return {
    job: job.id,
    tag: job.tag,
    title: machine || job.title || 'machine not named yet',
    pieces: draft.pieces.map((piece, i, all) => (i === all.length - 1 ? { ...piece, last: true } : piece)),
    waits: over ? ['not to be repaired'] : draft.waits,
    ...(promised !== undefined && { due: wallMinute(`${promised}T00:00`) + closing, promised }),
    takenAs: draft.takenAs,
  };
}

/** Scrap, donors and what the owner declined are not scheduled. */
function givenUp(job: Job): boolean {
  const choice = job.decisions.findLast((d) => d.about === 'machine')?.choice;
  return choice === 'scrap' || choice === 'donor' || choice === 'declined';
}

const stagesLeft: readonly ((draft: Draft) => void)[] = [
  addIntake,
  addFindings,
  addQuote,
  addOrder,
  addTeardown,
  addCleaning,
  addMeasuring,
  addAssembly,
  addRunUp,
  addHandOver,
];

function addIntake(draft: Draft): void {
  if (isClosed(draft, 'intake')) return;
  const minutes = usualMinutes(draft, 'take in');
  put(draft, { id: 'intake', stage: 'intake', label: 'take it in', minutes });
}

function addFindings(draft: Draft): void {
  const { job, catalog } = draft.answers;
  if (isClosed(draft, 'findings')) return;
  const looked = new Set(job.observations.map((o) => o.check));
  const checks = byId(catalog.checks);
  const minutes = catalog.firstLooks
    .filter(
      (f) => applies(f.when, draft.answers.engine.facts) !== 'no' && !f.checks.some((id) => looked.has(id)),
    )
    .reduce((sum, f) => sum + Math.min(...f.checks.map((id) => checks.get(id)!.minutes)), 0);
  put(draft, { id: 'first-looks', stage: 'findings', label: 'first looks', minutes });
  if (job.decisions.some((d) => d.about === 'fault')) return;
  put(draft, {
    id: 'tests',
    stage: 'findings',
    label: 'find the fault',
    minutes: usualMinutes(draft, 'find the fault'),
  });
}

function addQuote(draft: Draft): void {
  const asked = draft.answers.job.decisions.findLast((d) => d.about === 'machine')?.choice === 'ask-owner';
  if (isClosed(draft, 'worth-it') && !asked) return;
  const minutes = usualMinutes(draft, 'quote');
  if (!asked) put(draft, { id: 'quote', stage: 'worth-it', label: 'quote', minutes });
  draft.waits.push('the owner’s word on the quote');
  draft.takenAs.push('where the owner has not answered, the work is planned as if the answer were yes');
}

function addOrder(draft: Draft): void {
  for (const part of draft.answers.job.parts.values()) {
    const name = lowerFirst(part.name);
    if (part.state === 'mismatch') draft.waits.push(`${name}: the one that came does not match`);
    if (part.state !== 'ordered') continue;
    const word = part.due !== undefined && part.due < draft.today ? 'was due' : 'due';
    draft.waits.push(part.due === undefined ? `${name}, no day told` : `${name}, ${word} ${part.due}`);
  }
  const wanted = draft.answers.toBuy.length;
  if (wanted === 0) return;
  draft.waits.push(`${wanted === 1 ? 'a part' : `${wanted} parts`} to be ordered`);
  const minutes = usualMinutes(draft, 'order');
  put(draft, { id: 'order', stage: 'parts', label: 'order the parts', minutes });
}

/** Between the first start and the check after it, for the engine to run warm and cool down. */
const coolDown = 90;

function addRunUp(draft: Draft): void {
  if (isClosed(draft, 'run-up')) return;
  const begun = draft.answers.job.runUp.size > 0;
  const hold = looseHold(draft);
  const first = usualMinutes(draft, 'first start');
  if (!begun)
    put(draft, {
      id: 'first-start',
      stage: 'run-up',
      label: 'set and first start',
      minutes: first,
      ...(hold && { earliest: hold.until, waitsFor: hold.words }),
    });
  put(draft, {
    id: 'working-test',
    stage: 'run-up',
    label: 're-check and working test',
    minutes: usualMinutes(draft, 'working test'),
    ...(!begun && { lag: coolDown }),
  });
}

function addHandOver(draft: Draft): void {
  const minutes = usualMinutes(draft, 'hand over');
  put(draft, { id: 'hand-over', stage: 'hand-over', label: 'hand over', minutes });
}
