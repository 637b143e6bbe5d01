import {
  type Architecture,
  type Assembly,
  applies,
  type Catalog,
  type Component,
  componentsOf,
  type Facts,
  type When,
} from '../../catalog/index.js';
import { checkGraph, type Piece, type TeardownGraph, type Together } from './graph.js';

/** Something taken for granted because nobody has looked. */
export interface Assumed {
  /** "fitted": that the component is on this engine; "before": that it waits for `other` */
  readonly what: 'fitted' | 'before';
  readonly component: string;
  readonly other?: string;
  readonly when: When;
}

export interface CatalogGraph {
  readonly graph: TeardownGraph;
  readonly assumed: readonly Assumed[];
}

/** The shop's own times, by component or assembly id; what it has none for keeps the catalog's. */
export type ShopMinutes = Readonly<Record<string, number>>;

/**
 * The graph of one engine. A variant nobody has looked at is taken as usual. Of what is unknown beyond that the
 * slower is taken: a component may be fitted, a joint may be in the way, an assembly may not be there; the first
 * two are listed as assumed.
 * @throws PlanError if the catalog's components make no graph under these facts
 */
export function teardownGraph(
  catalog: Catalog,
  architecture: Architecture,
  facts: Facts,
  shop: ShopMinutes = {},
): CatalogGraph {
  const known = withUsual(catalog, architecture, facts);
  const components = componentsOf(catalog, architecture).filter(
    ({ onlyOn }) => applies(onlyOn, known) !== 'no',
  );
  const on = new Set(components.map(({ id }) => id));
  const pieces = components.map((component) => pieceOf(component, on, known, shop));
  const together = catalog.assemblies
    .filter((a) => a.architecture === architecture && applies(a.when, known) === 'yes')
    .map((assembly) => togetherOf(assembly, components, shop))
    .filter((whole) => whole.pieces.length > 1);
  const graph = { pieces, together };
  checkGraph(graph);
  return { graph, assumed: assumedOf(components, on, known) };
}

/** The facts, with each variant of the architecture that nobody has looked at taken as usual. */
export function withUsual(catalog: Catalog, architecture: Architecture, facts: Facts): Facts {
  const usual = catalog.variants
    .filter(({ architectures }) => architectures.includes(architecture))
    .map((variant) => [variant.id, variant.usual] as const);
  return { ...facts, architecture, variants: { ...Object.fromEntries(usual), ...facts.variants } };
}

function pieceOf(
  { id, minutesOff, before }: Component,
  on: ReadonlySet<string>,
  facts: Facts,
  shop: ShopMinutes,
): Piece {
  const holding = before.filter(({ component, when }) => on.has(component) && applies(when, facts) !== 'no');
  return { id, minutes: shop[id] ?? minutesOff, before: holding.map(({ component }) => component) };
}

/**
 * Where the catalog gives no minutes for an assembly, whole it takes no longer than its slowest piece does by itself,
 * bench work on a press or a cutter left out, which is not done to get it off (trade judgement, no source).
 */
function togetherOf(
  { id, components: ids, minutesOff }: Assembly,
  components: readonly Component[],
  shop: ShopMinutes,
): Together {
  const members = components.filter((component) => ids.includes(component.id));
  const byHand = members.filter(({ comesOffAs }) => comesOffAs !== 'machine work');
  const slowest = Math.max(...byHand.map((component) => shop[component.id] ?? component.minutesOff));
  return { id, pieces: members.map((component) => component.id), minutes: shop[id] ?? minutesOff ?? slowest };
}

function assumedOf(components: readonly Component[], on: ReadonlySet<string>, facts: Facts): Assumed[] {
  return components.flatMap(({ id, onlyOn, before }) => [
    ...(onlyOn && applies(onlyOn, facts) === 'unknown'
      ? [{ what: 'fitted' as const, component: id, when: onlyOn }]
      : []),
    ...before.flatMap(({ component, when }) =>
      when && on.has(component) && applies(when, facts) === 'unknown'
        ? [{ what: 'before' as const, component: id, other: component, when }]
        : [],
    ),
  ]);
}
