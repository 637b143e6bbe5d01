import { QuantityError } from '../quantity/index.js';
import { givenOf, type ReadField } from './given.js';
import { inField, readField } from './read-field.js';
import { type Answer, type Field, type Worksheet, WorksheetError } from './worksheet.js';

/** What a person wrote, by field id; an empty text is nothing written. */
export type WrittenFields = Readonly<Record<string, string>>;

/**
 * The answers of a worksheet to what a person wrote.
 *
 * Every field is parsed by its kind; a field's `standard` stands where nothing is written. Pure, as `compute` is.
 * Throws WorksheetError naming the field: one the worksheet does not have, one that is missing, one that cannot be
 * read, a choice that is none; and what `compute` refuses.
 */
export function run(worksheet: Worksheet, given: WrittenFields): readonly Answer[] {
  refuseUnknown(worksheet, given);
  const fields = readFields(worksheet, given);
  try {
    return worksheet.compute(givenOf(fields));
  } catch (error) {
    throw error instanceof QuantityError ? refusedInside(worksheet, fields, error) : error;
  }
}

function refuseUnknown({ id, fields }: Worksheet, given: WrittenFields): void {
  const unknown = Object.keys(given).find((name) => !fields.some((field) => field.id === name));
  if (unknown === undefined) return;
  const known = fields.map((field) => field.id).join(', ');
  throw new WorksheetError(`worksheet ${id} has no field "${unknown}"; its fields are ${known}`, unknown);
}

function readFields({ fields }: Worksheet, given: WrittenFields): ReadonlyMap<string, ReadField> {
  const read = new Map<string, ReadField>();
  for (const field of fields) {
    const written = writtenIn(field, given);
    if (written !== undefined) read.set(field.id, { value: readField(field, written), written });
  }
  return read;
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

/** A quantity refused while computing is named by the field in which its words were written, if there is one. */
function refusedInside(
  { fields }: Worksheet,
  read: ReadonlyMap<string, ReadField>,
  error: QuantityError,
): WorksheetError {
  const field = fields.find(({ id }) => read.get(id)?.written === error.text);
  if (field) return inField(field, error);
  const refusal = new WorksheetError(error.message);
  refusal.cause = error;
  return refusal;
}
