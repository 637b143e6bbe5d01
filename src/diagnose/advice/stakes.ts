import {
  type Catalog,
  type Component,
  type Fault,
  type JudgementId,
  judgementOf,
} from '../../catalog/index.js';
import { architectureOf } from '../machine/architecture.js';
import type { MachineFacts } from '../machine/case.js';
import type { MachineFault } from '../machine/faults.js';
import { withWhatStandsBefore } from './access.js';

/**
 * Whether leaving a fault in would bring the machine back or hurt someone; the others are service items. It
 * keeps a machine from starting, as far as it is a main cause of hard starts, bars the hand-over, or is a serious danger.
 */
export function matters(catalog: Catalog, fault: Fault): boolean {
  return (
    fault.mainCausePer100HardStarts >= judgementOf(catalog, 'stops-the-engine') ||
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

/** @param complained it stands behind what the owner complains of */
export function stakesOf(
  catalog: Catalog,
  facts: MachineFacts,
  { fault }: MachineFault,
  complained = false,
): Stakes {
  const repair = repairMinutes(fault, facts) + accessMinutes(catalog, facts, fault);
  const minutes = (id: JudgementId): number => judgementOf(catalog, id);
  const dangerWeighs = minutes('danger-minutes');
  const danger = fault.safety === 3 ? dangerWeighs : fault.safety === 2 ? dangerWeighs / 3 : 0;
  const causes = complained ? 1 : Math.min(3, fault.mainCausePer100HardStarts) / 3;
  return {
    missed: minutes('missed-minutes') + minutes('comes-back-minutes') * causes + danger,
    needless: repair + (fault.parts.length > 0 ? minutes('needless-parts-minutes') : 0),
  };
}

function repairMinutes(fault: Fault, facts: MachineFacts): number {
  const architecture = architectureOf(facts);
  return (architecture && fault.repairMinutesOn?.[architecture]) ?? fault.repairMinutes;
}

/** What comes off for a fault's repair, in its order. */
export function repairAccess(catalog: Catalog, facts: MachineFacts, fault: Fault): readonly Component[] {
  const architecture = architectureOf(facts);
  const places = fault.offFirst.filter(
    (p) => p.component && !(p.on && architecture && !p.on.includes(architecture)),
  );
  return withWhatStandsBefore(
    catalog,
    facts,
    places.map((p) => p.component!),
  );
}

const accessMinutes = (catalog: Catalog, facts: MachineFacts, fault: Fault): number =>
  repairAccess(catalog, facts, fault).reduce((sum, c) => sum + c.minutesOff, 0);

/** Nobody repairs on a suspicion: below this a cheap repair is service, offered as a choice. */
const likely = 0.6;

/** Whether the fault is likely and leaving it costs more on average than repairing it: it is acted on. */
export const isActedOn = (p: number, { missed, needless }: Stakes): boolean =>
  p >= likely && p * missed > (1 - p) * needless;
