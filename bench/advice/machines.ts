import { applies, type Catalog, judgementOf } from '../../src/catalog/index.js';
import {
  type CaseHistory,
  evidenceDestroyedBy,
  hiddenBy,
  isLocked,
  type Machine,
  type MachineCheck,
  type MachineFacts,
  machineNetwork,
  needsRunning,
  runs,
  type SeenCheck,
  spoiledAlready,
  tellsWhetherItRuns,
} from '../../src/diagnose/index.js';
import { drawStates } from '../../src/infer/exact/sample.js';
import { inferExactly, type Network } from '../../src/infer/index.js';
import { drawSigns, placeOf } from './draw-signs.js';

export type Next = () => number;

const one = <T>(list: readonly T[], next: Next): T => list[Math.floor(next() * list.length)]!;
const yes = (share: number, next: Next): 'yes' | 'no' => (next() < share ? 'yes' : 'no');

/** An intake drawn in the proportions of the catalog's mixed intake. */
export function drawFacts(next: Next): MachineFacts {
  const x = next();
  const architecture = x < 0.5 ? 'side-valve' : x < 0.83 ? 'overhead-valve' : 'two-stroke';
  const small = architecture === 'two-stroke';
  const uses = [
    'mower',
    'mower',
    'mower',
    'tiller',
    'pump',
    'generator',
    'chipper',
    'blower',
    'splitter',
    'other',
  ];
  return {
    architecture,
    ignition: next() < (architecture === 'side-valve' ? 0.5 : 0.1) ? 'points' : 'solid-state',
    fuelSystem: small ? 'diaphragm' : 'float-bowl',
    shaft: next() < 0.5 ? 'vertical' : 'horizontal',
    governor: small ? 'none' : next() < 0.5 ? 'air-vane' : 'flyweight',
    starter: next() < 0.85 ? 'rope' : 'electric',
    use: one(uses, next),
    storedMonths: Math.floor(next() * 72),
    fuelLeftIn: yes(0.7, next),
    tipped: yes(0.1, next),
    struck: yes(0.15, next),
    wrongFuel: 'no',
    variants: { 'automatic-release': false },
  };
}

/** A machine drawn from the model: what is wrong with it, what its owner says, and what each check would show. */
export interface DrawnMachine {
  readonly facts: MachineFacts;
  readonly history: CaseHistory;
  readonly present: ReadonlySet<string>;
  /** what a check shows, the last time it is asked for; a reading that was spoiled shows anything in three of four cases */
  readonly shows: (check: MachineCheck, spoiled: boolean) => readonly string[];
  /** whether it starts and keeps running */
  readonly running: boolean;
  /** whether it can be turned */
  readonly locked: boolean;
}

export function drawMachine(catalog: Catalog, next: Next): DrawnMachine {
  const facts = drawFacts(next);
  const history = { complaints: drawComplaints(catalog, facts, next) };
  const network = boundTogether(catalog, facts, history);
  const inference = inferExactly(network);
  const row = drawStates(inference.reasoner, 1, next)[0]!;
  const present = new Set(inference.faults.filter((_, f) => row[f] === 1));
  return laidOut(catalog, { facts, history, network, present }, next);
}

interface Drawn {
  readonly facts: MachineFacts;
  readonly history: CaseHistory;
  readonly network: Network;
  readonly present: ReadonlySet<string>;
}

/** What every check shows on a machine of which all is known. */
export function laidOut(catalog: Catalog, drawn: Drawn, next: Next): DrawnMachine {
  const { facts, history, network, present } = drawn;
  const levels = drawSigns(network, present, next);
  const outcomes = new Map(network.signs.map((s) => [s.id, s.outcomes.map(String)]));
  const shows = (check: MachineCheck, spoiled: boolean) =>
    shownBy(
      catalog,
      check,
      spoiled ? blurred(judgementOf(catalog, 'spoiled-leaves'), check, levels, outcomes, next) : levels,
      outcomes,
    );
  return { facts, history, present, shows, ...engineState(catalog, facts, history, shows) };
}

/**
 * What an owner says, before the machine is drawn: one complaint in seven of ten cases, two in two, none in one; which,
 * as often as the model has them said. The machine is then drawn from the model given that it was said.
 */
function drawComplaints(catalog: Catalog, facts: MachineFacts, next: Next): string[] {
  const x = next();
  const count = x < 0.7 ? 1 : x < 0.9 ? 2 : 0;
  const said: string[] = [];
  while (said.length < count) {
    const weighed = catalog.complaints
      .filter((c) => applies(c.when, facts) !== 'no' && !said.includes(c.id))
      .map(({ id }) => ({ id, p: saidChance(catalog, facts, id) }));
    said.push(
      weighed[
        placeOf(
          weighed.map((w) => w.p),
          next,
        )
      ]!.id,
    );
  }
  return said;
}

const saidChance = (catalog: Catalog, facts: MachineFacts, complaint: string): number =>
  inferExactly(machineNetwork(catalog, facts, [], { complaints: [complaint] }).network).evidence;

/** The network with kin bound together, as it is once each of them was read. */
export function boundTogether(catalog: Catalog, facts: MachineFacts, history: CaseHistory): Network {
  const { checks } = machineNetwork(catalog, facts, []);
  const healthy = checks.map(({ check }) => ({
    check: check.id,
    outcomes: [check.outcomes[0]!.id],
    at: stamp(0),
  }));
  const said = machineNetwork(catalog, facts, [], history).network.seen;
  return { ...machineNetwork(catalog, facts, healthy, history).network, seen: said };
}

/** It runs when neither its owner nor any sign that the advice takes for it says that it does not. */
function engineState(
  catalog: Catalog,
  facts: MachineFacts,
  history: CaseHistory,
  shows: DrawnMachine['shows'],
): Pick<DrawnMachine, 'running' | 'locked'> {
  const seen = stateChecks(machineNetwork(catalog, facts, [], history)).map((c, i) => ({
    check: c.check.id,
    outcomes: shows(c, false),
    at: stamp(i),
  }));
  // each alone: the last reading that says so would hide the others
  const machines = [[], ...seen.map((s) => [s])].map((s) => machineNetwork(catalog, facts, s, history));
  const locked = machines.some(isLocked);
  return { locked, running: !locked && !machines.some((m) => runs(m) === 'no') };
}

/** The checks that tell whether the engine runs at all. */
export const stateChecks = (machine: Machine): MachineCheck[] =>
  machine.checks.filter(({ check }) => tellsWhetherItRuns(check));

export const stamp = (minute: number): string => new Date(Date.UTC(2026, 0, 1, 0, minute)).toISOString();

/** The levels that a spoiled check shows. */
function blurred(
  leaves: number,
  { signs }: MachineCheck,
  levels: ReadonlyMap<string, number>,
  outcomes: ReadonlyMap<string, readonly string[]>,
  next: Next,
): ReadonlyMap<string, number> {
  const any = signs.map((s) => {
    const level = next() < leaves ? levels.get(s)! : Math.floor(next() * outcomes.get(s)!.length);
    return [s, level] as const;
  });
  return new Map([...levels, ...any]);
}

function shownBy(
  catalog: Catalog,
  { check, signs }: MachineCheck,
  levels: ReadonlyMap<string, number>,
  outcomes: ReadonlyMap<string, readonly string[]>,
): readonly string[] {
  if (check.differentialOf) {
    const { changed, unchanged } = check.differentialOf;
    return [levels.get(signs[0]!) === 0 ? changed[0]! : unchanged];
  }
  const all = signs.filter((s) => levels.get(s)! > 0).map((s) => outcomes.get(s)![levels.get(s)!]!);
  const hidden = hiddenBy(catalog, check.id, all);
  const seen = all.filter((o) => !hidden.has(o));
  return seen.length > 0 ? seen : [check.outcomes[0]!.id];
}

/** Whether a check can be made on this machine as far as it is laid out; an engine that does not run bars some. */
export function canBeMade(drawn: DrawnMachine, { check, open, waitsFor, signs }: MachineCheck): boolean {
  if (!open || waitsFor !== undefined || signs.length === 0) return false;
  if (!drawn.running && needsRunning(check)) return false;
  return !drawn.locked || check.engine === 'still' || check.whenLocked === true;
}

/** Everything that can be seen of a drawn machine: what another check spoils before that one, repeats after their first. */
export function allChecks(catalog: Catalog, drawn: DrawnMachine): { seen: SeenCheck[]; machine: Machine } {
  const seen: SeenCheck[] = [];
  for (;;) {
    const machine = machineNetwork(catalog, drawn.facts, seen, drawn.history);
    const left = machine.checks.filter((c) => canBeMade(drawn, c));
    const ids = left.map((c) => c.check.id);
    const chosen =
      left.find((c) => !evidenceDestroyedBy(catalog, c.check).some((id) => ids.includes(id))) ?? left[0];
    if (!chosen) return { seen, machine };
    const outcomes = drawn.shows(chosen, spoiledAlready(machine, chosen.check.id));
    seen.push({ check: chosen.check.id, outcomes, at: stamp(seen.length) });
  }
}
