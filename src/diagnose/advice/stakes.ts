import { type Catalog, type Fault, type JudgementId, judgementOf } from '../../catalog/index.js';
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

export function stakesOf(catalog: Catalog, facts: MachineFacts, { fault }: MachineFault): Stakes {
  const repair = repairMinutes(fault, facts) + accessMinutes(catalog, facts, fault);
  const minutes = (id: JudgementId): number => judgementOf(catalog, id);
  const dangerWeighs = minutes('danger-minutes');
  const danger = fault.safety === 3 ? dangerWeighs : fault.safety === 2 ? dangerWeighs / 3 : 0;
  const causes = Math.min(3, fault.mainCausePer100HardStarts) / 3;
  return {
    missed: minutes('missed-minutes') + minutes('comes-back-minutes') * causes + danger,
    needless: repair + (fault.parts.length > 0 ? minutes('needless-parts-minutes') : 0),
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
