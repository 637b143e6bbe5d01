import { WorksheetError } from '../worksheet/index.js';

/** A finite number above zero, or a refusal that names the field, the value and the bound. */
export function positive(value: number, field: string, unit: string): number {
  if (!(Number.isFinite(value) && value > 0)) {
    throw new WorksheetError(`${field} must be more than 0 ${unit}; ${value} ${unit} was given`, field);
  }
  return value;
}

/** A finite number from `low` to `high`, both allowed. */
export function within(value: number, low: number, high: number, field: string, unit: string): number {
  if (!(value >= low && value <= high)) {
    throw new WorksheetError(
      `${field} must lie from ${low} to ${high}${unit && ` ${unit}`}; ${value}${unit && ` ${unit}`} was given`,
      field,
    );
  }
  return value;
}

/** A number as it reads in a sentence: three significant digits, no trailing noughts. */
export function figure(value: number, digits = 3): string {
  return String(Number(value.toPrecision(digits)));
}
