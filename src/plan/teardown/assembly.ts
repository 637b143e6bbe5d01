import { type Architecture, byId, type Catalog, type Component, componentsOf } from '../../catalog/index.js';
import type { TeardownStep } from './steps.js';

type Check = Component['reassemblyChecks'][number];

/** A teardown step put back. */
export interface AssemblyStep {
  /** the teardown step that it puts back */
  readonly of: string;
  readonly name: string;
  readonly components: readonly string[];
  /** teardown steps that must be back before it */
  readonly after: readonly string[];
  readonly fasteners: TeardownStep['fasteners'];
  readonly torque: readonly { readonly component: string; readonly class: string; readonly spec?: string }[];
  /** parts to be renewed with it */
  readonly renew: TeardownStep['oneTimeParts'];
  readonly checks: readonly (Check & { readonly component: string })[];
  readonly lookAlikes: readonly string[];
  /** plugs that come out now */
  readonly unplug: readonly string[];
  /** ids of the gates that must be passed before the next step */
  readonly gates: readonly string[];
}

/** The steps taken, reversed, with what is renewed, tightened and checked on the way back. */
export function assemblySteps(
  catalog: Catalog,
  architecture: Architecture,
  taken: readonly TeardownStep[],
): AssemblyStep[] {
  const components = byId(componentsOf(catalog, architecture));
  const gates = gatesAfter(catalog, taken);
  return taken.toReversed().map((step) => {
    const known = step.components.flatMap((id) => components.get(id) ?? []);
    return {
      of: step.id,
      name: step.name,
      components: step.components,
      after: taken.filter(({ after }) => after.includes(step.id)).map(({ id }) => id),
      fasteners: step.fasteners,
      torque: known.map(torqueOf),
      renew: step.oneTimeParts,
      checks: known.flatMap((component) =>
        component.reassemblyChecks.map((check) => ({ ...check, component: component.id })),
      ),
      lookAlikes: step.lookAlikes,
      unplug: step.plugs.map(({ port }) => port),
      gates: gates.get(step.id) ?? [],
    };
  });
}

function torqueOf({ id, torqueClass, torqueSpec }: Component): AssemblyStep['torque'][number] {
  return { component: id, class: torqueClass, ...(torqueSpec !== undefined && { spec: torqueSpec }) };
}

/** A gate is asked for once the last of its components that was off is back: the first taken off of them. */
function gatesAfter(catalog: Catalog, taken: readonly TeardownStep[]): Map<string, string[]> {
  const at = new Map<string, string[]>();
  for (const gate of catalog.gates) {
    if (gate.stage !== 'assembly') continue;
    const last = taken.find(({ components }) => components.some((id) => gate.after.includes(id)));
    if (last) at.set(last.id, [...(at.get(last.id) ?? []), gate.id]);
  }
  return at;
}

export interface HowFar {
  /** teardown step ids, in the order of putting back */
  readonly possible: readonly string[];
  /** what must wait, each with the late components that it waits for */
  readonly waiting: readonly { readonly step: string; readonly for: readonly string[] }[];
}

/** How far one can go while these components have no part to go back with. */
export function howFar(steps: readonly AssemblyStep[], late: ReadonlySet<string>): HowFar {
  const held = new Map<string, readonly string[]>();
  for (const step of steps) {
    const own = step.components.filter((id) => late.has(id));
    const through = step.after.flatMap((before) => held.get(before) ?? []);
    const waitsFor = [...new Set([...own, ...through])];
    if (waitsFor.length > 0) held.set(step.of, waitsFor);
  }
  return {
    possible: steps.filter(({ of }) => !held.has(of)).map(({ of }) => of),
    waiting: [...held].map(([step, waitsFor]) => ({ step, for: waitsFor })),
  };
}
