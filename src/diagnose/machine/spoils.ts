import { byId, type Catalog, type Check, judgementOf, keptPerCatalog } from '../../catalog/index.js';
import type { Reading } from '../../infer/index.js';
import type { SeenCheck } from './case.js';

/** Checks that read less, or nothing, once this one is done. */
export const evidenceDestroyedBy = (catalog: Catalog, { id }: Pick<Check, 'id'>): readonly string[] =>
  destroyedBy(catalog, id);

const destroyedBy = keptPerCatalog((catalog, check) => {
  const named = catalog.evidence
    .filter((e) => e.destroyedBy.checks?.includes(check))
    .flatMap((e) => e.checks ?? []);
  const own = byId(catalog.checks).get(check)?.destroys ?? [];
  return [...new Set([...own, ...named])].filter((id) => id !== check);
});

/**
 * Of checks in the order in which they were made: those that an earlier one had spoiled. The list must hold nothing from
 * before a repair of what they read: a repair makes the evidence new.
 */
export function spoiledReadings(catalog: Catalog, inOrder: readonly SeenCheck[]): Set<SeenCheck> {
  const checks = byId(catalog.checks);
  const destroyed = new Set<string>();
  const spoiled = new Set<SeenCheck>();
  for (const seen of inOrder) {
    if (destroyed.has(seen.check)) spoiled.add(seen);
    const check = checks.get(seen.check);
    if (check) for (const id of evidenceDestroyedBy(catalog, check)) destroyed.add(id);
  }
  return spoiled;
}

/**
 * A spoiled reading as likelihoods: with the chance that the catalog gives it shows what it would have shown, else any outcome
 * alike, whatever is wrong.
 */
export function spoiledReading(
  catalog: Catalog,
  { outcomes }: { readonly outcomes: readonly (string | number)[] },
  reading: Reading,
): Reading {
  const clean = 'weights' in reading ? reading.weights : outcomes.map((o) => (o === reading.outcome ? 1 : 0));
  const leaves = judgementOf(catalog, 'spoiled-leaves');
  const any = (1 - leaves) / outcomes.length;
  return { sign: reading.sign, weights: clean.map((w) => leaves * w + any) };
}
