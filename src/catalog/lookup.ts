import type { Catalog, Caution, Component, Fault, Measurement } from './catalog.js';
import type { Architecture } from './schema/fields/when.js';
import type { JudgementId } from './schema/judgement.js';
import type { RoleId } from './schema/role.js';
import type { StageId } from './schema/stage.js';

const maps = new WeakMap<readonly object[], ReadonlyMap<string, unknown>>();

/** A catalog list by id, made once a list. For components take `componentsOf` first: their ids repeat over architectures. */
export function byId<T extends { readonly id: string }>(list: readonly T[]): ReadonlyMap<string, T> {
  const known = maps.get(list);
  if (known) return known as ReadonlyMap<string, T>;
  const made = new Map(list.map((entry) => [entry.id, entry]));
  maps.set(list, made);
  return made;
}

/** What follows from a catalog and a word alone, worked out once for each. */
export function keptPerCatalog<T>(
  work: (catalog: Catalog, word: string) => T,
): (catalog: Catalog, word?: string) => T {
  const kept = new WeakMap<Catalog, Map<string, T>>();
  return (catalog, word = '') => {
    const known = kept.get(catalog) ?? new Map<string, T>();
    kept.set(catalog, known);
    if (!known.has(word)) known.set(word, work(catalog, word));
    return known.get(word)!;
  };
}

/** The components of one architecture, in the order of the pack. */
export const componentsOf: (catalog: Catalog, architecture: Architecture) => readonly Component[] =
  keptPerCatalog((catalog, architecture) =>
    catalog.components.filter((component) => component.architecture === architecture),
  );

/**
 * A single figure of judgement.
 * @throws RangeError when no pack gives it: the built-in packs give all
 */
export function judgementOf(catalog: Catalog, id: JudgementId): number {
  const known = byId(catalog.judgements).get(id);
  if (!known) throw new RangeError(`no pack gives the judgement "${id}"`);
  return known.value;
}

/**
 * The id of the entry that plays a part the program has to know by name.
 * @throws RangeError when no pack gives it: the loader refuses such a catalog
 */
export function roleOf(catalog: Pick<Catalog, 'roles'>, id: RoleId): string {
  const { id: _, ...played } = byId(catalog.roles).get(id) ?? { id };
  const [by] = Object.values(played);
  if (by === undefined) throw new RangeError(`no pack says what plays "${id}"`);
  return by;
}

/** The measurement that plays a part; undefined in a catalog without it. */
export function measurementAs(
  catalog: Pick<Catalog, 'roles' | 'measurements'>,
  id: RoleId,
): Measurement | undefined {
  return byId(catalog.measurements).get(roleOf(catalog, id));
}

/** Somebody can be hurt while this fault stands, or it keeps the machine from being handed over. */
export const canHurt = ({ blocksHandOver, safety }: Fault): boolean =>
  blocksHandOver !== undefined || safety >= 2;

/** What is about to be done, touched or used. */
export interface Occasion {
  readonly stage?: StageId;
  readonly component?: string;
  readonly check?: string;
  readonly agent?: string;
  readonly runUp?: string;
  readonly fault?: string;
  readonly use?: string;
}

/** The cautions to show before it, the gravest first. */
export const cautionsFor = (catalog: Catalog, occasion: Occasion): readonly Caution[] =>
  cautionsAt(catalog, JSON.stringify(occasion));

const cautionsAt = keptPerCatalog((catalog, written) => {
  const occasion: Occasion = JSON.parse(written);
  const named = new Set(namedCautions(catalog, occasion));
  const during = engineDuring(catalog, occasion);
  return catalog.cautions
    .filter((caution) => named.has(caution.id) || hangsOn(caution.when, occasion, during))
    .toSorted((a, b) => b.severity - a.severity);
});

/** What the engine does meanwhile. */
const engineDuring = (catalog: Catalog, { check, runUp }: Occasion): string | undefined =>
  byId(catalog.checks).get(check ?? '')?.engine ?? byId(catalog.runUp).get(runUp ?? '')?.engine;

function hangsOn(when: Caution['when'], occasion: Occasion, during: string | undefined): boolean {
  const pairs: [readonly string[] | undefined, string | undefined][] = [
    [when.stages, occasion.stage],
    [when.components, occasion.component],
    [when.checks, occasion.check],
    [when.engine, during],
    [when.agents, occasion.agent],
    [when.runUp, occasion.runUp],
    [when.faults, occasion.fault],
    [when.uses, occasion.use],
  ];
  return pairs.some(([list, value]) => value !== undefined && list?.includes(value) === true);
}

function namedCautions(catalog: Catalog, { check, agent, runUp }: Occasion): readonly string[] {
  const holders = [
    check && byId(catalog.checks).get(check),
    agent && byId(catalog.agents).get(agent),
    runUp && byId(catalog.runUp).get(runUp),
  ];
  return holders.flatMap((holder) => (holder ? (holder.cautions ?? []) : []));
}
