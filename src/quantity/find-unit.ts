import { QuantityError } from './error.js';
import type { Kind } from './quantity.js';
import type { Unit } from './unit.js';
import { units } from './units.js';

/** The unit of exactly this id; for what a person wrote use `readUnit`. Throws QuantityError 'unknown-unit'. */
export function findUnit(id: string): Unit {
  const found = Object.hasOwn(units, id) ? units[id] : undefined;
  if (!found) throw new QuantityError('unknown-unit', `"${id}" is not the id of a unit`, { text: id });
  return found;
}

/** Every unit of one kind, in the order of the table. */
export function unitsOf(kind: Kind): readonly Unit[] {
  return Object.values(units).filter((unit) => unit.kind === kind);
}

/** The unit a quantity's `si` is in: the one with factor 1 and no offset. */
export function siUnitOf(kind: Kind): Unit {
  const found = unitsOf(kind).find((unit) => unit.factor === 1 && unit.offset === 0);
  if (!found) throw new Error(`the unit table has no SI unit of ${kind}`);
  return found;
}
