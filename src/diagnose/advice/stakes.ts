import type { Catalog, Fault } from '../../catalog/index.js';
import type { MachineFacts } from '../machine/case.js';
import type { MachineFault } from '../machine/faults.js';
import { architectureOf, withWhatStandsBefore } from './access.js';

/** Main cause of a hard start in at least this many of 100: it keeps a machine from starting or running. */
const stopsTheEngine = 0.4;

/** Whether leaving a fault in would bring the machine back or hurt someone; the others are service items. */
export function matters(fault: Fault): boolean {
  return (
    fault.mainCausePer100HardStarts >= stopsTheEngine ||
    fault.blocksHandOver !== undefined ||
    fault.safety === 3
  );
}

/** From this probability on a fault is taken to be found. */
export const found = 0.5;

/** What hangs on a fault, in minutes of work. */
export interface Stakes {
  /** lost when it is there and is not repaired */
  readonly missed: number;
  /** lost when it is repaired and is not there */
  readonly needless: number;
}

/** Minutes that a machine costs which comes back, and a person who is hurt; trade judgement, no source. */
const comesBack = 90;
const dangerWeighs = 60;
const partsMinutes = 20;

export function stakesOf(catalog: Catalog, facts: MachineFacts, { fault }: MachineFault): Stakes {
  const repair = repairMinutes(fault, facts) + accessMinutes(catalog, facts, fault);
  const danger = fault.safety === 3 ? dangerWeighs : fault.safety === 2 ? dangerWeighs / 3 : 0;
  const causes = Math.min(3, fault.mainCausePer100HardStarts) / 3;
  return {
    missed: 15 + comesBack * causes + danger,
    needless: repair + (fault.parts.length > 0 ? partsMinutes : 0),
  };
}

function repairMinutes(fault: Fault, facts: MachineFacts): number {
  const architecture = architectureOf(facts);
  return (architecture && fault.repairMinutesOn?.[architecture]) ?? fault.repairMinutes;
}

function accessMinutes(catalog: Catalog, facts: MachineFacts, fault: Fault): number {
  const architecture = architectureOf(facts);
  const places = fault.offFirst.filter(
    (p) => p.component && !(p.on && architecture && !p.on.includes(architecture)),
  );
  const off = withWhatStandsBefore(
    catalog,
    facts,
    places.map((p) => p.component!),
  );
  return off.reduce((sum, c) => sum + c.minutesOff, 0);
}
