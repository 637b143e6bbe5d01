import { applies, type Catalog, type Check } from '../../catalog/index.js';
import type { MachineFacts } from './case.js';
import { chanceOf } from './faults.js';

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
  const families = check.several ? familiesOf(bad, links) : [bad];
  const read = families.filter((family) => links.some((l) => l.outcomes.some((o) => family.includes(o))));
  const alarm = 1 - (1 - check.falseAlarm) ** (1 / read.length);
  return read.map((family) => ({
    id: check.several ? `${check.id}/${family[0]}` : check.id,
    check: check.id,
    outcomes: [healthy, ...family],
    leak: leakOf(alarm, family.length, check.reads === 'ladder'),
    causes: causesOf(catalog, links, family),
  }));
}

type Links = Check['links'];

/** Outcomes that one link names together belong together. */
function familiesOf(outcomes: readonly string[], links: Links): string[][] {
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

function leakOf(alarm: number, levels: number, ladder: boolean): number[] {
  const parts = Array.from({ length: levels }, (_, k) => (ladder ? 0.5 ** k : 1));
  const sum = parts.reduce((a, b) => a + b, 0);
  return [1 - alarm, ...parts.map((part) => (alarm * part) / sum)];
}

function causesOf(catalog: Catalog, links: Links, family: readonly string[]) {
  const ways = new Map<string, { chance: number; levels: number[] }[]>();
  for (const link of links) {
    const levels = link.outcomes.map((o) => family.indexOf(o) + 1).filter((k) => k > 0);
    if (levels.length === 0) continue;
    const way = { chance: chanceOf(catalog, link.strength), levels };
    ways.set(link.fault, [...(ways.get(link.fault) ?? []), way]);
  }
  return new Map([...ways].map(([fault, list]) => [fault, massesOf(list, family.length + 1)]));
}

function massesOf(ways: readonly { chance: number; levels: readonly number[] }[], size: number): number[] {
  const spared = ways.reduce((p, w) => p * (1 - w.chance), 1);
  const sum = ways.reduce((s, w) => s + w.chance, 0);
  const masses = new Array<number>(size).fill(0);
  masses[0] = spared;
  for (const { chance, levels } of ways)
    for (const k of levels) masses[k]! += ((1 - spared) * chance) / sum / levels.length;
  return masses;
}

/** The chance that a fault shows at all. */
export const reachOf = (masses: readonly number[]): number => 1 - masses[0]!;
