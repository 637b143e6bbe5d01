import {
  type Architecture,
  type Assembly,
  byId,
  type Catalog,
  type Component,
  cautionsFor,
  componentsOf,
} from '../../catalog/index.js';
import type { LeastTeardown, Removal } from './least.js';

type Fastener = Component['fasteners'][number];

/** One act of the teardown, with what the person at the bench wants to know before it. */
export interface TeardownStep extends Removal {
  readonly name: string;
  readonly components: readonly string[];
  /** what comes undone, each with the component it is counted under */
  readonly fasteners: readonly (Fastener & { readonly of: string })[];
  /** pictures wanted before it */
  readonly views: readonly string[];
  /** ports that stand open after it, to be plugged at once */
  readonly plugs: readonly { readonly port: string; readonly plugWith: string }[];
  /** the gravest first */
  readonly cautions: readonly string[];
  /** parts that are not used twice */
  readonly oneTimeParts: readonly { readonly component: string; readonly part: string }[];
  readonly lookAlikes: readonly string[];
  /** of an assembly left together: what stays unseen inside */
  readonly hides?: string;
}

/**
 * The removals as steps. A component that the person added and the catalog does not know brings its name only.
 * Cautions of the stage itself stand on no single step: `cautionsFor(catalog, { stage: 'teardown' })`.
 */
export function teardownSteps(
  catalog: Catalog,
  architecture: Architecture,
  { removals }: Pick<LeastTeardown, 'removals'>,
): TeardownStep[] {
  const components = byId(componentsOf(catalog, architecture));
  const assemblies = catalog.assemblies.filter((assembly) => assembly.architecture === architecture);
  const plugged = new Set<string>();
  return removals.map((removal) => {
    const known = removal.pieces.flatMap((id) => components.get(id) ?? []);
    const assembly = assemblies.find(({ id }) => removal.how === 'whole' && id === removal.id);
    return { ...removal, ...stepOf(catalog, removal, known, assembly, plugged) };
  });
}

function stepOf(
  catalog: Catalog,
  { id, pieces }: Removal,
  known: readonly Component[],
  assembly: Assembly | undefined,
  plugged: Set<string>,
): Omit<TeardownStep, keyof Removal> {
  return {
    name: assembly?.name ?? known[0]?.name ?? id,
    components: pieces,
    fasteners: undone(known, assembly).flatMap((component) =>
      component.fasteners.map((fastener) => ({ ...fastener, of: component.id })),
    ),
    views: unique(known.flatMap(({ views }) => views ?? [])),
    plugs: plugsOf(catalog, known, plugged),
    cautions: cautionsOf(catalog, known),
    oneTimeParts: known.flatMap(({ id: component, oneTimeParts }) =>
      oneTimeParts.map((part) => ({ component, part })),
    ),
    lookAlikes: unique(known.flatMap(({ lookAlikes }) => lookAlikes ?? [])),
    ...(assembly?.hides !== undefined && { hides: assembly.hides }),
  };
}

/** Of an assembly that leaves whole only what holds it comes undone. */
function undone(known: readonly Component[], assembly: Assembly | undefined): readonly Component[] {
  const { heldBy } = assembly ?? {};
  return heldBy ? known.filter(({ id }) => heldBy.includes(id)) : known;
}

/** A port that an earlier step left open has its plug already. */
function plugsOf(catalog: Catalog, known: readonly Component[], plugged: Set<string>): TeardownStep['plugs'] {
  const opened = unique(known.flatMap(({ opens }) => opens ?? [])).filter((port) => !plugged.has(port));
  for (const port of opened) plugged.add(port);
  return opened.map((port) => ({ port, plugWith: byId(catalog.ports).get(port)!.plugWith }));
}

function cautionsOf(catalog: Catalog, known: readonly Component[]): string[] {
  const all = known.flatMap(({ id }) => cautionsFor(catalog, { component: id }));
  return unique(all.toSorted((a, b) => b.severity - a.severity).map(({ id }) => id));
}

const unique = <T>(list: readonly T[]): T[] => [...new Set(list)];
