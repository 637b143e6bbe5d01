import { applies, byId, type Catalog, type Component, type LookAlike } from '../../../catalog/index.js';
import { capital } from '../../../phrase/index.js';
import type { From, Job } from '../../job.js';
import type { Answers } from '../answers.js';
import { faultsToRepair } from '../teardown/comes-off.js';
import { kindOfPart, kindOfWord } from './part-kind.js';

/** A part or a fluid that this job will ask for. Nothing is on the list before a person puts it there. */
export interface BillLine {
  /** the handle it gets on the list */
  readonly part: string;
  readonly name: string;
  /** what its name leaves open: "if stretched", "block side has a vent slot" */
  readonly note?: string;
  readonly component?: string;
  readonly consumable: boolean;
  /** how much of it, for what is used up */
  readonly amount?: string;
  readonly why: readonly string[];
  /** not on every engine, or only if it is worn */
  readonly ifNeeded: boolean;
  readonly lookAlikes: readonly FlaggedLookAlike[];
  /** what such a part costs as a rule, each */
  readonly usual?: { readonly from: number; readonly to: number; readonly currency: string };
  /** the handle under which it is on the list already */
  readonly listed?: string;
}

export interface FlaggedLookAlike {
  readonly id: string;
  /** names both parts */
  readonly name: string;
  readonly tell: string;
  readonly harm: string;
  /** other lines of this bill that can be taken for it */
  readonly twins: readonly string[];
}

interface Item {
  readonly part: string;
  readonly kind?: string;
  readonly name: string;
  readonly note?: string;
  readonly component?: Component;
  readonly consumable?: string;
  readonly ifNeeded: boolean;
  readonly why: string;
}

/**
 * What the plan and the decisions ask for: parts of the faults to be repaired, parts decided to be renewed, one-time
 * parts of all that comes off, and what the work uses up. Each kind of part once for each component.
 */
export function billOfParts(answers: Answers): BillLine[] {
  const { job, catalog } = answers;
  if (job.handOver) return [];
  const found = [...oneTimeItems(answers), ...renewedItems(answers), ...consumableItems(answers)];
  const merged = mergedItems([...found, ...faultItems(answers)], catalog);
  const flagged = new Map(merged.map((group) => [group, lookAlikesOf(catalog, group[0]!)]));
  return merged.map((group) => lineOf(job, catalog, group, flagged));
}

function oneTimeItems({ catalog, components, comesOff }: Answers): Item[] {
  return comesOff.flatMap(({ component: id, why, inside }) => {
    const component = components.get(id);
    return (component?.oneTimeParts ?? []).map((word): Item => {
      const item = itemOf(catalog, word, `not used twice; ${why}`, component);
      return inside ? { ...item, ifNeeded: true } : item;
    });
  });
}

/** Parts that were measured or looked at and are to be renewed. */
function renewedItems({ job, catalog, components }: Answers): Item[] {
  const latest = new Map(job.decisions.map((d) => [`${d.about} ${d.which}`, d]));
  return [...latest.values()].flatMap((d): Item[] => {
    if (d.choice !== 'renew' || d.which === undefined) return [];
    const ids =
      d.about === 'component'
        ? [d.which]
        : d.about === 'measurement'
          ? (byId(catalog.measurements).get(d.which)?.components?.slice(0, 1) ?? [])
          : [];
    return ids.flatMap((id) => {
      const component = components.get(id);
      return component ? [renewed(catalog, component, d.title)] : [];
    });
  });
}

function renewed(catalog: Catalog, component: Component, title: string): Item {
  const word = component.name.toLowerCase();
  const own = component.oneTimeParts.find((part) => part === word) ?? word;
  return itemOf(catalog, own, `decided: ${title}`, component);
}

function faultItems(answers: Answers): Item[] {
  return faultsToRepair(answers).flatMap((fault) =>
    fault.parts.map((word) => itemOf(answers.catalog, word, `for the repair: ${fault.name}`)),
  );
}

function consumableItems({ job, catalog, comesOff, engine }: Answers): Item[] {
  const away = new Set(comesOff.map(({ component }) => component));
  const planned = new Set(
    [...job.cleanings.values()].filter((c) => c.state === 'planned').map((c) => c.agent),
  );
  return catalog.consumables
    .filter(
      ({ when, components = [], agents = [] }) =>
        applies(when, engine.facts) !== 'no' &&
        (components.some((id) => away.has(id)) || agents.some((id) => planned.has(id))),
    )
    .map(({ id, name, why, ifNeeded }) => ({
      part: id,
      kind: id,
      name,
      consumable: id,
      ifNeeded: ifNeeded ?? false,
      why,
    }));
}

/** "governor spring if stretched" is a governor spring, needed only then. */
const condition = /\s+(if .*|on some|where .*)$/;

function itemOf(catalog: Catalog, word: string, why: string, component?: Component): Item {
  const kind = kindOfWord(catalog, word);
  const [head = word, ...rest] = word.split(/\s*[:(]\s*/);
  const only = condition.exec(head)?.[1];
  const plain = head.replace(condition, '').split(', ')[0]!.trim();
  const note = [only, ...rest.map((text) => text.replace(/\)$/, ''))].filter(Boolean).join('; ');
  const share = component ? kind?.renewedPer100 : kind?.boughtPer100;
  const own =
    component && !slug(plain).includes(component.id) ? `${component.id}-${slug(plain)}` : slug(plain);
  return {
    part: component ? own.slice(0, 80).replace(/[.-]+$/, '') : (kind?.id ?? slug(plain)),
    ...(kind && { kind: kind.id }),
    name:
      component && !plain.includes(' ')
        ? `${capital(plain)}, ${component.name.toLowerCase()}`
        : capital(plain),
    ...(note && { note }),
    ...(component && { component }),
    ifNeeded: only !== undefined || (share !== undefined && share < 100),
    why,
  };
}

const slug = (words: string) =>
  words
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');

/** Each kind once a component; what a fault names joins the component's own line of that kind, if there is one. */
function mergedItems(items: readonly Item[], { prices }: Catalog): Item[][] {
  const groups: Item[][] = [];
  for (const item of items) {
    const known = groups.find((group) => sameThing(group[0]!, item));
    if (known) known.push(item);
    else groups.push([item]);
  }
  const gaskets = groups.some(([first]) => first!.component && /gasket/i.test(first!.name));
  // the gaskets stand here one by one; a set of them is an offer that holds several
  return gaskets ? groups.filter(([first]) => !byId(prices).get(first!.kind ?? '')?.gaskets) : groups;
}

function sameThing(known: Item, item: Item): boolean {
  if (known.part === item.part) return true;
  if (known.kind === undefined || known.kind !== item.kind) return false;
  return !known.component || !item.component || known.component.id === item.component.id;
}

function lineOf(
  job: Job,
  catalog: Catalog,
  group: readonly Item[],
  flagged: ReadonlyMap<readonly Item[], readonly LookAlike[]>,
): BillLine {
  const first = group[0]!;
  const price = first.kind === undefined ? undefined : byId(catalog.prices).get(first.kind);
  const listed = listedAs(job, catalog, first);
  return {
    part: first.part,
    name: first.name,
    ...(first.note !== undefined && { note: first.note }),
    ...(first.component && { component: first.component.id }),
    consumable: first.consumable !== undefined,
    ...(first.consumable !== undefined && { amount: amountOf(job, catalog, first.consumable) }),
    why: reasonsOf(group),
    ifNeeded: group.every(({ ifNeeded }) => ifNeeded),
    lookAlikes: (flagged.get(group) ?? []).map(({ id, name, tell, harm }) => ({
      id,
      name,
      tell,
      harm,
      twins: [...flagged]
        .filter(([other, list]) => other !== group && list.some((look) => look.id === id))
        .map(([other]) => other[0]!.name),
    })),
    ...(price && { usual: { from: price.from, to: price.to, currency: price.currency } }),
    ...(listed !== undefined && { listed }),
  };
}

/** A fault that is the reason for reaching a component is not told twice. */
function reasonsOf(group: readonly Item[]): string[] {
  const all = [...new Set(group.map(({ why }) => why))];
  const told = (why: string) => why.slice(why.indexOf(': ') + 2).toLowerCase();
  return all.filter((why, i) => !all.slice(0, i).some((before) => told(before) === told(why)));
}

/** The amount from the maker's sheet where it is known, else the catalog's. */
function amountOf(job: Job, catalog: Catalog, consumable: string): string {
  const { amount, amountSpec } = byId(catalog.consumables).get(consumable)!;
  const spec = amountSpec === undefined ? undefined : job.specs.get(amountSpec);
  const read = [spec?.value?.written, spec?.upTo?.written].filter(Boolean).join(' to ') || spec?.text;
  return read ? `${read}, by ${spec!.origin.detail ?? spec!.origin.from}` : amount;
}

/** Only look-alikes that are about this very part: the noun that its name ends on stands in their name. */
function lookAlikesOf(catalog: Catalog, { component, name, part }: Item): LookAlike[] {
  const known = byId(catalog.lookAlikes);
  const noun = /([a-z-]+?)s?(,.*)?$/i.exec(name)?.[1]?.toLowerCase() ?? part;
  const about = (look: LookAlike) => new RegExp(`\\b${noun}`, 'i').test(look.name);
  return (component?.lookAlikes ?? []).flatMap((id) => {
    const look = known.get(id);
    return look && look.kind !== 'left in' && about(look) ? [look] : [];
  });
}

/** A part of the list counts when it has the line's handle, or is of its kind and not another component's. */
function listedAs(job: Job, catalog: Catalog, item: Item): string | undefined {
  if (job.parts.has(item.part)) return item.part;
  const same = [...job.parts.values()].find((p) => isThis(p, item, catalog));
  return same?.part;
}

function isThis(part: From<'part'>, item: Item, catalog: Catalog): boolean {
  if (part.component !== undefined && item.component && part.component !== item.component.id) return false;
  return item.kind !== undefined && kindOfPart(catalog, part) === item.kind;
}
