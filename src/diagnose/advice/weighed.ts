import { applies, byId, type Fault } from '../../catalog/index.js';
import type { Inference } from '../../infer/index.js';
import { functionsRead } from '../machine/functions.js';
import type { Machine } from '../machine/machine.js';
import { chosenOutcomes } from '../machine/readings.js';
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
  /** it stands behind a complaint that nothing explains yet */
  readonly complained: boolean;
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
  const open = unexplained(machine, inference);
  const behind = new Set([...open, ...workSpoilers(machine)]);
  const made = machine.faults
    .filter(({ id, fault }) => matters(catalog, fault) || behind.has(id))
    .map((f) => ({
      id: f.id,
      now: machine.now(f.id),
      fault: f.fault,
      stakes: stakesOf(catalog, facts, f, behind.has(f.id)),
      opens: new Set(repairAccess(catalog, facts, f.fault).map((c) => c.id)),
      complained: open.has(f.id),
    }));
  kept.set(inference, made);
  return made;
}

/** How it stands with what the machine came for. */
export type Complaint = 'none told' | 'open' | 'explained';

export function complaintStands(machine: Machine, inference: Inference): Complaint {
  if (machine.behind.every((ids) => ids.size === 0)) return 'none told';
  return unexplained(machine, inference).size > 0 ? 'open' : 'explained';
}

/** Faults that stand behind a complaint of the owner, whether something explains it already or not. */
export const behindComplaints = ({ behind }: Machine): ReadonlySet<string> =>
  new Set(behind.flatMap((ids) => [...ids]));

function unexplained(machine: Machine, { faults, posterior }: Inference): ReadonlySet<string> {
  const place = new Map(faults.map((id, i) => [id, i]));
  const stands = (id: string): number => posterior[place.get(machine.now(id)) ?? -1] ?? 0;
  const shown = shownFaults(machine);
  const open = machine.behind.filter(
    (ids) => ![...ids].some((id) => stands(id) >= explains && shown.has(id)),
  );
  return new Set(open.flatMap((ids) => [...ids]));
}

/** Faults of which something was seen; what the owner says and how common it is explains nothing by itself. */
function shownFaults({ catalog, readings, history, facts }: Machine): ReadonlySet<string> {
  const checks = byId(catalog.checks);
  const seen = readings
    .filter((r) => r.abnormal && !r.silent)
    .flatMap(({ seen: { check: id, outcomes } }) => {
      const check = checks.get(id);
      const said = new Set(check ? chosenOutcomes(check, outcomes) : []);
      const linked = (check?.links ?? []).filter((l) => l.outcomes.some((o) => said.has(o)));
      const read = functionsRead(catalog, id).filter((f) => f.outcomes.some((o) => said.has(o)));
      return [
        ...linked.map((l) => l.fault),
        ...read.flatMap(({ of }) =>
          of.spoiledBy.filter((s) => applies(s.when, facts) !== 'no').map((s) => s.fault),
        ),
      ];
    });
  return new Set([...seen, ...(history.confirmed ?? [])]);
}

/** All that spoils a machine's work, where its work is complained of: there is seldom one cause alone. */
function workSpoilers({ faults, behind }: Machine): readonly string[] {
  const spoilers = faults.filter(({ fault }) => fault.spoilsWork).map(({ id }) => id);
  return spoilers.some((id) => behind.some((ids) => ids.has(id))) ? spoilers : [];
}
