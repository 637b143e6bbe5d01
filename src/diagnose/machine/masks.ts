import { byId, type Catalog } from '../../catalog/index.js';

/**
 * Of outcomes that may be seen together: those that the chosen ones hide. A hidden outcome that was not chosen is
 * unknown, not absent; any other is cleared when it is not chosen.
 */
export function hiddenBy(catalog: Catalog, check: string, chosen: readonly string[]): ReadonlySet<string> {
  const outcomes = byId(catalog.checks).get(check)?.outcomes ?? [];
  return new Set(outcomes.filter((o) => chosen.includes(o.id)).flatMap((o) => o.hides ?? []));
}
