import { byId, type Catalog, type Check } from '../../catalog/index.js';
import type { Network, Reading } from '../../infer/index.js';
import type { CaseHistory, MachineFacts, SeenCheck } from './case.js';
import { behindComplaint, complaintSigns } from './complaints.js';
import { balanced, type FaultLink, faultsFor, linksAmong, type MachineFault } from './faults.js';
import { FunctionsNow } from './functions-now.js';
import { type Names, plainSigns, type Signs, sharedSigns, sharingOf } from './kin.js';
import { lastFew } from './last-few.js';
import { cannotTell, chosenOutcomes, notNow, readingsOf } from './readings.js';
import { runningReadings } from './running-sign.js';
import { spoiledReadings } from './spoils.js';
import { type Unit, unitsFor } from './units.js';
import { Versions } from './versions.js';

/** A check of the catalog as it stands on this machine now. */
export interface MachineCheck {
  readonly check: Check;
  /** the signs that it reads now */
  readonly signs: readonly string[];
  /** not made yet, or not since what it may show was repaired */
  readonly open: boolean;
  /** a check that has to come first: one that this repeats, with a bad outcome, or in whose course it is made */
  readonly waitsFor?: string;
}

/** A check that was made, with the signs it was taken to read. */
export interface TakenReading {
  readonly seen: SeenCheck;
  readonly title: string;
  /** the outcomes in the catalog's words */
  readonly words: readonly string[];
  /** something other than the healthy outcome was seen */
  readonly abnormal: boolean;
  readonly signs: readonly string[];
  /** a check made before it spoiled part of what it reads: it counts for less */
  readonly spoiled?: true;
  /** why it says nothing */
  readonly silent?:
    | 'read again'
    | 'not in the catalog'
    | 'outcome not in the catalog'
    | 'waits for its first reading'
    | 'cannot tell'
    | 'could not be done';
}

/** One machine: its fault network and what of the catalog each part stands for. */
export interface Machine {
  readonly catalog: Catalog;
  readonly facts: MachineFacts;
  readonly network: Network;
  readonly faults: readonly MachineFault[];
  /** the fault's name in the network as the machine stands now, after repairs */
  readonly now: (fault: string) => string;
  readonly checks: readonly MachineCheck[];
  readonly readings: readonly TakenReading[];
  readonly complaints: readonly string[];
  /** by complaint: faults that stand behind it, by themselves or by a function that they spoil */
  readonly behind: readonly ReadonlySet<string>[];
  readonly history: CaseHistory;
  /** hidden causes that stand for what is not on the list */
  readonly alarms: ReadonlySet<string>;
}

/**
 * The fault network of one machine, in the open form of `Network`, with everything that was seen.
 *
 * - Faults: those of the catalog that can concern it (`faultsFor`); what brings others about as links.
 * - A check is not a sign: see `scalesOf` for what each reads, `withSuspects` and `repeatOf` for repeats with a
 *   suspect bypassed, `sharedSigns` for related checks, `complaintSigns` for what the owner said.
 * - Functions stand between faults and what reads them, the engine's running among it (`FunctionsNow`,
 *   `runningReadings`).
 * - A fault that was repaired gets a second name from then on, there with the catalog's chances that the
 *   repair failed or that it comes anew. Readings after the repair name the second. Of two readings of one check between which
 *   nothing was repaired that it may show, the last one counts. Limit: a cause that was not repaired is drawn afresh
 *   for the later reading.
 * - A reading taken after another check has spoiled it counts for what is left of it (`spoiledReadings`); of two
 *   readings of one check a clean one counts before a spoiled one.
 * - Kin share hidden causes only from their first reading on; before, each reads by itself, which is the same.
 */
export function machineNetwork(
  catalog: Catalog,
  told: MachineFacts,
  seen: readonly SeenCheck[],
  history: CaseHistory = {},
): Machine {
  const facts = withUseSaid(machineFactsOnly(told));
  const text = JSON.stringify([facts, seen, history, [...(history.frequencies ?? [])]]);
  return machines(catalog, text, () => machineOf(catalog, facts, seen, history));
}

/** A line of the log that says nothing new of the machine gives the very same machine again. */
const machines = lastFew<Machine>(4);

function machineOf(
  catalog: Catalog,
  facts: MachineFacts,
  seen: readonly SeenCheck[],
  history: CaseHistory,
): Machine {
  const { faults, concerned, links, own, units } = groundFor(catalog, facts, history.frequencies);
  const versions = new Versions(
    catalog,
    (history.repairs ?? []).filter((r) => concerned.has(r.fault)),
  );
  const taken = new Map<SeenCheck, TakenReading>();
  const ordered = inOrder(seen);
  const functions = new FunctionsNow(catalog, facts, concerned, versions);
  const around = { catalog, seen: ordered, facts, versions, functions, taken };
  const parts = units.map((unit) => unitNow({ ...around, unit }));
  const running = runningReadings({ ...around, history });
  const said = history.complaints ?? [];
  const complaints = complaintSigns(catalog, facts, said, concerned, (id) => functions.nameAt(id, 0));
  const network: Network = {
    faults: [
      ...faults.map(({ id }) => ({ id, prior: own.get(id)! })),
      ...versions.faults(),
      ...parts.flatMap((p) => p.signs.flatMap((s) => s.shared)),
    ],
    links: [...links, ...versions.links(), ...parts.flatMap((p) => p.signs.flatMap((s) => s.links))],
    signs: [
      ...complaints.signs,
      ...running.map((r) => r.sign),
      ...parts.flatMap((p) => p.signs.flatMap((s) => s.signs)),
    ],
    seen: [...complaints.seen, ...running.map((r) => r.seen), ...parts.flatMap((p) => p.read)],
    functions: functions.network(),
    known: knownFaults(history, concerned, versions),
  };
  return {
    catalog,
    facts,
    network,
    faults,
    now: (fault) => versions.now(fault),
    checks: parts.flatMap((p) => p.checks),
    readings: ordered.map((s) => taken.get(s) ?? unknownReading(catalog, s)),
    complaints: said,
    behind: said.map((id) => behindComplaint(catalog, facts, id, concerned)),
    history,
    alarms: new Set(parts.flatMap((p) => p.signs.flatMap((s) => s.alarm ?? []))),
  };
}

/**
 * While nobody has said what it drives, nothing that it may drive concerns it: else every machine of the catalog stood
 * beside each engine. The intake asks for it first of all.
 */
const withUseSaid = (facts: MachineFacts): MachineFacts =>
  facts.use === undefined || facts.use === 'unknown' ? { ...facts, use: 'not said' } : facts;

interface Ground {
  readonly faults: readonly MachineFault[];
  readonly concerned: ReadonlySet<string>;
  readonly links: readonly FaultLink[];
  readonly own: ReadonlyMap<string, number>;
  readonly units: readonly Unit[];
}

/** What does not change while a machine is looked at; kept, because it is asked for after every reading. */
const groundFor = (catalog: Catalog, facts: MachineFacts, own: CaseHistory['frequencies']): Ground =>
  grounds(catalog, JSON.stringify([facts, own && [...own]]), () => groundOf(catalog, facts, own));

/** More kinds of machine than are asked about in a row. */
const grounds = lastFew<Ground>(20);

/** A job's intake holds more, such as names, that the network does not depend on. */
function machineFactsOnly(f: MachineFacts): MachineFacts {
  const { architecture, ignition, fuelSystem, shaft, governor, starter, use, alsoUses } = f;
  const { storedMonths, struck, tipped, wrongFuel, variants, pieces, fuelLeftIn } = f;
  const kind = { architecture, ignition, fuelSystem, shaft, governor, starter, use, alsoUses };
  return { ...kind, storedMonths, struck, tipped, wrongFuel, variants, pieces, fuelLeftIn };
}

function groundOf(catalog: Catalog, facts: MachineFacts, frequencies: CaseHistory['frequencies']): Ground {
  const faults = faultsFor(catalog, facts, frequencies);
  const concerned = new Set(faults.map((f) => f.id));
  const balance = balanced(faults, linksAmong(catalog, facts, faults));
  return { faults, concerned, ...balance, units: unitsFor(catalog, facts, concerned) };
}

const inOrder = (seen: readonly SeenCheck[]): SeenCheck[] =>
  [...seen].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));

function unknownReading(catalog: Catalog, seen: SeenCheck): TakenReading {
  const title = byId(catalog.checks).get(seen.check)?.title ?? seen.check;
  return { seen, title, words: seen.outcomes, abnormal: true, signs: [], silent: 'not in the catalog' };
}

function knownFaults(
  history: CaseHistory,
  concerned: ReadonlySet<string>,
  versions: Versions,
): Network['known'] {
  const present = new Set((history.confirmed ?? []).filter((f) => concerned.has(f)));
  const absent = (history.excluded ?? []).filter((f) => concerned.has(f));
  const known = new Map([...present].map((f) => [f, true]));
  // what was found before it was repaired says nothing of how it stands now; the last word on a fault counts
  for (const f of absent) known.set(versions.now(f), false);
  return [...known].map(([fault, isThere]) => ({ fault, present: isThere }));
}

interface UnitNow {
  readonly signs: readonly Signs[];
  readonly read: readonly Reading[];
  readonly checks: readonly MachineCheck[];
}

/** What a unit's signs are made from. */
interface UnitCase {
  readonly catalog: Catalog;
  readonly unit: Unit;
  /** every check that was made, in order */
  readonly seen: readonly SeenCheck[];
  readonly facts: MachineFacts;
  readonly versions: Versions;
  readonly functions: FunctionsNow;
  /** filled with what each check was taken to read */
  readonly taken: Map<SeenCheck, TakenReading>;
}

function unitNow(asked: UnitCase): UnitNow {
  const { unit, seen, versions } = asked;
  const timeOf = (s: SeenCheck): number => versions.timeFor(unit.faults, s.at);
  const times = new Map<number, SeenCheck[]>();
  for (const s of seen.filter((each) => unit.checks.some((c) => c.id === each.check)))
    times.set(timeOf(s), [...(times.get(timeOf(s)) ?? []), s]);
  const now = versions.timeFor(unit.faults, undefined);
  const built = [...new Set([...times.keys(), now])]
    .sort((a, b) => a - b)
    .map((time) =>
      signsAt(
        asked,
        times.get(time) ?? [],
        seen.filter((s) => timeOf(s) === time),
        time,
      ),
    );
  const last = built.at(-1)!;
  return {
    signs: built.map((b) => b.signs),
    read: built.flatMap((b) => b.read),
    checks: unit.checks.map((check) => checkNow(check, unit, last.counted, versions.suffix(now), seen)),
  };
}

function checkNow(
  check: Check,
  unit: Unit,
  counted: ReadonlyMap<string, SeenCheck>,
  suffix: string,
  seen: readonly SeenCheck[],
): MachineCheck {
  const signs = unit.scales.filter((s) => s.check === check.id).map((s) => s.id + suffix);
  const { during } = check;
  const begun = during === undefined || seen.some((s) => s.check === during);
  const waits = begun ? waitsFor(check, unit, counted) : during;
  return { check, signs, open: !counted.has(check.id), ...(waits !== undefined && { waitsFor: waits }) };
}

/** A repeat says something only after an outcome that it was made for. */
function waitsFor(check: Check, unit: Unit, counted: ReadonlyMap<string, SeenCheck>): string | undefined {
  if (!check.differentialOf) return undefined;
  const { check: base, after } = check.differentialOf;
  const first = unit.checks.find((c) => c.id === base);
  const seen = counted.get(base);
  const bad = first && seen && chosenOutcomes(first, seen.outcomes).some((o) => after.includes(o));
  return bad ? undefined : base;
}

/** @param around every check made at that time, of other units too */
function signsAt(
  { catalog, unit, facts, versions, functions, taken }: UnitCase,
  seen: readonly SeenCheck[],
  around: readonly SeenCheck[],
  time: number,
) {
  const suffix = versions.suffix(time);
  const names: Names = {
    fault: (id) => versions.nameAt(id, time),
    function: (id) => functions.nameAt(id, time),
  };
  const spoiled = seen.length === 0 ? new Set<SeenCheck>() : spoiledReadings(catalog, around);
  const counted = new Map(
    [...seen.filter((s) => spoiled.has(s)), ...seen.filter((s) => !spoiled.has(s))].map((s) => [s.check, s]),
  );
  const read: Reading[] = [];
  for (const s of seen) {
    const reading = takenReading(catalog, unit, s, counted, facts, spoiled.has(s));
    taken.set(s, { ...reading.taken, signs: reading.read.map((r) => r.sign + suffix) });
    read.push(...reading.read.map((r) => ({ ...r, sign: r.sign + suffix })));
  }
  const alone = unit.checks.length === 1 || read.length === 0;
  const signs = alone
    ? plainSigns(unit.scales, suffix, names)
    : sharedSigns(unit.id, unit.scales, suffix, names, sharingOf(catalog));
  return { signs, read, counted };
}

/** Why a reading without an outcome of the catalog says nothing. */
function silentWhy({
  outcomes,
}: SeenCheck): 'cannot tell' | 'could not be done' | 'outcome not in the catalog' {
  if (outcomes.some((o) => isSaid(o, cannotTell))) return 'cannot tell';
  return outcomes.some((o) => isSaid(o, notNow)) ? 'could not be done' : 'outcome not in the catalog';
}

const isSaid = (written: string, id: string): boolean =>
  written === id || written.toLowerCase() === id.replaceAll('-', ' ');

function takenReading(
  catalog: Catalog,
  unit: Unit,
  seen: SeenCheck,
  counted: ReadonlyMap<string, SeenCheck>,
  facts: MachineFacts,
  spoiled: boolean,
): { taken: Omit<TakenReading, 'signs'>; read: Reading[] } {
  const check = unit.checks.find((c) => c.id === seen.check)!;
  const chosen = chosenOutcomes(check, seen.outcomes);
  const words = check.outcomes.filter((o) => chosen.includes(o.id)).map((o) => o.words);
  const taken = {
    seen,
    title: check.title,
    words: words.length > 0 ? words : seen.outcomes,
    abnormal:
      (chosen.length === 0 && silentWhy(seen) === 'outcome not in the catalog') ||
      chosen.some((o) => o !== check.outcomes[0]!.id),
    ...(spoiled && { spoiled: true as const }),
  };
  const silent =
    counted.get(check.id) !== seen
      ? 'read again'
      : chosen.length === 0
        ? silentWhy(seen)
        : waitsFor(check, unit, counted) !== undefined
          ? 'waits for its first reading'
          : undefined;
  if (silent !== undefined) return { taken: { ...taken, silent }, read: [] };
  const scales = unit.scales.filter((s) => s.check === check.id);
  return { taken, read: readingsOf(catalog, check, scales, seen, facts, spoiled) };
}
