import { to } from './convert.js';
import { QuantityError } from './error.js';
import { findUnit } from './find-unit.js';
import { readNumber, type WrittenNumber } from './number.js';
import type { Kind, Quantity } from './quantity.js';
import { lookUpUnit } from './spelling.js';
import type { Unit } from './unit.js';

/** Decimals that a bench reading of this unit has, whatever its size; other units get three significant digits. */
const benchDecimals: Readonly<Record<string, (value: number) => number>> = {
  'in-lb': (value) => (Math.abs(value) < 20 ? 1 : 0),
  'ft-lb': () => 1,
  thou: () => 1,
  cc: () => 1,
  'cu in': () => 2,
};

/** Decimals shown of a length that nobody wrote: a micrometer's last digit. */
const micrometerDecimals: Readonly<Record<string, number>> = { in: 4, mm: 3 };
/** Decimals a converted length keeps at least, and with a written fraction. */
const coarsestDecimals: Readonly<Record<string, number>> = { in: 3, mm: 1 };

/**
 * How many decimals a quantity is shown with in a unit.
 *
 * In the unit it was written in: as many as were written. A length: the decimal place just fine enough for the
 * last digit written (0.001 in gives 0.01 mm, 0.0001 in gives 0.001 mm, 0.01 mm gives 0.0001 in); not written, a
 * micrometer's last digit. Torque: in-lb whole from 20 up, ft-lb to a tenth. All others three significant digits,
 * whole figures never rounded away. Never fewer than two significant digits, so that nothing shows as zero.
 */
export function decimalsFor(quantity: Quantity, unit: string): number {
  const value = to(quantity, unit);
  const written = writtenNumber(quantity);
  if (written?.unit === unit && written.number.decimals !== undefined)
    return Math.min(written.number.decimals, mostDecimals(value));
  const wanted = Math.max(wantedDecimals(quantity, unit, value, written), decimalsOfSignificant(value, 2));
  return Math.min(wanted, mostDecimals(value));
}

/** A number holds some fifteen digits; whoever writes a hundred and fifty decimals is shown no more. */
const mostDecimals = (value: number) => (value === 0 ? 15 : decimalsOfSignificant(value, 15));

function wantedDecimals(quantity: Quantity, unit: string, value: number, written?: Written): number {
  if (quantity.kind === 'length' && unit in micrometerDecimals) {
    const decimals = lengthDecimals(unit, written);
    return written?.number.form === 'fraction' ? withoutNoughts(value, decimals, unit) : decimals;
  }
  if (quantity.kind === 'temperature') return written?.number.decimals === 0 ? 0 : 1;
  return benchDecimals[unit]?.(value) ?? decimalsOfSignificant(value, 3);
}

function withoutNoughts(value: number, decimals: number, unit: string): number {
  const closing = /0*$/.exec(value.toFixed(decimals))![0].length;
  return Math.max(coarsestDecimals[unit] ?? 0, decimals - closing);
}

function lengthDecimals(unit: string, written?: Written): number {
  if (!written) return micrometerDecimals[unit] ?? 0;
  // a fraction names a size exactly: 3/8 in is 9.525 mm, and 1/2 in 12.7
  const decimals = written.number.decimals ?? 4;
  const lastDigit = (10 ** -decimals * findUnit(written.unit).factor) / findUnit(unit).factor;
  return Math.max(coarsestDecimals[unit] ?? 0, Math.ceil(-Math.log10(lastDigit) - 1e-9));
}

/** Decimals that show so many significant digits; 0 for a value of 0 or with that many digits before the point. */
export function decimalsOfSignificant(value: number, digits: number): number {
  if (value === 0 || !Number.isFinite(value)) return 0;
  return Math.min(100, Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value)))));
}

export interface Written {
  readonly number: WrittenNumber;
  /** id of the unit it was written in */
  readonly unit: string;
}

/**
 * The number as it was written and its unit, if that still is the quantity's value: a quantity that was computed on
 * from a written one must not be shown with the old figures.
 */
export function writtenNumber({ written, kind, unit, si }: Quantity): Written | undefined {
  const read = written === undefined ? undefined : readNumber(written);
  if (!read) return undefined;
  const unitText = read.rest.replace(/\s*(±|\+\s*\/?\s*[-−–]).*$/, '');
  // a bare number, and the number before "± 2 °C", are in the quantity's unit
  const own = unitNamed(unitText, kind)?.id ?? unit;
  const { factor, offset } = findUnit(own);
  const same = Math.abs(read.number.value * factor + offset - si) <= 1e-9 * Math.abs(si);
  return same ? { number: read.number, unit: own } : undefined;
}

/** As `lookUpUnit`; a text of doubtful meaning is none, as showing a quantity must not fail over its old words. */
function unitNamed(text: string, kind: Kind): Unit | undefined {
  try {
    return lookUpUnit(text, kind);
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}
