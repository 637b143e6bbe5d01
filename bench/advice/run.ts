import type { Catalog } from '../../src/catalog/index.js';
import {
  accessFor,
  isLocked,
  type Machine,
  type MachineCheck,
  machineNetwork,
  matters,
  needsRunning,
  runs,
  type SeenCheck,
  spoiledAlready,
} from '../../src/diagnose/index.js';
import { type ExactInference, inferExactly } from '../../src/infer/index.js';
import { allChecks, canBeMade, type DrawnMachine, stamp } from './machines.js';

/** From this probability on a fault is identified. */
export const found = 0.5;

export const probability = (machine: Machine, inference: ExactInference, fault: string): number =>
  inference.posterior[inference.faults.indexOf(machine.now(fault))]!;

/** A machine as it stands before a check. */
export interface Standing {
  readonly catalog: Catalog;
  readonly machine: Machine;
  readonly inference: ExactInference;
  /** components that are off */
  readonly off: ReadonlySet<string>;
  /** whether it runs, as far as it is known */
  readonly runs: 'yes' | 'no' | undefined;
  /** checks that can be made, as far as it is known */
  readonly open: readonly MachineCheck[];
}

/** Which check to make. */
export type Policy = (standing: Standing) => MachineCheck;

export interface Run {
  readonly minutes: number;
  readonly halfMinutes: number;
  /** faults that matter, are absent and stand at 0.5 or more at the end */
  readonly wrong: number;
  readonly checks: number;
  readonly steps: readonly { readonly check: string; readonly minutes: number; readonly found: number }[];
}

/** Faults that are present, matter, and stand at 0.5 or more once every check is made. */
export function targets(catalog: Catalog, drawn: DrawnMachine): string[] {
  const { machine } = allChecks(catalog, drawn);
  const inference = inferExactly(machine.network);
  return machine.faults
    .filter((f) => matters(catalog, f.fault) && drawn.present.has(f.id))
    .map((f) => f.id)
    .filter((id) => probability(machine, inference, id) >= found);
}

/** Finding out that an engine does not start. */
export const tryMinutes = 2;

/** Makes checks until every wanted fault is identified, or nothing is left to check. */
export function runPolicy(
  catalog: Catalog,
  drawn: DrawnMachine,
  wanted: readonly string[],
  policy: Policy,
): Run {
  const seen: SeenCheck[] = [];
  const off = new Set<string>();
  const steps: Run['steps'][number][] = [];
  let tried: 'yes' | 'no' | undefined;
  let minutes = 0;
  let half: number | undefined;
  for (;;) {
    const machine = machineNetwork(catalog, drawn.facts, seen, drawn.history);
    const inference = inferExactly(machine.network);
    const at = wanted.filter((f) => probability(machine, inference, f) >= found).length;
    if (at >= wanted.length / 2) half ??= minutes;
    const state = stateOf(machine, tried);
    const open = machine.checks.filter((c) => seemsPossible(machine, c, state));
    if (at === wanted.length || open.length === 0) {
      const wrong = machine.faults.filter(
        (f) =>
          matters(catalog, f.fault) &&
          !drawn.present.has(f.id) &&
          probability(machine, inference, f.id) >= found,
      );
      return { minutes, halfMinutes: half ?? minutes, wrong: wrong.length, checks: seen.length, steps };
    }
    const chosen = policy({ catalog, machine, inference, off, runs: state, open });
    if (!canBeMade(drawn, chosen)) {
      // a running check on an engine that does not start, or any on one that is locked: tried, and known from then on
      minutes += tryMinutes;
      steps.push({ check: `(${chosen.check.id})`, minutes: tryMinutes, found: at });
      tried = 'no';
      if (!needsRunning(chosen.check))
        seen.push({ check: 'slow-pull', outcomes: ['locked'], at: stamp(seen.length) });
      continue;
    }
    const access = accessFor(catalog, drawn.facts, chosen.check, off);
    minutes += access.minutes;
    for (const c of access.comesOff) off.add(c.id);
    if (needsRunning(chosen.check)) tried = 'yes';
    steps.push({ check: chosen.check.id, minutes: access.minutes, found: at });
    const outcomes = drawn.shows(chosen, spoiledAlready(machine, chosen.check.id));
    seen.push({ check: chosen.check.id, outcomes, at: stamp(seen.length) });
  }
}

export function stateOf(machine: Machine, tried: 'yes' | 'no' | undefined): 'yes' | 'no' | undefined {
  if (tried !== undefined) return tried;
  const said = runs(machine);
  return said === 'unknown' ? undefined : said;
}

export function seemsPossible(
  machine: Machine,
  { check, open, waitsFor, signs }: MachineCheck,
  state: 'yes' | 'no' | undefined,
): boolean {
  if (!open || waitsFor !== undefined || signs.length === 0) return false;
  if (state === 'no' && needsRunning(check)) return false;
  return check.engine === 'still' || check.whenLocked === true || !isLocked(machine);
}
