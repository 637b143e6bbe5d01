import {
  applies,
  byId,
  type Catalog,
  type Check,
  type Component,
  componentsOf,
  keptPerCatalog,
} from '../../catalog/index.js';
import { architectureOf } from '../machine/architecture.js';
import type { MachineFacts } from '../machine/case.js';

export interface Access {
  /** minutes that the check takes now, with what must still come off */
  readonly minutes: number;
  /** components that it needs off and that are still on, in the order of taking them off */
  readonly comesOff: readonly Component[];
}

/** Hands-on minutes are never less than this part of the sheet's figure. */
const leastPart = 0.2;

/**
 * What a check takes now.
 *
 * Method: the sheet's minutes include the access on a closed machine; what is off already is taken from them, and
 * where the components that it needs off take longer than the sheet says, they count in full. So two checks behind
 * one shroud pay for it once.
 */
export function accessFor(
  catalog: Catalog,
  facts: MachineFacts,
  check: Check,
  off: ReadonlySet<string>,
): Access {
  const needed = neededOff(catalog, facts, check);
  const closed = minutesOf(needed);
  const written = checkMinutes(check, facts);
  const hands = Math.max(written - closed, leastPart * written, 1);
  const comesOff = needed.filter((c) => !off.has(c.id));
  return { minutes: hands + minutesOf(comesOff), comesOff };
}

export function checkMinutes(check: Check, facts: MachineFacts): number {
  const architecture = architectureOf(facts);
  return (architecture && check.minutesOn?.[architecture]) ?? check.minutes;
}

const minutesOf = (components: readonly Component[]): number =>
  components.reduce((sum, c) => sum + c.minutesOff, 0);

/** Everything that comes off for a check on a closed machine; nothing is known of it without the architecture. */
export function neededOff(catalog: Catalog, facts: MachineFacts, check: Check): readonly Component[] {
  const places = check.needsOff.filter(
    (p) => p.component !== undefined && (!p.on || p.on.includes(architectureOf(facts) ?? 'side-valve')),
  );
  // a place with words beside its component is needed only on some machines, or has another way in
  const sure = places.filter((p) => p.words === undefined).map((p) => p.component!);
  return withWhatStandsBefore(catalog, facts, sure);
}

/** Components with all that must come off before them, each once, in the order of taking off. */
export function withWhatStandsBefore(
  catalog: Catalog,
  facts: MachineFacts,
  ids: readonly string[],
): readonly Component[] {
  const architecture = architectureOf(facts);
  if (!architecture) return [];
  const known = byId(componentsOf(catalog, architecture));
  const usual = { ...facts, variants: { ...usualVariants(catalog), ...facts.variants } };
  const order: Component[] = [];
  const visit = (id: string): void => {
    const component = known.get(id);
    if (!component || order.includes(component)) return;
    if (applies(component.onlyOn, usual) === 'no') return;
    // what is not on this engine is not in the way, what lies over it is
    const there = facts.pieces?.[id] !== false;
    for (const b of component.before) if (applies(b.when, usual) !== 'no') visit(b.component);
    if (there) order.push(component);
  };
  for (const id of ids) visit(id);
  return order;
}

const usualVariants = keptPerCatalog((catalog) =>
  Object.fromEntries(catalog.variants.map((v) => [v.id, v.usual])),
);
