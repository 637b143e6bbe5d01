import { type Kind, parse, type Quantity, readNumber } from '../quantity/index.js';
import { WorksheetError } from './error.js';

/** "1,234" or "1,234.5": figures set in groups, or several figures. */
const grouped = /^\d{1,3}(,\d{3})+(\.\d+)?$/;
const decimalComma = /^\d+,\d+$/;

/**
 * The items of a list: split at semicolons or new lines; else at commas.
 *
 * A comma without a space may also be a decimal comma or set off thousands: "0,76", "3,600". Where it may, the list
 * is refused (WorksheetError), as a reading read as two is not noticed later.
 */
export function splitList(text: string): readonly string[] {
  if (/[;\n]/.test(text)) return items(text, /[;\n]/);
  if (/,\s/.test(text)) return items(text, /,\s+/);
  const bare = text
    .trim()
    .replace(/[^\d.,]+$/, '')
    .trim();
  if (grouped.test(bare) || decimalComma.test(bare)) {
    throw new WorksheetError(
      `"${text.trim()}" may be one figure with a comma or several; put ; between readings`,
    );
  }
  return items(text, /,/);
}

function items(text: string, separator: RegExp): readonly string[] {
  const found = text.split(separator).map((item) => item.trim());
  // one separator at the end is a habit, an empty item in between is a lost reading
  if (found.at(-1) === '') found.pop();
  if (found.length === 0 || found.includes(''))
    throw new WorksheetError(`"${text.trim()}" has an empty place in it`);
  return found;
}

/** Plain numbers. Throws WorksheetError for an item with anything but a number in it. */
export function readNumberList(text: string): readonly number[] {
  return splitList(text).map((item) => readPlainNumber(item));
}

/** Quantities of one kind; the unit may stand once, after the last. Throws QuantityError and WorksheetError. */
export function readQuantityList<K extends Kind>(text: string, kind: K): readonly Quantity<K>[] {
  const written = splitList(text);
  const last = parse(written.at(-1) ?? '', kind);
  return written.map((item) => parse(item, kind, { unit: last.unit }));
}

/** A number without a unit: "0.20", "3/4", "-1.5e-3". Throws WorksheetError. */
export function readPlainNumber(text: string): number {
  const read = readNumber(text);
  if (!read || !Number.isFinite(read.number.value)) throw new WorksheetError(`"${text}" is not a number`);
  if (read.rest.trim() !== '')
    throw new WorksheetError(
      `"${text}" has "${read.rest.trim()}" after the number; a plain number is wanted`,
    );
  const { asDecimalComma, value } = read.number;
  if (asDecimalComma === undefined) return value;
  throw new WorksheetError(
    `the comma in "${text}" may mean ${value} or ${asDecimalComma}; write the one meant`,
  );
}

/** A whole number from 0 up. Throws WorksheetError. */
export function readCount(text: string): number {
  const value = readPlainNumber(text);
  if (Number.isSafeInteger(value) && value >= 0) return value;
  throw new WorksheetError(`"${text}" is not a count; a whole number from 0 up is wanted`);
}
