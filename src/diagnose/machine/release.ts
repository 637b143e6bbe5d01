import { byId, type Catalog, type Check, judgementOf } from '../../catalog/index.js';
import { architectureOf } from './architecture.js';
import type { MachineFacts } from './case.js';

/**
 * How likely a healthy engine shows this outcome too, because a variant that makes it usual is fitted: squeeze as felt
 * or gauged at pull speed where an automatic release lifts a valve. 0 that milder outcomes are ruled out, 1 that they
 * are as likely.
 */
export function usualLeaves(catalog: Catalog, check: Check, outcome: string, facts: MachineFacts): number {
  const variants = byId(catalog.variants);
  const architecture = architectureOf(facts);
  const fitting = (check.outcomes.find((o) => o.id === outcome)?.usualWith ?? []).filter(
    (id) => architecture === undefined || variants.get(id)?.architectures.includes(architecture),
  );
  return Math.max(0, ...fitting.map((id) => fitted(catalog, facts.variants?.[id])));
}

const fitted = (catalog: Catalog, seen: boolean | undefined): number =>
  seen === undefined ? judgementOf(catalog, 'release-unknown') : seen ? 1 : 0;
