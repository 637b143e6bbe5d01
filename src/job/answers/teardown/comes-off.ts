import { byId, componentsOf, type Fault } from '../../../catalog/index.js';
import { lowerFirst } from '../../../phrase/index.js';
import { leastTeardown, type TeardownStep, teardownSteps } from '../../../plan/index.js';
import type { From } from '../../job.js';
import type { Answers } from '../answers.js';
import { lastOff, piecesOf } from '../steps/taken.js';
import { isGraph } from './engine-graph.js';

/** A component that has come off or has to, and why, in words. */
export interface ComesOff {
  readonly component: string;
  readonly why: string;
  /** it leaves inside an assembly that stays together: what is inside may never be seen */
  readonly inside: boolean;
}

/** Choices that have a fault made right, so that its parts are bought. */
const repairs: ReadonlySet<string> = new Set(['repair', 'part-repair', 'renew', 'recondition']);

/** Faults decided to be repaired and not repaired yet. */
export const faultsToRepair = (answers: Answers): Fault[] =>
  repairsDecided(answers).map(({ fault }) => fault);

function repairsDecided({ job, catalog }: Answers): { readonly fault: Fault; readonly at: string }[] {
  const latest = new Map<string, From<'decision'>>();
  for (const d of job.decisions) if (d.about === 'fault' && d.which !== undefined) latest.set(d.which, d);
  const faults = byId(catalog.faults);
  return [...latest].flatMap(([id, { choice, at }]) => {
    const fault = repairs.has(choice) ? faults.get(id) : undefined;
    return fault ? [{ fault, at }] : [];
  });
}

/**
 * Why a component is to be reached: by the goals told, then by the faults to be repaired. One that was off since and is
 * back on was reached.
 */
function targets(answers: Answers): Map<string, string> {
  const { job, architecture, offNow: off } = answers;
  const wanted = new Map<string, string>();
  const want = (component: string, why: string, at: string) => {
    const reached = !off.has(component) && lastOff(answers, component, at)?.since === true;
    if (!reached && !wanted.has(component)) wanted.set(component, why);
  };
  for (const goal of job.goals.values())
    if (goal.state === 'wanted') want(goal.component, goal.title, goal.at);
  for (const { fault, at } of repairsDecided(answers))
    for (const { component, on } of fault.offFirst)
      if (component !== undefined && (!on || on.some((a) => a === architecture)))
        want(component, fault.name, at);
  return wanted;
}

/** What is left to take off for the goals and the repairs decided, in order; nothing while the kind is not known. */
export function stepsToCome(answers: Answers): TeardownStep[] {
  const { catalog, graph: engine, offNow } = answers;
  if (!isGraph(engine)) return [];
  const { architecture, graph } = engine;
  const on = new Set(graph.pieces.map(({ id }) => id));
  const reach = [...targets(answers).keys()].filter((id) => on.has(id));
  const off = [...offNow].filter((id) => on.has(id));
  return teardownSteps(catalog, architecture, leastTeardown(graph, { reach, off }));
}

/**
 * Every component that is off, is planned to come off, or has to for what is to be reached. What is back on already
 * is left out: its one-time parts were renewed or they were not.
 */
export function comesOff(answers: Answers): ComesOff[] {
  const { job, catalog, architecture, offNow: off, stepsToCome: steps } = answers;
  if (architecture === undefined) return [];
  const kinds = byId(componentsOf(catalog, architecture));
  const reached = targets(answers);
  const logged = [...job.steps.values()].flatMap((s): ComesOff[] => {
    if (s.stage !== 'teardown' || s.state === 'dropped') return [];
    const act = s.component !== undefined && kinds.get(s.component)?.comesOffAs === 'action';
    const [done, open] = act ? ['done', 'to be done'] : ['off', 'to come off'];
    const why = `${s.title}: ${s.state === 'done' ? done : open}`;
    const pieces = piecesOf(answers, s);
    return pieces
      .filter((component) => s.state !== 'done' || off.has(component))
      .map((component) => ({ component, why, inside: pieces.length > 1 && component !== s.component }));
  });
  const known = new Set(logged.map(({ component }) => component));
  const stands = inTheWayOf(steps, reached);
  const planned = steps.flatMap((step) =>
    step.components
      .filter((id) => !known.has(id))
      .map((component): ComesOff => {
        const reason = reached.get(component);
        const why = reason
          ? `reached for: ${lowerFirst(reason)}`
          : `in the way of: ${lowerFirst(stands.get(step.id) ?? step.name)}`;
        return { component, why, inside: step.how === 'whole' && component !== step.id };
      }),
  );
  return [...logged, ...planned];
}

/** For each step, what the first of the steps that need it done is taken for. */
function inTheWayOf(
  steps: readonly TeardownStep[],
  reached: ReadonlyMap<string, string>,
): Map<string, string> {
  const reasons = new Map<string, string>();
  for (const step of steps.toReversed()) {
    const own = step.components.flatMap((id) => reached.get(id) ?? [])[0];
    const reason = own ?? reasons.get(step.id);
    for (const before of step.after) if (reason !== undefined) reasons.set(before, reason);
  }
  return reasons;
}
