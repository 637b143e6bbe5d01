import { applies, byId, type Caution, type Component, type LookAlike } from '../../../catalog/index.js';
import {
  leastTeardown,
  type Removal,
  type TeardownGraph,
  type TeardownStep,
  teardownSteps,
} from '../../../plan/index.js';
import type { Fastener } from '../../entry.js';
import type { From, Job } from '../../job.js';
import type { Answers } from '../answers.js';
import { type Coverage, coverageOf, viewsOf, type WantedView } from '../steps/coverage.js';
import { freeHandle, piecesOf } from '../steps/taken.js';
import { type EarlyWait, earlyWaits, waitsFrom } from './early.js';
import { type EngineGraph, isGraph, type NoGraph } from './engine-graph.js';
import { offeredGoals, type TeardownGoal, type WantedGoal, wantedGoals } from './goals.js';

/** What holds a piece: counted on this engine, or as usual on its kind. */
export interface StepFastener {
  /** the component it belongs to */
  readonly of: string;
  readonly what: string;
  readonly size?: string | undefined;
  readonly length?: string | undefined;
  readonly hole?: string | undefined;
  readonly count?: number;
  readonly countTo?: number;
  readonly note?: string;
  /** it stays where it is, such as a stud, a taper or a hook: named, not counted out and in */
  readonly stays?: true;
  readonly known: 'this engine' | 'usual';
}

/** One act of the teardown of a job, with all that is wanted before and after it. */
export interface PlannedStep
  extends Omit<TeardownStep, 'fasteners' | 'views' | 'plugs' | 'cautions' | 'lookAlikes'> {
  /** the handle under which it is logged */
  readonly step: string;
  readonly fasteners: readonly StepFastener[];
  readonly cautions: readonly Caution[];
  readonly lookAlikes: readonly LookAlike[];
  readonly views: readonly WantedView[];
  readonly plugs: readonly { readonly port: string; readonly name: string; readonly plugWith: string }[];
  /** looks and readings that cannot be had after it and were not taken yet */
  readonly spoils: readonly string[];
  /** the bag to lay it in; none for an act such as draining */
  readonly bag?: string;
  /** the goals that it is for; itself among them when it is one */
  readonly goals: readonly string[];
  /** what it is in the way of */
  readonly holds: readonly string[];
  /** how it comes off, and what to mind */
  readonly notes: readonly string[];
  /** minutes of waiting right before it */
  readonly waitBefore: number;
  /** usually off before it and still on; none for a step of the plan */
  readonly stillBefore: readonly string[];
}

export interface TeardownPlan {
  readonly state: 'planned';
  readonly engine: EngineGraph;
  readonly goals: readonly WantedGoal[];
  /** follow by themselves; taken by a tap */
  readonly offered: readonly TeardownGoal[];
  readonly steps: readonly PlannedStep[];
  /** hands-on */
  readonly minutes: number;
  /** hands-on and the waiting that nothing fills */
  readonly elapsed: number;
  readonly optimal: boolean;
  /** whether a cheaper way exists, in words */
  readonly proof: string;
  /** to be begun first */
  readonly early: readonly EarlyWait[];
  readonly coverage: Coverage;
}

/**
 * The least teardown that reaches a job's goals from where the engine stands now: what comes off, in which order, and
 * what each step wants. The same log and the same `now` give the same plan.
 * @param now ISO 8601: soaks and cool-downs run down by it
 */
export function teardownPlanOf(answers: Answers, now?: string): TeardownPlan | NoGraph {
  const { graph: engine } = answers;
  if (!isGraph(engine)) return engine;
  const goals = wantedGoals(answers, engine);
  const reach = goals.filter((goal) => goal.state === 'wanted').map((goal) => goal.component);
  const on = new Set(engine.graph.pieces.map(({ id }) => id));
  const off = [...answers.offNow].filter((id) => on.has(id));
  const first = leastTeardown(engine.graph, { reach, off });
  const early = earlyWaits(answers, engine, first.removals, now);
  // the same removals in an order that lets the waits run: the search does not know of them
  const least =
    early.length > 0 ? leastTeardown(engine.graph, { reach, off, waits: waitsFrom(early) }) : first;
  const steps = plannedSteps(answers, engine, least.removals, reach);
  return {
    state: 'planned',
    engine,
    goals,
    offered: offeredGoals(answers, engine),
    steps,
    minutes: least.minutes,
    elapsed: least.elapsed,
    optimal: least.optimal,
    proof: proofWords(least, engine.graph),
    early,
    coverage: coverageOf(
      answers,
      'teardown',
      steps.map(({ step, name, components }) => ({ step, title: name, components })),
    ),
  };
}

function proofWords(
  {
    optimal,
    minutes,
    bound,
  }: { readonly optimal: boolean; readonly minutes: number; readonly bound: number },
  { pieces }: TeardownGraph,
): string {
  if (optimal)
    return `No cheaper set exists: every way through the ${pieces.length} pieces of this engine was weighed.`;
  return `At most ${Math.ceil(minutes - bound)} of these minutes could still be saved; the search was cut off.`;
}

function plannedSteps(
  answers: Answers,
  engine: EngineGraph,
  removals: Parameters<typeof teardownSteps>[2]['removals'],
  reach: readonly string[],
): PlannedStep[] {
  const { job, catalog } = answers;
  const bare = teardownSteps(catalog, engine.architecture, { removals });
  const goalsOf = servedGoals(removals, reach);
  let bag = lastBag(job);
  return bare.map((step, i) => {
    const known = componentsIn(answers, step.components);
    const before = bare[i - 1];
    const inBag = known.length === 0 || known.some((c) => c.comesOffAs !== 'action');
    if (inBag) bag += 1;
    const name = step.how === 'whole' ? step.name : engine.nameOf(step.id);
    const handle = freeHandle(job, step.id);
    return {
      ...step,
      name,
      step: handle,
      fasteners: fastenersOf(step, engine),
      cautions: step.cautions.map((id) => byId(catalog.cautions).get(id)!),
      lookAlikes: step.lookAlikes.map((id) => byId(catalog.lookAlikes).get(id)!),
      views: viewsOf(answers, { step: handle, title: name, components: step.components }),
      plugs: step.plugs.map((plug) => ({ ...plug, name: byId(catalog.ports).get(plug.port)!.name })),
      spoils: spoiledBy(answers, step.components),
      ...(inBag && { bag: String(bag) }),
      goals: goalsOf(step.id).map(engine.nameOf),
      holds: bare.filter(({ after }) => after.includes(step.id)).map(({ id }) => engine.nameOf(id)),
      notes: known.flatMap(({ comesOffNote, note }) => [comesOffNote, note].filter((x) => x !== undefined)),
      waitBefore: Math.max(0, step.start - (before ? before.start + before.minutes : 0)),
      stillBefore: [],
    };
  });
}

export const componentsIn = ({ components }: Answers, ids: readonly string[]): Component[] =>
  [...components.values()].filter(({ id }) => ids.includes(id));

/** The goals that wait for a removal, through whatever lies between. */
function servedGoals(
  removals: readonly {
    readonly id: string;
    readonly pieces: readonly string[];
    readonly after: readonly string[];
  }[],
  reach: readonly string[],
): (id: string) => string[] {
  const served = new Map<string, Set<string>>();
  for (const removal of removals.toReversed()) {
    const own = served.get(removal.id) ?? new Set<string>();
    for (const piece of removal.pieces) if (reach.includes(piece)) own.add(piece);
    served.set(removal.id, own);
    for (const before of removal.after) served.set(before, new Set([...(served.get(before) ?? []), ...own]));
  }
  return (id) => [...(served.get(id) ?? [])];
}

function fastenersOf(step: TeardownStep, { fasteners: own }: EngineGraph): StepFastener[] {
  const counted = step.components.flatMap((of) =>
    (own.get(of) ?? []).map((f: Fastener): StepFastener => ({ ...f, of, known: 'this engine' })),
  );
  const usual = step.fasteners
    .filter(({ of }) => !own.has(of))
    .map(
      ({ of, what, sizes, count, countTo, note, each }): StepFastener => ({
        of,
        what,
        ...(sizes && { size: sizes.join(' or ') }),
        ...(count !== undefined && { count }),
        ...(countTo !== undefined && { countTo }),
        ...(staysPut.test(what) && { stays: true as const }),
        ...((note ?? each) !== undefined && {
          note: [each && `per ${each}`, note].filter(Boolean).join(', '),
        }),
        known: 'usual',
      }),
    );
  return [...counted, ...usual];
}

/** Held by these, nothing loose is left in the hand. */
const staysPut = /^(taper|press|push|hook|Z-bend|stud|pivot|keyhole|threaded jet|threaded solenoid|thread)/;

function lastBag(job: Job): number {
  const used = [...job.steps.values()].map((s) => Number(s.bag)).filter(Number.isInteger);
  return Math.max(0, ...used);
}

/** Evidence that taking these off destroys, as far as nobody has looked. */
function spoiledBy({ job, catalog, engine }: Answers, components: readonly string[]): string[] {
  const seen = new Set([...job.observations.map((o) => o.check), ...job.measurements.map((m) => m.measure)]);
  return catalog.evidence
    .filter((e) => e.destroyedBy.components?.some((id) => components.includes(id)))
    .filter((e) => {
      const checks = (e.checks ?? []).filter(
        (id) => applies(byId(catalog.checks).get(id)?.when, engine.facts) !== 'no',
      );
      const looks = [...checks, ...(e.measurements ?? [])];
      return looks.length > 0 && !looks.some((id) => seen.has(id));
    })
    .map((e) => e.look);
}

/**
 * One step by its handle, whether the plan wants it or not: a logged one as it stands in the log, else the component
 * of that name. Nothing where neither is there.
 */
export function stepBy(answers: Answers, handle: string): PlannedStep | undefined {
  const { job, graph: engine, offNow: off } = answers;
  const logged = job.steps.get(handle);
  if (!isGraph(engine)) return logged && bareStep(logged);
  const on = new Map(engine.graph.pieces.map((piece) => [piece.id, piece]));
  const pieces = (logged ? piecesOf(answers, logged) : [handle]).filter((id) => on.has(id));
  if (pieces.length === 0) return logged && bareStep(logged);
  const removal: Removal = {
    id: pieces.length === 1 ? pieces[0]! : handle,
    how: pieces.length === 1 ? 'alone' : 'whole',
    pieces,
    minutes: Math.max(...pieces.map((id) => on.get(id)!.minutes)),
    start: 0,
    after: [],
  };
  const [step] = plannedSteps(answers, engine, [removal], []);
  const before = pieces.flatMap((id) => on.get(id)!.before);
  return {
    ...step!,
    ...(logged && asLogged(logged)),
    stillBefore:
      logged?.state === 'done' ? [] : [...new Set(before)].filter((id) => !off.has(id)).map(engine.nameOf),
  };
}

function asLogged({ step, title, bag, fasteners, state }: From<'step'>): Partial<PlannedStep> {
  const counted = fasteners?.map((f): StepFastener => ({ ...f, of: step, known: 'this engine' }));
  return {
    step,
    name: title,
    ...(bag !== undefined && { bag }),
    ...((counted || state === 'done') && { fasteners: counted ?? [] }),
  };
}

/** A piece of the person's own: what the log says of it and no more. */
function bareStep(logged: From<'step'>): PlannedStep {
  const nothing = {
    goals: [],
    holds: [],
    notes: [],
    spoils: [],
    views: [],
    cautions: [],
    lookAlikes: [],
    plugs: [],
  };
  return {
    id: logged.step,
    how: 'alone',
    pieces: [],
    components: [],
    minutes: 0,
    start: 0,
    after: [],
    name: logged.title,
    step: logged.step,
    fasteners: [],
    oneTimeParts: [],
    waitBefore: 0,
    stillBefore: [],
    ...nothing,
    ...asLogged(logged),
  };
}
