import { byId, type Check, type Fault } from '../../../catalog/index.js';
import type { From, Job } from '../../job.js';
import type { Answers } from '../answers.js';
import { lastOff, piecesOf } from '../steps/taken.js';
import { type EngineGraph, isGraph } from './engine-graph.js';

/** Something that the taking apart must reach, and why. */
export interface TeardownGoal {
  readonly component: string;
  readonly title: string;
  readonly why: string;
}

export interface WantedGoal extends TeardownGoal {
  /**
   * wanted: still on; reached: it was in the hand since it was wanted; inside: off, but within an assembly left
   * whole; absent: not on this engine
   */
  readonly state: 'wanted' | 'reached' | 'inside' | 'absent';
}

/** The goals that someone set, in the order set. */
export function wantedGoals(answers: Answers, engine: EngineGraph): WantedGoal[] {
  const on = new Set(engine.graph.pieces.map(({ id }) => id));
  return [...answers.job.goals.values()]
    .filter((goal) => goal.state === 'wanted')
    .map((goal) => ({
      component: goal.component,
      title: goal.title,
      why: goal.why,
      state: stateOf(answers, goal, on),
    }));
}

function stateOf(answers: Answers, goal: From<'goal'>, on: ReadonlySet<string>): WantedGoal['state'] {
  const off = answers.offNow.has(goal.component);
  const last = lastOff(answers, goal.component, goal.at);
  if (last && (off || last.since)) return piecesOf(answers, last.step).length > 1 ? 'inside' : 'reached';
  return on.has(goal.component) ? 'wanted' : 'absent';
}

/**
 * Goals that follow by themselves from what was decided: faults to be repaired, parts that go with a component,
 * components to renew or rework. Offered only: one that was taken or turned down is not offered again, nor one that
 * is off already or was off since.
 */
export function offeredGoals(answers: Answers, engine: EngineGraph): TeardownGoal[] {
  const { job, offNow: off } = answers;
  if (job.handOver) return [];
  const on = new Set(engine.graph.pieces.map(({ id }) => id));
  const handled = lastHandled(answers);
  const found = new Map<string, string[]>();
  for (const { component, why, at, untilFitted } of reasons(answers, engine)) {
    if (!on.has(component) || off.has(component) || job.goals.has(component)) continue;
    const last = handled.get(component);
    if (last && Date.parse(untilFitted ? last.off : last.back) >= Date.parse(at)) continue;
    found.set(component, [...new Set([...(found.get(component) ?? []), why])]);
  }
  return [...found].map(([component, whys]) => ({
    component,
    title: engine.nameOf(component),
    why: whys.join('; ').slice(0, 400),
  }));
}

/** When each component last came off, and when it last was in the hand at all. */
function lastHandled(answers: Answers): Map<string, { readonly off: string; readonly back: string }> {
  const back = new Map(answers.putBack.map((s) => [s.putsBack, s.at]));
  return new Map(
    answers.takenOff.flatMap((s) =>
      piecesOf(answers, s).map((id) => [id, { off: s.at, back: back.get(s.step) ?? s.at }] as const),
    ),
  );
}

interface Reason {
  readonly component: string;
  readonly why: string;
  readonly at: string;
  /** a part that came after the component went back wants it off again; a repair is done when it goes back */
  readonly untilFitted: boolean;
}

function reasons(answers: Answers, engine: EngineGraph): Reason[] {
  const { job } = answers;
  return [
    ...faultsToRepair(answers).flatMap(({ fault, at }) =>
      componentsForFault(fault, engine).map((component) => ({
        component,
        why: `to repair: ${fault.name}`,
        at,
        untilFitted: false,
      })),
    ),
    ...[...job.parts.values()].flatMap(({ component, consumable, state, name, at }) =>
      component === undefined || consumable || ['fitted', 'dropped'].includes(state)
        ? []
        : [{ component, why: `to fit: ${name}`, at, untilFitted: true }],
    ),
    ...lastDecisions(job).flatMap(({ which, choice, title, at }) =>
      which !== undefined && ['renew', 'recondition'].includes(choice)
        ? [{ component: which, why: `${choice}: ${title}`, at, untilFitted: false }]
        : [],
    ),
  ];
}

function lastDecisions(job: Job): From<'decision'>[] {
  const latest = new Map<string | undefined, From<'decision'>>();
  for (const d of job.decisions) if (d.about === 'component') latest.set(d.which, d);
  return [...latest.values()];
}

const leftIn: ReadonlySet<string> = new Set(['provisional', 'ask-owner', 'scrap', 'donor']);

function faultsToRepair(answers: Answers): { readonly fault: Fault; readonly at: string }[] {
  const { job, catalog, faultsSaid } = answers;
  const choice = new Map(job.decisions.map((d) => [d.which, d.choice]));
  return faultsSaid
    .filter((f) => f.present && !f.declined && f.repairedAt === undefined)
    .filter((f) => !leftIn.has(choice.get(f.fault) ?? ''))
    .flatMap(({ fault: id, at }) => {
      const fault = byId(catalog.faults).get(id);
      return fault ? [{ fault, at }] : [];
    });
}

/** What must be off for a repair. A place with words beside its component is needed only on some machines. */
function componentsForFault({ offFirst }: Fault, { architecture, graph }: EngineGraph): string[] {
  return placesOn(offFirst, architecture, graph.pieces);
}

/** What must be off for a check. */
function componentsForCheck({ needsOff }: Check, { architecture, graph }: EngineGraph): string[] {
  return placesOn(needsOff, architecture, graph.pieces);
}

function placesOn(
  places: Fault['offFirst'],
  architecture: string,
  pieces: readonly { readonly id: string }[],
): string[] {
  return places.flatMap(({ component, words, on }) => {
    const here =
      component !== undefined &&
      words === undefined &&
      (on === undefined || on.includes(architecture as never));
    return here && pieces.some(({ id }) => id === component) ? [component] : [];
  });
}

/** A person's target by its words: a component, a check to make or a fault to repair, with what must be reached for it. */
export interface GoalChoice {
  readonly kind: 'component' | 'check' | 'fault';
  readonly title: string;
  readonly reach: readonly TeardownGoal[];
}

/** Everything that can be made a goal on this engine. Checks and faults that need nothing off are left out. */
export function goalChoices({ catalog, graph: engine }: Answers): GoalChoice[] {
  if (!isGraph(engine)) return [];
  const reach = (components: readonly string[], why: string): TeardownGoal[] =>
    components.map((component) => ({ component, title: engine.nameOf(component), why }));
  const choices: GoalChoice[] = [
    ...engine.graph.pieces.map(({ id }) => ({
      kind: 'component' as const,
      title: engine.nameOf(id),
      reach: reach([id], 'named by you'),
    })),
    ...catalog.checks.map((check) => ({
      kind: 'check' as const,
      title: check.title,
      reach: reach(componentsForCheck(check, engine), `to check: ${check.title}`.slice(0, 400)),
    })),
    ...catalog.faults.map((fault) => ({
      kind: 'fault' as const,
      title: fault.name,
      reach: reach(componentsForFault(fault, engine), `to repair: ${fault.name}`),
    })),
  ];
  return choices.filter((choice) => choice.reach.length > 0);
}
