import type { Catalog } from '../../src/catalog/index.js';
import {
  hiddenBy,
  type Machine,
  type MachineCheck,
  type MachineFacts,
  machineNetwork,
  type Network,
  type SeenCheck,
} from '../../src/diagnose/index.js';

type Next = () => number;

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

/** A machine drawn from the model: what is wrong with it, and what each check would show. */
export interface DrawnMachine {
  readonly facts: MachineFacts;
  readonly present: ReadonlySet<string>;
  readonly shows: (check: MachineCheck) => readonly string[];
}

export function drawMachine(catalog: Catalog, next: Next): DrawnMachine {
  const facts = drawFacts(next);
  const network = boundTogether(catalog, facts);
  const present = drawFaults(network, next);
  const levels = new Map(network.signs.map((s) => [s.id, drawLevel(s, present, next)]));
  const outcomes = new Map(network.signs.map((s) => [s.id, s.outcomes.map(String)]));
  return { facts, present, shows: (check) => shownBy(check, levels, outcomes) };
}

/** The network with kin bound together, as it is once each of them was read. */
function boundTogether(catalog: Catalog, facts: MachineFacts): Network {
  const { checks } = machineNetwork(catalog, facts, []);
  const healthy = checks.map(({ check }) => ({
    check: check.id,
    outcomes: [check.outcomes[0]!.id],
    at: stamp(0),
  }));
  return machineNetwork(catalog, facts, healthy).network;
}

export const stamp = (minute: number): string => new Date(Date.UTC(2026, 0, 1, 0, minute)).toISOString();

function drawFaults({ faults, links }: Network, next: Next): Set<string> {
  const prior = new Map(faults.map((f) => [f.id, f.prior]));
  const drawn = new Map<string, boolean>();
  const isThere = (id: string): boolean => {
    const before = drawn.get(id);
    if (before !== undefined) return before;
    const byItself = next() < prior.get(id)!;
    const broughtAbout = links.filter((l) => l.to === id).map((l) => isThere(l.from) && next() < l.p);
    drawn.set(id, byItself || broughtAbout.includes(true));
    return drawn.get(id)!;
  };
  return new Set(faults.map((f) => f.id).filter(isThere));
}

function drawLevel(sign: Network['signs'][number], present: ReadonlySet<string>, next: Next): number {
  const from = (masses: readonly number[]): number => {
    let x = next();
    const k = masses.findIndex((m) => {
      x -= m;
      return x < 0;
    });
    return k < 0 ? masses.length - 1 : k;
  };
  const causes = sign.causes.filter((c) => present.has(c.fault)).map((c) => from(c.outcome));
  return Math.max(from(sign.leak), ...causes);
}

function shownBy(
  { check, signs }: MachineCheck,
  levels: ReadonlyMap<string, number>,
  outcomes: ReadonlyMap<string, readonly string[]>,
): readonly string[] {
  if (check.differentialOf) {
    const { changed, unchanged } = check.differentialOf;
    return [levels.get(signs[0]!) === 0 ? changed[0]! : unchanged];
  }
  const all = signs.filter((s) => levels.get(s)! > 0).map((s) => outcomes.get(s)![levels.get(s)!]!);
  const hidden = hiddenBy(check.id, all);
  const seen = all.filter((o) => !hidden.has(o));
  return seen.length > 0 ? seen : [check.outcomes[0]!.id];
}

export const canBeMade = ({ open, waitsFor, signs }: MachineCheck): boolean =>
  open && waitsFor === undefined && signs.length > 0;

/** Everything that can be seen of a drawn machine, repeats after their first readings included. */
export function allChecks(catalog: Catalog, drawn: DrawnMachine): { seen: SeenCheck[]; machine: Machine } {
  const seen: SeenCheck[] = [];
  for (;;) {
    const machine = machineNetwork(catalog, drawn.facts, seen);
    const left = machine.checks.filter(canBeMade);
    if (left.length === 0) return { seen, machine };
    for (const c of left) seen.push({ check: c.check.id, outcomes: drawn.shows(c), at: stamp(seen.length) });
  }
}
