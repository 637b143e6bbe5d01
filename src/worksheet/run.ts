import { QuantityError } from '../quantity/index.js';
import type { Answer } from './answer.js';
import { Refusal, WorksheetError } from './error.js';
import type { Field } from './field.js';
import type { Worksheet } from './worksheet.js';

/** What a person wrote, by field id; an empty text is nothing written. */
export type WrittenFields = Readonly<Record<string, string>>;

/**
 * The answers of a worksheet to what a person wrote.
 *
 * Every field is read as it asks; a field's `standard` stands where nothing is written. Pure, as `compute` is.
 * Throws WorksheetError naming the field: one the worksheet does not have, one that is missing, one that cannot be
 * read, a choice that is none; and what `compute` refuses.
 */
export function run(worksheet: Worksheet, given: WrittenFields): readonly Answer[] {
  refuseUnknown(worksheet, given);
  const written = new Map(worksheet.fields.map((field) => [field.id, writtenIn(field, given)]));
  const values = Object.fromEntries(worksheet.fields.map((field) => [field.id, read(field, written)]));
  try {
    return worksheet.compute(values);
  } catch (error) {
    if (error instanceof WorksheetError) throw error;
    if (error instanceof Refusal) throw named(worksheet, error);
    throw error instanceof QuantityError ? refusedInside(worksheet, written, error) : error;
  }
}

function refuseUnknown({ id, fields }: Worksheet, given: WrittenFields): void {
  const unknown = Object.keys(given).find((name) => !fields.some((field) => field.id === name));
  if (unknown === undefined) return;
  const known = fields.map((field) => field.id).join(', ');
  throw new WorksheetError(`worksheet ${id} has no field "${unknown}"; its fields are ${known}`, unknown);
}

function writtenIn(field: Field, given: WrittenFields): string | undefined {
  // an inherited name such as "constructor" is not something a person wrote
  const own = Object.hasOwn(given, field.id) ? given[field.id]?.trim() : undefined;
  if (own) return own;
  if (field.standard !== undefined) return field.standard;
  if (field.required === false) return undefined;
  const example = field.hint ? `; write it like ${field.hint}` : '';
  throw new WorksheetError(`${field.label} is missing${example}`, field.id);
}

/** Some thousand readings; a page pasted by mistake is longer. */
const longestText = 20_000;

function read(field: Worksheet['fields'][number], written: ReadonlyMap<string, string | undefined>): unknown {
  const text = written.get(field.id);
  if (text === undefined) return undefined;
  try {
    if (text.length > longestText)
      throw new WorksheetError(`${text.length} characters; at most ${longestText} are read`);
    return field.read(text);
  } catch (error) {
    if (error instanceof QuantityError || error instanceof WorksheetError) throw inField(field, error);
    throw error;
  }
}

const causedBy = (refusal: WorksheetError, cause: Error): WorksheetError => Object.assign(refusal, { cause });

/** The error with the field's label before its words and the field's id in `field`; the first error is its cause. */
const inField = (field: Field, cause: Error) =>
  causedBy(new WorksheetError(`${field.label}: ${cause.message}`, field.id), cause);

/** What a room refuses, named by the field that a person filled in. */
const named = ({ names }: Worksheet, error: Refusal) =>
  causedBy(new WorksheetError(error.message, names[error.field ?? ''] ?? error.field), error);

/** A quantity refused while computing is named by the field in which its words were written, if there is one. */
function refusedInside(
  { fields }: Worksheet,
  written: ReadonlyMap<string, string | undefined>,
  error: QuantityError,
): WorksheetError {
  const field = fields.find(({ id }) => written.get(id) === error.text);
  return field ? inField(field, error) : causedBy(new WorksheetError(error.message), error);
}
