import { byId, type Caution, type Component, cautionsFor, type LookAlike } from '../../../catalog/index.js';
import { counted, lowerFirst } from '../../../phrase/index.js';
import {
  type AssemblyStep,
  assemblySteps,
  howFar,
  type Removal,
  type TeardownStep,
  teardownSteps,
} from '../../../plan/index.js';
import type { Fastener } from '../../entry.js';
import type { From } from '../../job.js';
import type { Answers } from '../answers.js';
import { isLate, partFor } from '../parts/part-for.js';
import { type Coverage, coverageOf, viewsOf, type WantedView } from '../steps/coverage.js';
import { piecesOf } from '../steps/taken.js';
import { type EngineGraph, isGraph } from '../teardown/engine-graph.js';
import { componentsIn } from '../teardown/plan.js';
import type { AskedGate } from './asked-gates.js';
import type { Provisional } from './provisional.js';

/** How tight, as far as it is known. */
export interface StepTorque {
  readonly component: string;
  readonly name: string;
  /** the confirmed line of this engine's sheet */
  readonly spec?: From<'spec'>;
  /** as a rule on a fastening of this size: a class figure, not this engine's */
  readonly usual?: { readonly name: string; readonly range: string; readonly origin: string };
  /** the joint laid out to be tightened bolt by bolt */
  readonly joint?: string;
}

/** A part that is not used twice. */
export interface Renewal {
  readonly component: string;
  readonly name: string;
  /** the part on the list; none: nobody has ordered one */
  readonly part?: From<'part'>;
  readonly state: 'here' | 'fitted' | 'late' | 'not listed' | 'old one for now';
}

/** What a step waits for: a part that is not here, and the component it goes with. */
export interface WaitsFor {
  readonly component: string;
  readonly name: string;
  readonly parts: readonly From<'part'>[];
}

/** A step put back, with what it wants. */
export interface BackStep {
  /** the teardown step that it puts back, as it was logged */
  readonly off: From<'step'>;
  /** the handle under which it is logged */
  readonly step: string;
  readonly title: string;
  readonly components: readonly string[];
  /** back: done; next: the one to do now; can: everything under it is back; later: something under it is still off;
   * waits: a part is missing for it or under it */
  readonly state: 'back' | 'next' | 'can' | 'later' | 'waits';
  readonly waitsFor: readonly WaitsFor[];
  /** titles of the steps that must be back before */
  readonly under: readonly string[];
  /** as counted when they came out */
  readonly fasteners: readonly Fastener[];
  readonly torques: readonly StepTorque[];
  /** why its bolts are left finger tight: a piece that shares them goes on first */
  readonly fingerTight?: string;
  readonly renew: readonly Renewal[];
  readonly lookAlikes: readonly LookAlike[];
  readonly cautions: readonly Caution[];
  readonly lubricants: readonly Advice[];
  readonly sealants: readonly Advice[];
  readonly wayRound: readonly Advice[];
  readonly checks: AssemblyStep['checks'];
  /** plugs of this step that are still in */
  readonly unplug: readonly string[];
  /** pictures of how it sat */
  readonly views: readonly WantedView[];
}

export interface Advice {
  readonly of: string;
  readonly words: string;
}

export interface AssemblyPlan {
  readonly steps: readonly BackStep[];
  readonly next?: BackStep;
  readonly gates: readonly AskedGate[];
  /** "5 steps can be done now; 3 wait for metering diaphragm, due 2026-06-11"; none when nothing waits */
  readonly soFar?: string;
  /** late parts that hold something up */
  readonly late: readonly WaitsFor[];
  readonly provisional: readonly Provisional[];
  readonly coverage: Coverage;
}

/** The steps taken, reversed, each with what it wants on the way back and how far one can go with the parts that are here. */
export function assemblyPlanOf(answers: Answers): AssemblyPlan {
  const { takenOff: taken, provisionals } = answers;
  const engine = isGraph(answers.graph) ? answers.graph : undefined;
  const back = new Set(answers.putBack.map((s) => s.putsBack));
  const planned = backwards(answers, engine);
  const nameOf = engine?.nameOf ?? ((id: string) => id.replaceAll('-', ' '));
  const open = planned.filter((s) => !back.has(s.of));
  const late = lateComponents(answers, open, nameOf);
  const held = heldBy(open, late, engine);
  const states = statesOf(planned, back, held);
  const shared = sharedBolts(answers, planned);
  const offOf = new Map(taken.map((s) => [s.step, s]));
  const steps = planned.map((step) =>
    backStep(answers, step, offOf.get(step.of)!, {
      state: states.get(step.of)!,
      waitsFor: held.get(step.of) ?? [],
      shared,
    }),
  );
  const next = steps.find((s) => s.state === 'next');
  const soFar = soFarWords(steps);
  return {
    steps,
    ...(next && { next }),
    gates: answers.assemblyGates,
    ...(soFar !== undefined && { soFar }),
    late: late.filter((wait) => steps.some((step) => step.waitsFor.includes(wait))),
    provisional: provisionals,
    coverage: coverageOf(answers, 'assembly'),
  };
}

/** The steps taken as the plan's own steps, with what lay over what by the engine's graph, and reversed. */
function backwards(answers: Answers, engine: EngineGraph | undefined): AssemblyStep[] {
  const { catalog, architecture, takenOff: taken } = answers;
  if (architecture === undefined) return taken.toReversed().map(withoutKnowledge);
  const before = new Map(engine?.graph.pieces.map((piece) => [piece.id, piece.before]));
  const pieces = taken.map((s) => piecesOf(answers, s));
  const removals = taken.map((s, i): Removal => {
    const over = new Set(pieces[i]!.flatMap((id) => before.get(id) ?? []));
    const after = taken.slice(0, i).filter((_, j) => pieces[j]!.some((id) => over.has(id)));
    return {
      id: s.step,
      how: pieces[i]!.length > 1 ? 'whole' : 'alone',
      pieces: pieces[i]!,
      minutes: 0,
      start: 0,
      after: after.map(({ step }) => step),
    };
  });
  return assemblySteps(catalog, architecture, teardownSteps(catalog, architecture, { removals }));
}

function withoutKnowledge({ step, title }: From<'step'>): AssemblyStep {
  const nothing: Pick<TeardownStep, 'fasteners'> = { fasteners: [] };
  return {
    of: step,
    name: title,
    components: [],
    after: [],
    ...nothing,
    torque: [],
    renew: [],
    checks: [],
    lookAlikes: [],
    unplug: [],
    gates: [],
  };
}

/**
 * Components whose part is not here, and for which no old part is in for now. A part that names no component waits
 * where its words say that it is renewed.
 */
function lateComponents(
  { job, provisionals }: Answers,
  open: readonly AssemblyStep[],
  nameOf: (id: string) => string,
): WaitsFor[] {
  const forNow = new Set(provisionals.flatMap(({ decision, part }) => [decision.which, part?.part]));
  const named = [...job.parts.values()].map((part) => ({ component: part.component, part }));
  const byWords = open.flatMap(({ renew }) =>
    renew.map(({ component, part }) => ({ component, part: partFor(job, component, part) })),
  );
  const waiting = new Map<string, Set<From<'part'>>>();
  for (const { component, part } of [...named, ...byWords]) {
    if (component === undefined || part === undefined || !isLate(part)) continue;
    if (forNow.has(part.part) || forNow.has(component)) continue;
    waiting.set(component, (waiting.get(component) ?? new Set()).add(part));
  }
  return [...waiting].map(([component, parts]) => ({
    component,
    name: nameOf(component),
    parts: [...parts],
  }));
}

/**
 * What each step waits for. A component that did not come off by itself lies open once what is before it is off: its
 * late part holds those back.
 */
function heldBy(
  open: readonly AssemblyStep[],
  late: readonly WaitsFor[],
  engine: EngineGraph | undefined,
): Map<string, WaitsFor[]> {
  const offBy = new Set(open.flatMap(({ components }) => components));
  const byComponent = new Map<string, WaitsFor[]>();
  for (const wait of late) {
    for (const id of offBy.has(wait.component) ? [wait.component] : openedFor(wait.component, offBy, engine))
      byComponent.set(id, [...(byComponent.get(id) ?? []), wait]);
  }
  const { waiting } = howFar(open, new Set(byComponent.keys()));
  return new Map(
    waiting.map(({ step, for: components }) => {
      const waits = components.flatMap((id) => byComponent.get(id) ?? []);
      return [step, [...new Set(waits)]];
    }),
  );
}

function openedFor(component: string, off: ReadonlySet<string>, engine: EngineGraph | undefined): string[] {
  const piece = engine?.graph.pieces.find(({ id }) => id === component);
  return (piece?.before ?? []).filter((id) => off.has(id));
}

function statesOf(
  planned: readonly AssemblyStep[],
  back: ReadonlySet<string | undefined>,
  held: ReadonlyMap<string, readonly WaitsFor[]>,
): Map<string, BackStep['state']> {
  const states = new Map<string, BackStep['state']>();
  let next = true;
  for (const step of planned) {
    const ready = step.after.every((of) => back.has(of));
    const state = back.has(step.of)
      ? 'back'
      : held.has(step.of)
        ? 'waits'
        : !ready
          ? 'later'
          : next
            ? 'next'
            : 'can';
    if (state === 'next') next = false;
    states.set(step.of, state);
  }
  return states;
}

function backStep(
  answers: Answers,
  step: AssemblyStep,
  off: From<'step'>,
  { state, waitsFor, shared }: Pick<BackStep, 'state' | 'waitsFor'> & { readonly shared: SharedBolts },
): BackStep {
  const { job, catalog } = answers;
  const known = componentsIn(answers, step.components);
  const advice = (field: 'lubricant' | 'sealant' | 'wayRound'): Advice[] =>
    known.flatMap((c) => (c[field] === undefined ? [] : [{ of: c.name, words: c[field] }]));
  const plugged = new Set(answers.tally.stillPlugged.map((p) => p.port));
  return {
    off,
    step: `${step.of}-back`.slice(0, 80),
    title: off.title,
    components: step.components,
    state,
    waitsFor,
    under: step.after.map((of) => job.steps.get(of)?.title ?? of),
    fasteners: off.fasteners ?? [],
    ...tighteningFor(answers, step, known, shared),
    renew: step.renew.map(({ component, part }) => renewal(answers, component, part)),
    lookAlikes: step.lookAlikes.map((id) => byId(catalog.lookAlikes).get(id)!),
    cautions: gravestFirst(known.flatMap((c) => cautionsFor(catalog, { component: c.id }))),
    lubricants: advice('lubricant'),
    sealants: advice('sealant'),
    wayRound: advice('wayRound'),
    checks: step.checks,
    unplug: (off.plugged ?? []).filter((port) => plugged.has(port)),
    views: viewsOf(answers, { step: step.of, title: off.title, components: step.components, done: off }),
  };
}

const gravestFirst = (list: readonly Caution[]): Caution[] =>
  [...new Set(list)].sort((a, b) => b.severity - a.severity);

/** By piece: the piece that is held by its bolts as well, where that came off by a step of its own and goes on later. */
type SharedBolts = ReadonlyMap<string, Component>;

function sharedBolts(answers: Answers, planned: readonly AssemblyStep[]): SharedBolts {
  const place = new Map(planned.flatMap((step, i) => step.components.map((id) => [id, i] as const)));
  const sharing = componentsIn(answers, [...place.keys()]).filter((c) => c.sharesBoltsOf !== undefined);
  return new Map(
    sharing
      .filter((c) => (place.get(c.sharesBoltsOf!) ?? Number.POSITIVE_INFINITY) < place.get(c.id)!)
      .map((c) => [c.sharesBoltsOf!, c]),
  );
}

/**
 * Bolts that hold two pieces are tightened once, with the later of the two, to the torque of the piece whose bolts they
 * are: on the earlier one they stay finger tight, and the class of the other piece is nobody's torque.
 */
function tighteningFor(
  answers: Answers,
  step: AssemblyStep,
  known: readonly Component[],
  shared: SharedBolts,
): Pick<BackStep, 'torques' | 'fingerTight'> {
  const all = answers.components;
  const here = new Set(step.components);
  const waits = known.flatMap((c) => shared.get(c.id) ?? []);
  const torques = known.flatMap((c) => {
    if (shared.has(c.id)) return [];
    const owner = c.sharesBoltsOf === undefined ? undefined : all.get(c.sharesBoltsOf);
    if (owner && here.has(owner.id)) return [];
    return torqueOf(answers, owner ?? c);
  });
  const [first] = waits;
  return {
    torques,
    ...(first && {
      fingerTight: `Finger tight for now: ${lowerFirst(first.name)} is held by the same bolts. They are tightened once it is on.`,
    }),
  };
}

/** By hand, a clip or a press: nothing to set a wrench to. */
function torqueOf(
  { job, catalog }: Answers,
  { id, name, torqueClass, torqueSpec, fasteners }: Component,
): StepTorque[] {
  const spec = torqueSpec === undefined ? undefined : job.specs.get(torqueSpec);
  const cls = byId(catalog.torqueClasses).get(torqueClass);
  if (!spec?.value && (!cls?.range || fasteners.length === 0)) return [];
  const joint = [...job.joints.values()].find(
    (j) => j.joint === id || j.name.toLowerCase() === name.toLowerCase(),
  );
  return [
    {
      component: id,
      name,
      ...(spec?.value && { spec }),
      ...(!spec?.value && cls?.range && { usual: usualOf(cls.name, cls.range) }),
      ...(joint && { joint: joint.joint }),
    },
  ];
}

function usualOf(
  name: string,
  {
    from,
    to,
    unit,
    origin,
  }: { from: number; to: number; unit: string; origin: { detail?: string | undefined; from: string } },
): NonNullable<StepTorque['usual']> {
  return { name, range: `${from} to ${to} ${unit}`, origin: origin.detail ?? origin.from };
}

function renewal({ job, provisionals }: Answers, component: string, name: string): Renewal {
  const part = partFor(job, component, name);
  if (!part) return { component, name, state: 'not listed' };
  const forNow = provisionals.some(({ decision }) => decision.which === part.part);
  const state =
    part.state === 'fitted'
      ? 'fitted'
      : part.state === 'arrived'
        ? 'here'
        : forNow
          ? 'old one for now'
          : 'late';
  return { component, name, part, state };
}

function soFarWords(steps: readonly BackStep[]): string | undefined {
  const waiting = steps.filter((s) => s.state === 'waits');
  if (waiting.length === 0) return undefined;
  const possible = steps.filter((s) => ['next', 'can', 'later'].includes(s.state)).length;
  const parts = [...new Set(waiting.flatMap((s) => s.waitsFor.flatMap((w) => w.parts)))];
  const named = parts.map((p) => [p.name, p.due && `due ${p.due}`].filter(Boolean).join(', ')).join('; ');
  const now =
    possible === 0 ? 'Nothing more can go back now' : `${counted(possible, 'piece')} can go back now`;
  return `${now}; ${waiting.length} must wait for ${named}.`;
}
