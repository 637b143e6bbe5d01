import { QuantityError } from './error.js';
import { findUnit } from './find-unit.js';
import type { Kind, Origin, Quantity } from './quantity.js';
import type { Unit } from './unit.js';

/**
 * A value in a named unit.
 *
 * Throws QuantityError: 'unknown-unit'; 'not-a-number' for NaN; 'out-of-range' for an infinite value and for a
 * temperature below absolute zero.
 *
 * Example: `of(180, 'in-lb').si` is 20.337 N·m.
 */
export function of<K extends Kind = Kind>(value: number, unit: string, origin?: Origin): Quantity<K> {
  const found = findUnit(unit);
  return { kind: found.kind as K, si: siOf(value, found), unit, ...(origin && { origin }) };
}

/** The SI value of a value in a unit, refused when no such thing can be. */
export function siOf(value: number, unit: Unit, text = `${value} ${unit.id}`): number {
  if (Number.isNaN(value)) throw new QuantityError('not-a-number', `"${text}" is not a number`, { text });
  const si = value * unit.factor + unit.offset;
  if (!Number.isFinite(si))
    throw new QuantityError('out-of-range', `"${text}" is too large to mean anything`, { text });
  if (unit.kind === 'temperature' && si < 0) {
    throw new QuantityError('out-of-range', `${text} is below absolute zero (-273.15 °C, -459.67 °F)`, {
      text,
    });
  }
  return si;
}

/**
 * The quantity's value in a named unit of its own kind. Throws QuantityError 'kind-mismatch' for another kind.
 *
 * Example: `to(of(180, 'in-lb'), 'ft-lb')` is 15.
 */
export function to(quantity: Quantity, unit: string): number {
  const { factor, offset } = unitOfKind(quantity, unit);
  return (quantity.si - offset) / factor;
}

/** The same quantity, spoken of in another unit; `written` stays what the person wrote. */
export function convert<K extends Kind>(quantity: Quantity<K>, unit: string): Quantity<K> {
  return { ...quantity, unit: unitOfKind(quantity, unit).id };
}

export function withOrigin<K extends Kind>(quantity: Quantity<K>, origin: Origin): Quantity<K> {
  return { ...quantity, origin };
}

/**
 * The quantity with a *standard* uncertainty (k = 1) stated in `unit`; its own unit when left out.
 * Throws QuantityError 'out-of-range' unless it is zero or more.
 */
export function withUncertainty<K extends Kind>(
  quantity: Quantity<K>,
  u: number,
  unit: string = quantity.unit,
): Quantity<K> {
  const { factor } = unitOfKind(quantity, unit);
  if (!(u >= 0 && Number.isFinite(u))) {
    const text = `${u} ${unit}`;
    throw new QuantityError('out-of-range', `an uncertainty of ${text} cannot be: it is 0 or more`, { text });
  }
  return { ...quantity, u: u * factor };
}

function unitOfKind(quantity: Quantity, unit: string): Unit {
  const found = findUnit(unit);
  if (found.kind !== quantity.kind) throw mismatch(quantity.kind, found.kind, unit);
  return found;
}

function mismatch(wanted: Kind, given: Kind, text: string): QuantityError {
  return new QuantityError('kind-mismatch', `${wanted} wanted, ${given} given (${text})`, {
    text,
    wanted,
    given,
  });
}
