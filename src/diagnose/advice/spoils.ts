import { byId } from '../../catalog/index.js';
import type { Machine } from '../machine/machine.js';
import { evidenceDestroyedBy } from '../machine/spoils.js';

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
