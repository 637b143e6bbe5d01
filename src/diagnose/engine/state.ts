import { byId, type Catalog, type Check, type Component, componentsOf } from '../../catalog/index.js';
import { architectureOf } from '../machine/architecture.js';
import type { MachineFacts, SeenCheck } from '../machine/case.js';
import type { KnownOfEngine } from './known.js';
import type { Pieces } from './pieces.js';

/** How an engine stands now. */
export interface EngineState {
  /** fitted pieces that are off, in the order of the catalog */
  readonly off: readonly { readonly id: string; readonly name: string }[];
  readonly plug: 'in' | 'out';
  readonly fuel: 'fresh' | 'foul' | 'none' | 'not known';
  readonly oil: 'good' | 'low' | 'foul' | 'none' | 'not known';
  readonly turns: 'yes' | 'no' | 'not known';
  /** the last that is known of it; a repair leaves a running engine open */
  readonly runs: 'yes' | 'no' | 'not known';
  readonly ranAt?: string;
}

export function stateOf(catalog: Catalog, known: KnownOfEngine, { facts, pieces }: Pieces): EngineState {
  const lying = [...(known.off ?? [])].filter((id) => pieces.get(id)?.fitted !== 'not fitted');
  const off = lying.map((id) => ({ id, name: pieces.get(id)?.name ?? id.replaceAll('-', ' ') }));
  return {
    off,
    plug: holdersOf(catalog, facts, 'squeeze').some((id) => lying.includes(id)) ? 'out' : 'in',
    fuel: contentOf(catalog, known, facts, 'fuel', lying) as EngineState['fuel'],
    oil: contentOf(catalog, known, facts, 'oil', lying) as EngineState['oil'],
    turns: turns(catalog, known),
    runs: runsNow(catalog, known),
    ...(known.ranAt !== undefined && { ranAt: known.ranAt }),
  };
}

/**
 * What is in it: nothing while a piece that holds it is off; else the later of what was seen and what was filled in.
 * A repair of what the reading blamed makes it new.
 */
function contentOf(
  catalog: Catalog,
  known: KnownOfEngine,
  facts: MachineFacts,
  what: 'fuel' | 'oil',
  off: readonly string[],
): string {
  if (holdersOf(catalog, facts, what).some((id) => off.includes(id))) return 'none';
  const fresh = what === 'fuel' ? 'fresh' : 'good';
  const said = lastSaying(catalog, known.seen, what);
  const filled = known.filled?.[what];
  if (said === undefined) return filled === undefined ? 'not known' : fresh;
  if (filled !== undefined && filled >= said.seen.at) return fresh;
  return said.value !== fresh && repairedSince(known, said.check, said.seen) ? fresh : said.value;
}

function holdersOf(catalog: Catalog, facts: MachineFacts, what: Component['holds']): string[] {
  const architecture = architectureOf(facts);
  const all = architecture ? componentsOf(catalog, architecture) : catalog.components;
  return all.filter((c) => c.holds === what).map(({ id }) => id);
}

function lastSaying(catalog: Catalog, seen: readonly SeenCheck[], what: 'fuel' | 'oil') {
  const checks = byId(catalog.checks);
  for (const one of seen.toReversed()) {
    const check = checks.get(one.check);
    const value = check && chosenOutcomes(check, one).findLast((o) => o.says?.[what])?.says?.[what];
    if (check && value !== undefined) return { check, seen: one, value };
  }
  return undefined;
}

export const chosenOutcomes = (check: Check, { outcomes }: SeenCheck): Check['outcomes'][number][] =>
  check.outcomes.filter((o) => outcomes.includes(o.id) || outcomes.includes(o.words));

/** Whether something was repaired since that the reading accuses: what it showed is not so any more. */
export function repairedSince(known: KnownOfEngine, check: Check, seen: SeenCheck): boolean {
  const chosen = new Set(chosenOutcomes(check, seen).map((o) => o.id));
  const accused = check.links.filter((l) => l.outcomes.some((o) => chosen.has(o))).map((l) => l.fault);
  return (known.repairs ?? []).some((r) => r.at >= seen.at && accused.includes(r.fault));
}

/** The last reading that can say so counts before the owner. */
function turns(catalog: Catalog, known: KnownOfEngine): EngineState['turns'] {
  const checks = byId(catalog.checks);
  for (const one of known.seen.toReversed()) {
    const check = checks.get(one.check);
    if (!check) continue;
    const chosen = chosenOutcomes(check, one);
    if (check.outcomes.some((o) => o.engine === 'locked') && chosen.length > 0)
      return chosen.some((o) => o.engine === 'locked') && !repairedSince(known, check, one) ? 'no' : 'yes';
    if (check.engine !== 'still' && !check.whenLocked && chosen.length > 0) return 'yes';
  }
  const said = catalog.complaints.filter((c) => known.complaints?.includes(c.id)).map((c) => c.engine);
  if (said.includes('locked')) return (known.repairs?.length ?? 0) > 0 ? 'not known' : 'no';
  return said.includes('runs') ? 'yes' : 'not known';
}

function runsNow(catalog: Catalog, known: KnownOfEngine): EngineState['runs'] {
  if (known.runs && known.runs !== 'unknown') return known.runs;
  const checks = byId(catalog.checks);
  const since = (at: string) => (known.repairs ?? []).some((r) => r.at > at);
  for (const one of known.seen.toReversed()) {
    const check = checks.get(one.check);
    if (!check) continue;
    const said = chosenOutcomes(check, one).flatMap((o) => o.engine ?? []);
    if (said.some((s) => s !== 'runs')) return 'no';
    if (said.length > 0 || check.engine === 'running' || check.engine === 'hot')
      return since(one.at) ? 'not known' : 'yes';
  }
  const told = catalog.complaints
    .filter((c) => known.complaints?.includes(c.id))
    .flatMap((c) => c.engine ?? []);
  if (told.some((s) => s !== 'runs')) return 'no';
  return told.length > 0 && (known.repairs?.length ?? 0) === 0 ? 'yes' : 'not known';
}
