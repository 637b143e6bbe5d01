import { applies, byId, type Catalog, type Fault, type Link } from '../../catalog/index.js';
import type { MachineFacts } from './case.js';
import { shifted } from './shifts.js';

export interface MachineFault {
  readonly id: string;
  readonly fault: Fault;
  /** how often it is present in such machines, whatever brought it about */
  readonly frequency: number;
}

export interface FaultLink {
  readonly from: string;
  readonly to: string;
  readonly p: number;
}

/** Nothing is certain before it is looked at. */
const most = 0.95;

/**
 * The faults that can concern this machine, each with its frequency in machines like it.
 *
 * Method: the catalog's figure stands for a mixed intake. A fault of some architectures only is as much more
 * frequent in them as their share of the intake is smaller; where the architecture is not known the mixed figure
 * stands. Conditions other than the architecture have no shares in the catalog: their figure stands as it is, and a
 * fault that may concern the machine is kept. A catalog frequency for just such machines takes its place, the shop's
 * own frequency before both. Then the facts of the intake shift the odds (`shifted`).
 */
export function faultsFor(
  catalog: Catalog,
  facts: MachineFacts,
  own: ReadonlyMap<string, number> = new Map(),
): MachineFault[] {
  const concerned = catalog.faults.filter((f) => applies(f.when, facts) !== 'no');
  const mixed = new Map(concerned.map((f) => [f.id, mixedFrequency(catalog, f, facts)]));
  const special = likeMachines(catalog, facts, mixed);
  return concerned.map((fault) => {
    const { id } = fault;
    const learned = own.get(id);
    const p =
      learned === undefined
        ? (special.get(id) ?? shifted(catalog, id, mixed.get(id)!, facts))
        : shifted(catalog, id, learned, facts);
    return { id, fault, frequency: Math.min(most, p) };
  });
}

function mixedFrequency(catalog: Catalog, fault: Fault, facts: MachineFacts): number {
  const wanted = fault.when?.architecture;
  const known = facts.architecture !== undefined && facts.architecture !== 'unknown';
  if (!wanted || !known) return Math.min(most, fault.presentPer100 / 100);
  const shares = byId(catalog.intakeShares);
  const share = wanted.reduce((sum, a) => sum + (shares.get(a)?.per100 ?? 0), 0);
  return Math.min(most, fault.presentPer100 / (share || 100));
}

/** Frequencies that the catalog gives for just such machines. For several faults "at least one of them" is shared out. */
function likeMachines(catalog: Catalog, facts: MachineFacts, mixed: ReadonlyMap<string, number>) {
  const special = new Map<string, number>();
  for (const prior of catalog.priors) {
    const here = prior.faults.filter((f) => mixed.has(f));
    if (applies(prior.when, facts) !== 'yes' || here.length === 0) continue;
    // the chances of being spared multiply, so their logarithms are shared out in proportion
    const spared = here.map((f) => -Math.log1p(-mixed.get(f)!));
    const wanted = -Math.log1p(-Math.min(most, prior.presentPer100 / 100));
    const sum = spared.reduce((a, b) => a + b, 0);
    for (const [i, f] of here.entries()) special.set(f, -Math.expm1((-wanted * spared[i]!) / sum));
  }
  return special;
}

/** Which fault brings about which, among those that concern the machine. */
export function linksAmong(
  catalog: Catalog,
  facts: MachineFacts,
  faults: readonly MachineFault[],
): FaultLink[] {
  const here = new Set(faults.map((f) => f.id));
  return faults.flatMap(({ id, fault }) =>
    (fault.causes ?? [])
      .filter((c) => here.has(c.fault) && applies(c.when, facts) !== 'no')
      .map((c) => ({ from: id, to: c.fault, p: chanceOf(catalog, c.strength) })),
  );
}

type Strength = Link['strength'];

export function chanceOf(catalog: Catalog, strength: Strength): number {
  return byId(catalog.strengths).get(strength)!.chance;
}

/** What others bring about is at most this part of a frequency; the rest comes by itself. */
const mostBroughtAbout = 0.9;

/** Links and chances that together make each fault as frequent as said. */
export interface Balanced {
  readonly links: readonly FaultLink[];
  /** by fault: the chance that it is there by itself */
  readonly own: ReadonlyMap<string, number>;
}

/**
 * A fault's frequency counts it whatever brought it about, so its own chance is what its causes leave of it:
 * frequency = 1 − (1 − own) Π(1 − p·frequency of the cause), causes taken as independent. Where they would bring about
 * more than nine tenths of it, the links into it are weakened together until they do not: the sheet's counts stand
 * above its strengths, which are three words.
 */
export function balanced(faults: readonly MachineFault[], links: readonly FaultLink[]): Balanced {
  const frequency = new Map(faults.map((f) => [f.id, f.frequency]));
  const weakened = faults.flatMap((f) => weakenedInto(f, links, frequency));
  const own = faults.map(({ id, frequency: whole }) => {
    const spared = weakened
      .filter((l) => l.to === id)
      .reduce((product, l) => product * (1 - l.p * frequency.get(l.from)!), 1);
    return [id, Math.max(0, 1 - (1 - whole) / spared)] as const;
  });
  return { links: weakened, own: new Map(own) };
}

function weakenedInto(
  { id, frequency: whole }: MachineFault,
  links: readonly FaultLink[],
  frequency: ReadonlyMap<string, number>,
): FaultLink[] {
  const into = links.filter((l) => l.to === id);
  // chances of being spared multiply, so their logarithms add up
  const brings = into.reduce((sum, l) => sum - Math.log1p(-l.p * frequency.get(l.from)!), 0);
  const allowed = -Math.log1p(-mostBroughtAbout * whole);
  const part = brings > allowed ? allowed / brings : 1;
  return into.map((l) => {
    const cause = frequency.get(l.from)!;
    return part === 1 ? l : { ...l, p: -Math.expm1(part * Math.log1p(-l.p * cause)) / cause };
  });
}
