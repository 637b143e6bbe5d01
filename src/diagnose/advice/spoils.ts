import { byId, type Catalog, type Check } from '../../catalog/index.js';
import type { Machine } from '../machine/machine.js';

/** Checks that read less, or nothing, once this one is done. */
export function evidenceDestroyedBy(catalog: Catalog, check: Check): readonly string[] {
  const named = catalog.evidence
    .filter((e) => e.destroyedBy.checks?.includes(check.id))
    .flatMap((e) => e.checks ?? []);
  return [...new Set([...(check.destroys ?? []), ...named])].filter((id) => id !== check.id);
}

/** Whether a check that spoils this one was made before it. */
export function spoiledAlready(machine: Machine, id: string): boolean {
  const checks = byId(machine.catalog.checks);
  const made = machine.readings.some((r) => r.seen.check === id);
  return (
    !made &&
    machine.readings.some((r) => {
      const check = checks.get(r.seen.check);
      return check !== undefined && evidenceDestroyedBy(machine.catalog, check).includes(id);
    })
  );
}
