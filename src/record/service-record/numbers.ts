import type { Limit, Written } from '../../job/index.js';
import { quantityOf } from '../../job/index.js';
import {
  findUnit,
  type Origin,
  type Quantity,
  show,
  showBoth,
  type UnitSystem,
} from '../../quantity/index.js';

/**
 * A number as the shop reads it; what was written in the shop's own unit keeps its digits. Number and unit hold
 * together by a no-break space.
 */
export function say(value: Written, system: UnitSystem): string {
  return sayQuantity(quantityOf(value), system);
}

export function sayQuantity(quantity: Quantity, system: UnitSystem): string {
  // A mistaken unit of torque breaks the bolt: both stand there, always.
  return heldTogether(quantity.kind === 'torque' ? showBoth(quantity, system) : show(quantity, system));
}

/** The reading as it was written, when it is printed in another unit than it was read in. */
export function asWritten(value: Written, system: UnitSystem): string | undefined {
  const { system: own } = findUnit(value.unit);
  return own === 'both' || own === system ? undefined : `written ${value.written}`;
}

/** "± 0.0005 in" */
export function sayUncertainty(value: Written, system: UnitSystem): string {
  return `±\u00a0${say(value, system)}`;
}

function heldTogether(said: string): string {
  return said.replaceAll(/ (?!\()/g, '\u00a0');
}

/** "0.003 in to 0.005 in", "at least 60 psi", "at most 0.003 in" */
export function sayRange(low: Written | undefined, high: Written | undefined, system: UnitSystem): string {
  if (low && high) return `${say(low, system)} to ${say(high, system)}`;
  if (low) return `at least ${say(low, system)}`;
  return high ? `at most ${say(high, system)}` : '';
}

export function sayLimit(limit: Limit, system: UnitSystem): string {
  return sayRange(limit.min, limit.max, system);
}

/** "maker’s sheet, page 31" */
export function sayOrigin(origin: Origin | { from: Origin['from']; detail?: string | undefined }): string {
  const from = origin.from.replace("'", '’');
  return origin.detail ? `${from}, ${origin.detail}` : from;
}
