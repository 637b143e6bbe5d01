import { applies, type Catalog, type Check, judgementOf } from '../../catalog/index.js';
import type { MachineFacts } from './case.js';
import { chanceOf } from './faults.js';
import { type FunctionRead, functionsRead } from './functions.js';

/** What a check reads at once: outcomes in order, the healthy one first, of which the worst is seen. */
export interface Scale {
  /** the check's id, or `check/outcome` where it reads several */
  readonly id: string;
  readonly check: string;
  /** outcome ids; the first stands for "none of the others" */
  readonly outcomes: readonly string[];
  /** by outcome: what is seen on a machine without any of the faults */
  readonly leak: readonly number[];
  /** by fault: what that fault alone shows */
  readonly causes: ReadonlyMap<string, readonly number[]>;
  /** by function: what each of its bad states shows */
  readonly functions: ReadonlyMap<string, readonly (readonly number[])[]>;
}

/**
 * The signs that a check reads.
 *
 * A check with one outcome at a time, ladder or kinds, is one ordered sign: the outcome seen clears what is worse and
 * hides what is milder, which is what a worst-of-all reading says. A check whose outcomes may be seen together is one
 * sign for each outcome; outcomes that the sheet names together as the face of one fault ("tight or nil") are one
 * ordered sign. Outcomes that accuse no fault read nothing.
 *
 * Masses: a link's strength is spread evenly over the outcomes it names; several links of one fault to one sign are
 * independent ways to show. The rest is the healthy outcome. `falseAlarm` is shared out over the signs of the check
 * so that any of them is abnormal with just that chance; within a ladder each worse outcome is half as frequent.
 *
 * Links of the healthy outcome that hang on a complaint are left out on purpose: the complaint is a sign with these
 * faults among its causes, and a healthy reading clears the others, so they rise by themselves.
 */
export function scalesOf(
  catalog: Catalog,
  check: Check,
  facts: MachineFacts,
  concerned: ReadonlySet<string>,
): Scale[] {
  const links = check.links.filter(
    (l) => !l.withComplaint && concerned.has(l.fault) && applies(l.when, facts) !== 'no',
  );
  const healthy = check.outcomes[0]!.id;
  const bad = check.outcomes.slice(1).map((o) => o.id);
  const reads = functionsRead(catalog, check.id);
  const naming = [...links, ...reads];
  const families = check.several ? familiesOf(bad, naming) : [bad];
  const read = families.filter((family) => naming.some((l) => l.outcomes.some((o) => family.includes(o))));
  const alarm = 1 - (1 - check.falseAlarm) ** (1 / read.length);
  const seenItself = new Set(links.filter((l) => l.strength === 'seen').flatMap((l) => l.outcomes));
  const least = judgementOf(catalog, 'seen-false-alarm');
  return read.map((family) => ({
    id: check.several ? `${check.id}/${family[0]}` : check.id,
    check: check.id,
    outcomes: [healthy, ...family],
    leak: leakOf(
      alarm,
      check.reads === 'ladder',
      family.map((o) => (seenItself.has(o) ? least : 1)),
    ),
    causes: causesOf(catalog, links, family),
    functions: functionCauses(reads, family),
  }));
}

type Links = Check['links'];
type Naming = readonly { readonly outcomes: readonly string[] }[];

/** Outcomes that one link names together belong together. */
function familiesOf(outcomes: readonly string[], links: Naming): string[][] {
  const home = new Map(outcomes.map((o) => [o, o]));
  for (const { outcomes: together } of links) {
    const into = home.get(together[0]!);
    const joined = together.map((o) => home.get(o));
    if (into === undefined) continue;
    for (const o of outcomes) if (joined.includes(home.get(o))) home.set(o, into);
  }
  const families = new Map<string, string[]>();
  for (const o of outcomes) families.set(home.get(o)!, [...(families.get(home.get(o)!) ?? []), o]);
  return [...families.values()];
}

/** @param most by outcome: what is the fault itself, seen, is hardly ever seen without it */
function leakOf(alarm: number, ladder: boolean, most: readonly number[]): number[] {
  const parts = most.map((_, k) => (ladder ? 0.5 ** k : 1));
  const sum = parts.reduce((a, b) => a + b, 0);
  const bad = parts.map((part, k) => Math.min(most[k]!, (alarm * part) / sum));
  return [1 - bad.reduce((a, b) => a + b, 0), ...bad];
}

function functionCauses(reads: readonly FunctionRead[], family: readonly string[]): Scale['functions'] {
  const size = family.length + 1;
  const causes = new Map<string, readonly (readonly number[])[]>();
  for (const { id, states } of reads.map((r) => r.of)) {
    const byState = states.slice(1).map(({ id: state }) => {
      const ways = reads
        .filter((r) => r.of.id === id && r.state === state)
        .map(({ chance, outcomes }) => ({ chance, levels: levelsIn(family, outcomes) }))
        .filter((way) => way.levels.length > 0);
      return massesOf(ways, size);
    });
    if (byState.some((m) => m[0]! < 1)) causes.set(id, byState);
  }
  return causes;
}

const levelsIn = (family: readonly string[], outcomes: readonly string[]): number[] =>
  outcomes.map((o) => family.indexOf(o) + 1).filter((k) => k > 0);

function causesOf(catalog: Catalog, links: Links, family: readonly string[]) {
  const ways = new Map<string, { chance: number; levels: number[] }[]>();
  for (const link of links) {
    const levels = levelsIn(family, link.outcomes);
    if (levels.length === 0) continue;
    const way = { chance: chanceOf(catalog, link.strength), levels };
    ways.set(link.fault, [...(ways.get(link.fault) ?? []), way]);
  }
  return new Map([...ways].map(([fault, list]) => [fault, massesOf(list, family.length + 1)]));
}

function massesOf(ways: readonly { chance: number; levels: readonly number[] }[], size: number): number[] {
  const spared = ways.reduce((p, w) => p * (1 - w.chance), 1);
  const sum = ways.reduce((s, w) => s + w.chance, 0) || 1;
  const masses = new Array<number>(size).fill(0);
  masses[0] = spared;
  for (const { chance, levels } of ways)
    for (const k of levels) masses[k]! += ((1 - spared) * chance) / sum / levels.length;
  return masses;
}

/** The chance that a fault shows at all. */
export const reachOf = (masses: readonly number[]): number => 1 - masses[0]!;
