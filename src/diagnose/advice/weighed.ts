import type { Fault } from '../../catalog/index.js';
import type { Inference } from '../../infer/index.js';
import type { Machine } from '../machine/machine.js';
import { matters, repairAccess, type Stakes, stakesOf } from './stakes.js';

/** A fault that counts on this machine, with what hangs on it. */
export interface WeighedFault {
  readonly id: string;
  /** its name in the network as the machine stands now */
  readonly now: string;
  readonly fault: Fault;
  readonly stakes: Stakes;
  /** what comes off for its repair */
  readonly opens: ReadonlySet<string>;
}

const kept = new WeakMap<Inference, readonly WeighedFault[]>();
/** From here on a fault that stands behind a complaint explains it. */
const explains = 0.8;

/**
 * The faults that are weighed on this machine: those that matter on any, and those that stand behind a complaint of its
 * owner that nothing explains yet. A machine that goes back with what it came for comes back for certain.
 */
export function weighedFaults(machine: Machine, inference: Inference): readonly WeighedFault[] {
  const before = kept.get(inference);
  if (before) return before;
  const { catalog, facts } = machine;
  const behind = unexplained(machine, inference);
  const made = machine.faults
    .filter(({ id, fault }) => matters(catalog, fault) || behind.has(id))
    .map((f) => ({
      id: f.id,
      now: machine.now(f.id),
      fault: f.fault,
      stakes: stakesOf(catalog, facts, f, behind.has(f.id)),
      opens: new Set(repairAccess(catalog, facts, f.fault).map((c) => c.id)),
    }));
  kept.set(inference, made);
  return made;
}

function unexplained(machine: Machine, { faults, posterior }: Inference): ReadonlySet<string> {
  const place = new Map(faults.map((id, i) => [id, i]));
  const stands = (id: string): number => posterior[place.get(machine.now(id)) ?? -1] ?? 0;
  const open = machine.behind.filter((ids) => ![...ids].some((id) => stands(id) >= explains));
  return new Set(open.flatMap((ids) => [...ids]));
}
