import { byFault } from '../../../infer/index.js';
import { doneSteps } from '../../../job/index.js';
import { counted, listed, sentence, shortDay, shortDays } from '../../../phrase/index.js';
import { faultName, outcomeOf, servicesDone } from '../fault-words.js';
import { choiceLabel } from '../labels.js';
import { measurementRows } from '../measurement-rows.js';
import type { Detail, Section } from '../section.js';
import { awaitedParts, type Sheet, standingDecisions } from '../sheet.js';
import { dueNext } from './next-service.js';
import { runUpCounts } from './run-up.js';
import { jointState, jointTarget } from './torques.js';

/** More than this a person does not read; the sections below hold the rest. */
const linesPerPart: Readonly<Record<Detail, number>> = { full: 6, brief: 5 };
const mostPartsNamed = 5;

export function summary(sheet: Sheet): Section {
  return {
    id: 'summary',
    title: 'In short',
    place: 'full',
    blocks: [
      {
        type: 'trio',
        parts: [
          { title: 'What was wrong', lines: shortened(wrong(sheet), sheet.detail) },
          { title: 'What was done', lines: shortened(done(sheet), sheet.detail) },
          { title: 'What to do next', lines: shortened(next(sheet), sheet.detail) },
        ],
      },
    ],
  };
}

function shortened(lines: readonly string[], detail: Detail): string[] {
  const kept = lines.slice(0, linesPerPart[detail]);
  const rest = lines.length - kept.length;
  return rest > 0 ? [...kept, `And ${rest} more, below.`] : kept;
}

const soundChoices = new Set(['reuse', 'none', 'no-fault', 'excluded', 'absent', 'service']);

function wrong(sheet: Sheet): string[] {
  const faults = standingDecisions(sheet.job)
    .filter((d) => d.about === 'fault' && !soundChoices.has(d.choice))
    .map((d) => sentence(`${faultName(sheet, d)}: ${outcomeOf(sheet, d)}`));
  const lines = [...faults, ...seenThere(sheet), ...failedReadings(sheet)];
  if (lines.length > 0) return lines;
  return [
    sheet.job.observations.length > 0
      ? 'No fault was decided on; what was seen stands under Findings.'
      : 'No fault is written down.',
  ];
}

/** Seen with one's own eyes and decided on by nobody: so sure that the owner is to know of it. */
const sureFrom = 0.95;

function seenThere({ answers: { machine, inference }, job }: Sheet): string[] {
  if (!inference || job.observations.length === 0) return [];
  const likely = byFault(inference);
  const decided = new Set(job.decisions.map((d) => d.which));
  return machine.faults
    .filter(({ id }) => (likely[machine.now(id)] ?? 0) >= sureFrom && !decided.has(id))
    .map(({ fault }) => sentence(`${fault.name}: found, not repaired`));
}

function failedReadings(sheet: Sheet): string[] {
  return measurementRows(sheet)
    .filter((row) => row.asFound?.verdict?.sign === 'fail')
    .map((row) => sentence(`${row.title}: ${row.asFound?.text}, ${row.asFound?.verdict?.word}`));
}

function done(sheet: Sheet): string[] {
  const { job } = sheet;
  const lines = [
    ...repairLines(sheet),
    ...serviceLine(sheet),
    ...fittedLine(sheet),
    ...jointLines(sheet),
    ...runUpLine(sheet),
  ];
  if (lines.length > 0) return lines;
  const steps = doneSteps(job, 'teardown').length + doneSteps(job, 'assembly').length;
  return [steps > 0 ? `${counted(steps, 'step')} of work, listed below.` : 'No work is written down.'];
}

function repairLines({ job }: Sheet): string[] {
  return standingDecisions(job)
    .filter((d) => d.about === 'component' && !['provisional', 'declined'].includes(d.choice))
    .map((d) => sentence(`${d.title}: ${choiceLabel(d)}`));
}

function serviceLine(sheet: Sheet): string[] {
  const done = servicesDone(sheet);
  return done.length > 0 ? [sentence(`Service: ${listed(done)}`)] : [];
}

function fittedLine({ answers }: Sheet): string[] {
  const fitted = answers.partsUsed;
  if (fitted.length > mostPartsNamed) return [`${fitted.length} parts fitted, listed below.`];
  return fitted.length > 0 ? [sentence(`Fitted: ${listed(fitted.map((part) => part.name))}`)] : [];
}

function jointLines(sheet: Sheet): string[] {
  return [...sheet.job.joints.values()].map((joint) => {
    const state = jointState(sheet, joint);
    return sentence(`${joint.name}: ${jointTarget(sheet, joint)}, ${state.verdict.word}`);
  });
}

function runUpLine({ job }: Sheet): string[] {
  const counts = runUpCounts(job);
  if (counts.ok + counts.notOk === 0) return [];
  const bad = counts.notOk > 0 ? `, ${counts.notOk} not in order` : '';
  return [`Run-up: ${counted(counts.ok, 'check')} in order${bad}.`];
}

function next(sheet: Sheet): string[] {
  const lines = [...stopLines(sheet), ...provisionalLines(sheet), ...awaitedLines(sheet), ...dueLines(sheet)];
  return lines.length > 0 ? lines : ['No next service is written down. See the advice below.'];
}

function stopLines({ job }: Sheet): string[] {
  const declined = job.handOver?.declined ?? [];
  return declined.map((line) => sentence(`Declined, still to be done: ${line}`));
}

function provisionalLines({ answers }: Sheet): string[] {
  return answers.provisionals.map(({ decision, state }) =>
    state === 'here'
      ? `${decision.title}: for now; the new part is here.`
      : `${decision.title}: for now, until ${state === 'waiting' ? 'the new one is here' : 'the next service'}.`,
  );
}

function awaitedLines({ job }: Sheet): string[] {
  return awaitedParts(job).map((p) =>
    sentence(`Part awaited: ${p.name}${p.due ? `, due ${shortDay(p.due)}` : ''}`),
  );
}

function dueLines(sheet: Sheet): string[] {
  return dueNext(sheet).map((due) => sentence(`${due.what}: ${shortDays(due.when)}`));
}
