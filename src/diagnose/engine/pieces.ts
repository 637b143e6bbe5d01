import {
  type Architecture,
  applies,
  byId,
  type Catalog,
  type Component,
  componentsOf,
  type When,
} from '../../catalog/index.js';
import { listed, lowerFirst } from '../../phrase/index.js';
import { architectureOf } from '../machine/architecture.js';
import type { MachineFacts } from '../machine/case.js';
import type { KnownOfEngine } from './known.js';

export type Fitted = 'fitted' | 'not fitted' | 'not known';

/** A piece of the catalog's graph, and whether this engine has it. */
export interface EnginePiece {
  readonly id: string;
  readonly name: string;
  readonly fitted: Fitted;
  /** how it is known, in words */
  readonly why: string;
}

/** What an engine has: every piece of the catalog, with how it is known, and the facts that follow from it. */
export interface Pieces {
  readonly pieces: ReadonlyMap<string, EnginePiece>;
  /** as told, with what the pieces say beside: what every condition of the catalog is held against */
  readonly facts: MachineFacts;
}

/**
 * Whether an engine has each piece of the catalog. What was said or shown of the piece itself counts first, then what
 * its kind and the answers given say. A piece of another kind of engine is not fitted; one that its kind may have is
 * not known until somebody looked.
 */
export function piecesOf(catalog: Catalog, known: KnownOfEngine): Pieces {
  const told = new Map([...seenOf(catalog, known), ...(known.told ?? [])].map((t) => [t.piece, t]));
  const facts = factsWith(catalog, known.facts, told);
  const architecture = architectureOf(facts);
  const own = byId(architecture ? componentsOf(catalog, architecture) : []);
  const pieces = new Map<string, EnginePiece>();
  for (const component of catalog.components) {
    const { id } = component;
    if (pieces.has(id) && !own.has(id)) continue;
    const said = told.get(id);
    const answer = said
      ? { fitted: said.fitted ? ('fitted' as const) : ('not fitted' as const), why: said.why }
      : byKind(catalog, component, own, architecture, facts);
    pieces.set(id, { id, name: (own.get(id) ?? component).name, ...answer });
  }
  const sure = [...pieces.values()].filter(({ fitted }) => fitted !== 'not known');
  return {
    pieces,
    facts: { ...facts, pieces: Object.fromEntries(sure.map((p) => [p.id, p.fitted === 'fitted'])) },
  };
}

type Told = ReadonlyMap<string, { readonly piece: string; readonly fitted: boolean; readonly why: string }>;

/** What the checks made say of pieces; the last reading of each check counts. */
function seenOf(catalog: Catalog, { seen }: KnownOfEngine) {
  const checks = byId(catalog.checks);
  const last = new Map(seen.map((s) => [s.check, s]));
  return [...last.values()].flatMap(({ check, outcomes }) => {
    const chosen = (checks.get(check)?.outcomes ?? []).filter(
      (o) => outcomes.includes(o.id) || outcomes.includes(o.words),
    );
    const of = (part: 'missing' | 'without', why: string) =>
      chosen.flatMap(({ says }) => says?.[part] ?? []).map((piece) => ({ piece, fitted: false, why }));
    return [...of('missing', 'seen to be missing'), ...of('without', 'seen to have none')];
  });
}

/** A piece that only some engines have says which this is: a bowl seen means a float carburetor, a vane no flyweights. */
function factsWith(catalog: Catalog, facts: MachineFacts, told: Told): MachineFacts {
  let now = facts;
  for (const { piece, fitted } of told.values()) {
    const condition = conditionOf(catalog, piece, facts);
    if (condition === undefined) continue;
    const parts = Object.entries(condition);
    for (const [part, wanted] of parts) now = withFact(now, part, wanted, fitted, parts.length === 1);
  }
  return now;
}

/** Under what a piece is fitted, on the kind of engine at hand; nothing where kinds differ and it is not known. */
function conditionOf(catalog: Catalog, piece: string, facts: MachineFacts): When | undefined {
  const architecture = architectureOf(facts);
  const all = catalog.components.filter(
    (c) => c.id === piece && (architecture === undefined || c.architecture === architecture),
  );
  const [first, ...others] = all.map((c) => JSON.stringify(c.onlyOn));
  return others.every((o) => o === first) ? all[0]?.onlyOn : undefined;
}

function withFact(facts: MachineFacts, part: string, wanted: unknown, fitted: boolean, alone: boolean) {
  const [value, ...more] = Array.isArray(wanted) ? (wanted as string[]) : [];
  if (value === undefined || more.length > 0) return facts;
  if (part === 'variants')
    return fitted || alone ? { ...facts, variants: { ...facts.variants, [value]: fitted } } : facts;
  const before = facts[part as keyof MachineFacts];
  const open = before === undefined || before === 'unknown';
  // one machine may carry several: a piece of one says nothing against the others
  if (part === 'use' && fitted && before !== value)
    return { ...facts, alsoUses: [...new Set([...(facts.alsoUses ?? []), value])] };
  return fitted && open && part !== 'notVariants' ? { ...facts, [part]: value } : facts;
}

function byKind(
  catalog: Catalog,
  component: Component,
  own: ReadonlyMap<string, Component>,
  architecture: Architecture | undefined,
  facts: MachineFacts,
): Pick<EnginePiece, 'fitted' | 'why'> {
  if (architecture === undefined) return onAnyKind(catalog, component.id, facts);
  const mine = own.get(component.id);
  if (!mine) return { fitted: 'not fitted', why: `no ${architecture} engine has it` };
  const holds = applies(mine.onlyOn, facts);
  if (holds === 'no') return { fitted: 'not fitted', why: becauseOf(catalog, mine.onlyOn!, facts, 'no') };
  if (holds === 'unknown' || mine.sometimes)
    return {
      fitted: 'not known',
      why: mine.sometimes ? 'not every engine of this kind has it' : 'nobody has said yet',
    };
  return mine.onlyOn
    ? { fitted: 'fitted', why: becauseOf(catalog, mine.onlyOn, facts, 'yes') }
    : { fitted: 'fitted', why: `every ${architecture} engine has it` };
}

/** While the kind is not known, a piece is ruled out only where no kind could have it. */
function onAnyKind(catalog: Catalog, id: string, facts: MachineFacts): Pick<EnginePiece, 'fitted' | 'why'> {
  const all = catalog.components.filter((c) => c.id === id);
  const ruledOut = all.every((c) => applies(c.onlyOn, facts) === 'no');
  return ruledOut
    ? { fitted: 'not fitted', why: becauseOf(catalog, all[0]!.onlyOn!, facts, 'no') }
    : { fitted: 'not known', why: 'the kind of engine is not known' };
}

/** The answers on which a condition stands or falls, in words. */
function becauseOf(catalog: Catalog, condition: When, facts: MachineFacts, answer: 'yes' | 'no'): string {
  const parts = Object.entries(condition).filter(
    ([part, wanted]) => applies({ [part]: wanted } as When, facts) === answer,
  );
  return listed(
    parts.flatMap(([part, wanted]) => partWords(catalog, part, wanted as readonly string[], facts)),
  );
}

const factNames: Readonly<Record<string, string>> = {
  architecture: 'kind of engine',
  ignition: 'ignition',
  fuelSystem: 'carburetor',
  shaft: 'shaft',
  governor: 'governor',
  starter: 'starter',
};

function partWords(
  catalog: Catalog,
  part: string,
  wanted: readonly string[],
  facts: MachineFacts,
): readonly string[] {
  if (part === 'variants' || part === 'notVariants') {
    const variants = byId(catalog.variants);
    return wanted
      .filter((id) => facts.variants?.[id] !== undefined)
      .map((id) => `“${variants.get(id)?.asks ?? id}” ${facts.variants![id] ? 'yes' : 'no'}`);
  }
  const value = facts[part as keyof MachineFacts];
  if (part === 'use') return [`drives: ${listed([facts.use ?? 'unknown', ...(facts.alsoUses ?? [])])}`];
  return [`${factNames[part] ?? lowerFirst(part)}: ${String(value).replaceAll('-', ' ')}`];
}
