import type { Catalog } from '../../src/catalog/index.js';
import { stakesOf } from '../../src/diagnose/advice/stakes.js';
import { behindComplaints } from '../../src/diagnose/advice/weighed.js';
import {
  accessFor,
  enoughToAct,
  type Machine,
  machineNetwork,
  matters,
  needsRunning,
  nextChecks,
  type SeenCheck,
  spoiledAlready,
} from '../../src/diagnose/index.js';
import { type ExactInference, inferExactly } from '../../src/infer/index.js';
import { sum } from './calibration.js';
import { canBeMade, type DrawnMachine, stamp } from './machines.js';
import { type Policy, seemsPossible, stateOf, tryMinutes } from './run.js';

/** What a shop pays on one machine, in minutes. */
export interface ShopMinutes {
  readonly looking: number;
  /** repairs of what is not there */
  readonly needless: number;
  /** what is there, matters or was complained of, and is not repaired */
  readonly missed: number;
  /** how many repairs are of what is not there */
  readonly wrong: number;
  readonly checks: number;
}

/** A machine as it stands when the product says that enough is seen. */
export interface AtStop {
  readonly machine: Machine;
  readonly inference: ExactInference;
  readonly repaired: ReadonlySet<string>;
  /** minutes */
  readonly looking: number;
  readonly checks: number;
}

/** Checks in a policy's order until the product says that enough is seen; what it would repair is repaired. */
export function playToStop(catalog: Catalog, drawn: DrawnMachine, policy: Policy): AtStop {
  const seen: SeenCheck[] = [];
  const off = new Set<string>();
  let tried: 'yes' | 'no' | undefined;
  let looking = 0;
  for (;;) {
    const machine = machineNetwork(catalog, drawn.facts, seen, drawn.history);
    const inference = inferExactly(machine.network);
    const state = stateOf(machine, tried);
    const open = machine.checks.filter((c) => seemsPossible(machine, c, state));
    const ranked = nextChecks(machine, inference, { off, runs: state }, Number.POSITIVE_INFINITY);
    const { enough, act } = enoughToAct(machine, inference, ranked);
    if (enough || open.length === 0)
      return { machine, inference, repaired: new Set(act.map((a) => a.id)), looking, checks: seen.length };
    const chosen = policy({ catalog, machine, inference, off, runs: state, open });
    if (!canBeMade(drawn, chosen)) {
      looking += tryMinutes;
      tried = 'no';
      if (!needsRunning(chosen.check))
        seen.push({ check: 'slow-pull', outcomes: ['locked'], at: stamp(seen.length) });
      continue;
    }
    const access = accessFor(catalog, drawn.facts, chosen.check, off);
    looking += access.minutes;
    for (const c of access.comesOff) off.add(c.id);
    if (needsRunning(chosen.check)) tried = 'yes';
    const outcomes = drawn.shows(chosen, spoiledAlready(machine, chosen.check.id));
    seen.push({ check: chosen.check.id, outcomes, at: stamp(seen.length) });
  }
}

export function shopMinutes(catalog: Catalog, drawn: DrawnMachine, policy: Policy): ShopMinutes {
  const { looking, checks, machine, repaired } = playToStop(catalog, drawn, policy);
  return { looking, checks, ...costOf(catalog, drawn, machine, repaired) };
}

function costOf(
  catalog: Catalog,
  { present, facts }: DrawnMachine,
  machine: Machine,
  repaired: ReadonlySet<string>,
) {
  const behind = behindComplaints(machine);
  const all = machine.faults.map((f) => ({
    there: present.has(f.id),
    repaired: repaired.has(f.id),
    counts: matters(catalog, f.fault) || behind.has(f.id),
    stakes: stakesOf(catalog, facts, f, behind.has(f.id)),
  }));
  const needless = all.filter((f) => f.repaired && !f.there);
  const missed = all.filter((f) => f.there && !f.repaired && f.counts);
  return {
    needless: sum(needless.map((f) => f.stakes.needless)),
    missed: sum(missed.map((f) => f.stakes.missed)),
    wrong: needless.length,
  };
}
