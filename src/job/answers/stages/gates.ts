import { counted, listed, money, plural } from '../../../phrase/index.js';
import type { Stage } from '../../entry.js';
import { stages } from '../../entry.js';
import { boltOf, type From, type Job } from '../../job.js';
import type { Answers } from '../answers.js';
import type { Provisional } from '../assembly/provisional.js';
import type { RunUpState } from '../run-up/run-up.js';
import { goesWithoutWork, notReady } from './as-it-is.js';

/**
 * Where a stage stands. `missing` says in words what must be true before the next stage; `blocks` are the safety
 * points that no reason overrides. A stage can be found not to be needed, with a reason; hand-over cannot.
 */
export interface Gate {
  readonly stage: Stage;
  readonly state: 'untouched' | 'under-way' | 'done' | 'not-needed' | 'blocked';
  readonly missing: readonly string[];
  readonly blocks: readonly string[];
  readonly summary: string;
}

/** The catalog's part in the gates: what must have been looked at and what must be proved before hand-over. */
export interface GateRules {
  /** safety faults that the evidence points to and nobody has repaired or ruled out */
  readonly safetyFound: readonly string[];
  /** the standing first looks; any of `checks` counts as having looked */
  readonly firstLooks: readonly { readonly title: string; readonly checks: readonly string[] }[];
  /** what must still come off to reach the goals, in a line */
  readonly ahead?: string;
  /** by step: views that no picture shows and that are gone once it is off */
  readonly missingViews?: ReadonlyMap<string, readonly string[]>;
  /** gates of the assembly whose pieces are back and that nobody has proved since */
  readonly toProve?: readonly string[];
  /** run-up items with their state; those that bar the hand-over are asked for outright */
  readonly runUp: readonly {
    readonly title: string;
    readonly barsHandOver: boolean;
    /** this job asks for it; what it does not ask for may stay not looked at */
    readonly isAsked: boolean;
    readonly state: RunUpState;
  }[];
  /** reasons not to run the engine at all */
  readonly stops: readonly string[];
}

/** Every stage's gate, in the order of the stages. */
export function gates(answers: Answers, rules: GateRules): readonly Gate[] {
  return stages.map((stage) => gate(answers, rules, stage));
}

export function gate(answers: Answers, rules: GateRules, stage: Stage): Gate {
  const said = answers.job.stages.get(stage);
  const { touched, missing, blocks = [], summary } = look[stage](answers, rules);
  const notNeeded = said?.state === 'not-needed' && stage !== 'hand-over';
  const finished = said?.state === 'finished' && missing.length === 0 && blocks.length === 0;
  const state =
    blocks.length > 0
      ? 'blocked'
      : notNeeded
        ? 'not-needed'
        : finished || (touched && missing.length === 0)
          ? 'done'
          : touched
            ? 'under-way'
            : 'untouched';
  return {
    stage,
    state,
    missing: notNeeded ? [] : missing,
    blocks,
    summary: notNeeded ? said.reason : summary,
  };
}

interface Look {
  readonly touched: boolean;
  readonly missing: readonly string[];
  readonly blocks?: readonly string[];
  readonly summary: string;
}

const look: Readonly<Record<Stage, (answers: Answers, rules: GateRules) => Look>> = {
  intake: lookAtIntake,
  findings: lookAtFindings,
  'worth-it': lookAtWorth,
  parts: lookAtParts,
  teardown: lookAtTeardown,
  measure: lookAtMeasure,
  assembly: lookAtAssembly,
  'run-up': lookAtRunUp,
  'hand-over': lookAtHandOver,
};

/** Keeps the sentences whose condition holds. */
const holding = (...pairs: readonly (readonly [boolean, string])[]) =>
  pairs.filter(([on]) => on).map(([, say]) => say);

function lookAtIntake({ job }: Answers): Look {
  const { intake } = job;
  const views = job.photographs.filter((p) => p.stage === 'intake').length;
  return {
    touched: Object.keys(intake).length > 0 || job.identities.length > 0,
    missing: holding(
      [!intake.machine, 'say what machine it is'],
      [!intake.complaint, 'write down the owner’s complaint'],
      [!intake.architecture, 'say which kind of engine, or that it is not known yet'],
      [job.identities.length === 0, 'read the plate, measure bore and stroke, or say where you looked'],
      [views === 0, 'photograph the condition it came in'],
      [!intake.consent?.given, 'have the owner’s consent to the work'],
    ),
    summary: identityLine(job) ?? counted(views, 'photograph'),
  };
}

function identityLine(job: Job): string | undefined {
  const id = job.identities.at(-1);
  if (!id) return undefined;
  if (id.how === 'plate') return `plate ${id.written}`;
  if (id.how === 'measured') return `measured ${id.bore.written} × ${id.stroke.written}`;
  return 'no plate found yet';
}

function lookAtFindings({ job }: Answers, rules: GateRules): Look {
  const looked = new Set(job.observations.map((o) => o.check));
  const left = rules.firstLooks.filter((f) => !f.checks.some((c) => looked.has(c)));
  return {
    touched: job.observations.length > 0,
    missing: holding([
      left.length > 0,
      `${plural(left.length, 'first look')} still open: ${listed(left.map((f) => f.title))}`,
    ]),
    summary: job.observations.length === 0 ? '' : counted(job.observations.length, 'check'),
  };
}

function lookAtWorth({ job }: Answers): Look {
  const choice = job.decisions.findLast((d) => d.about === 'machine');
  const limit = job.intake.stopLimit;
  return {
    touched: choice !== undefined,
    missing: holding([!choice, 'decide with the owner: repair, part-repair, donor or scrap']),
    summary: choice ? choice.title : limit ? `call above ${money(limit.currency, limit.amount)}` : '',
  };
}

function lookAtParts({ job }: Answers): Look {
  const parts = [...job.parts.values()].filter((p) => p.state !== 'dropped');
  const by = (state: From<'part'>['state']) => parts.filter((p) => p.state === state);
  const wanted = by('wanted');
  const wrong = by('mismatch');
  const coming = by('ordered');
  return {
    touched: parts.length > 0,
    missing: [
      ...wanted.map((p) => `not ordered yet: ${p.name}`),
      ...wrong.map((p) => `does not match the old part: ${p.name}`),
      ...coming.map((p) => `on its way: ${p.name}${p.due ? `, due ${p.due}` : ''}`),
    ],
    summary:
      parts.length === 0
        ? ''
        : `${parts.length - wanted.length - wrong.length - coming.length} of ${parts.length} here`,
  };
}

function lookAtTeardown({ job }: Answers, { ahead, missingViews }: GateRules): Look {
  const steps = [...job.steps.values()].filter((s) => s.stage === 'teardown' && s.state !== 'dropped');
  const open = steps.filter((s) => s.state === 'planned');
  const done = steps.length - open.length;
  const unseen = (step: string) => missingViews?.get(step) ?? [];
  return {
    touched: steps.length > 0 || ahead !== undefined,
    missing: [
      ...(ahead === undefined ? [] : [ahead]),
      ...open.map((s) => `not taken off yet: ${s.title}${noPicture(unseen(s.step))}`),
    ],
    summary: ahead ?? (steps.length === 0 ? '' : `${done} of ${counted(steps.length, 'step')}`),
  };
}

const noPicture = (views: readonly string[]) =>
  views.length > 0 ? `, no picture yet of: ${views.join('; ')}` : '';

function lookAtMeasure({ job, undecided }: Answers): Look {
  return {
    touched: job.measurements.length > 0,
    missing: undecided,
    summary: job.measurements.length === 0 ? '' : counted(job.measurements.length, 'reading'),
  };
}

function lookAtAssembly(answers: Answers, { toProve = [] }: GateRules): Look {
  const { job, provisionals: forNow, tightening } = answers;
  const { leftOver, tooMany, plugsForgotten, notPutBack } = answers.tally;
  const joints = [...job.joints.values()].map((joint) => ({ joint, progress: tightening.get(joint.joint)! }));
  const assembled = [...job.steps.values()].some((s) => s.stage === 'assembly');
  return {
    touched: assembled || notPutBack.length > 0 || job.torques.length > 0 || joints.length > 0,
    blocks: [
      ...leftOver.map((u) => `left over: ${u.count} × ${u.label}, from ${u.from.join(', ')}`),
      ...plugsForgotten.map((p) => `still plugged: ${p.port}, and ${p.title} is back on`),
    ],
    missing: [
      ...notBackOn(notPutBack),
      ...tooMany.map((u) => `more went in than came out: ${u.count} × ${u.label}, at ${u.from.join(', ')}`),
      ...joints
        .filter((j) => j.progress.next !== undefined)
        .map((j) => `not fully tightened: ${j.joint.name}`),
      ...joints.flatMap((j) =>
        j.progress.trouble.map((t) => `${j.joint.name}, bolt ${boltOf(t)}: ${t.result}`),
      ),
      ...unfitted(job, forNow),
      ...toProve.map((gate) => `not proved yet: ${gate}`),
    ],
    summary: [
      joints.length > 0 &&
        `${joints.filter((j) => j.progress.next === undefined).length} of ${counted(joints.length, 'joint')} tight`,
      notPutBack.length > 0 && `${counted(notPutBack.length, 'piece')} to put back`,
      forNow.length > 0 && `${forNow.length} in for now`,
    ]
      .filter(Boolean)
      .join(', '),
  };
}

/** A few are named; of many, the one that goes back first. */
function notBackOn(steps: readonly From<'step'>[]): string[] {
  const named = steps.map((s) => `${s.title}${s.bag ? ` (bag ${s.bag})` : ''}`);
  if (named.length <= 4) return named.map((name) => `not back on: ${name}`);
  return [`${named.length} pieces not back on, last off: ${named.at(-1)}`];
}

/** A part ordered and not fitted is open, unless the old one was put back for now and the new one is not here yet. */
function unfitted(job: Job, forNow: readonly Provisional[]): string[] {
  return [...job.parts.values()].flatMap((p) => {
    const old = forNow.find((f) => f.part?.part === p.part);
    if (p.consumable || !['arrived', 'ordered', 'mismatch'].includes(p.state)) return [];
    if (p.state === 'arrived')
      return [`here but not fitted: ${p.name}${old ? ', the old one is in for now' : ''}`];
    if (old) return [];
    if (p.state === 'mismatch') return [`does not match and is not fitted: ${p.name}`];
    return [`ordered and not fitted: ${p.name}${p.due ? `, due ${p.due}` : ''}`];
  });
}

function lookAtRunUp({ job, tally }: Answers, { runUp, stops }: GateRules): Look {
  const titles = (state: RunUpState) => runUp.filter((r) => r.state === state).map((r) => r.title);
  const asked = runUp.filter((r) => r.isAsked);
  const said = asked.filter((r) => r.state !== 'open').length;
  return {
    touched: job.runUp.size > 0 || job.recordings.size > 0,
    blocks: tally.plugsForgotten.map((p) => `do not start it: ${p.port} is still plugged`),
    missing: [
      ...stops.map((why) => `stop: ${why}`),
      ...titles('not-ok').map((title) => `not in order: ${title}`),
      ...titles('outside').map((title) => `outside its limit: ${title}`),
      ...asked.filter((r) => r.state === 'open').map(({ title }) => `still to do: ${title}`),
    ],
    summary: said === 0 ? '' : `${said} of ${asked.length}`,
  };
}

/** Safety points that nobody has shown yet; none where the machine goes back or away without the work. */
export function safetyNotShown(job: Job, { runUp }: GateRules): readonly string[] {
  if (goesWithoutWork({ job })) return [];
  return runUp
    .filter(({ barsHandOver, state }) => barsHandOver && state !== 'ok' && state !== 'not-applicable')
    .map(({ title }) => title);
}

function lookAtHandOver(answers: Answers, rules: GateRules): Look {
  const { job } = answers;
  const notShown = safetyNotShown(job, rules);
  const started = job.runUp.size > 0 || job.handOver !== undefined;
  const touched = job.handOver !== undefined;
  const missing = holding([!job.handOver, 'say who received it and what they were told']);
  const summary = job.handOver
    ? `to ${job.handOver.receivedBy}`
    : notShown.length > 0
      ? `${counted(notShown.length, 'safety point')} open`
      : '';
  // what is not to be repaired is not proved either: what is unsafe is said, and signed by its owner
  if (goesWithoutWork(answers)) return { touched, missing, summary };
  return {
    touched,
    missing,
    blocks: [
      ...rules.safetyFound.map((name) => `to be repaired or ruled out first: ${name}`),
      ...rules.stops,
      ...notReady(answers),
      ...(started ? notShown.map((title) => `not shown to be safe: ${title}`) : []),
    ],
    summary,
  };
}
