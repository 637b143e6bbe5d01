import { listed } from '../phrase/index.js';
import { of, parse, QuantityError, to, units } from '../quantity/index.js';
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
 * read or cannot be meant, a choice that is none, two that say the same; and what `compute` refuses.
 */
export function run(worksheet: Worksheet, given: WrittenFields): readonly Answer[] {
  refuseUnknown(worksheet, given);
  refuseTwice(worksheet, given);
  const written = new Map(worksheet.fields.map((field) => [field.id, writtenIn(field, given)]));
  const values = Object.fromEntries(worksheet.fields.map((field) => [field.id, read(field, written)]));
  try {
    return worksheet.compute(values);
  } catch (error) {
    if (error instanceof WorksheetError) throw error;
    if (error instanceof Refusal) throw named(worksheet, written, error);
    throw error instanceof QuantityError ? refusedInside(worksheet, written, error) : error;
  }
}

/** What a person wrote there, without a standard that stands for it; an inherited name such as "constructor" is nothing. */
const ownWords = (given: WrittenFields, id: string): string | undefined =>
  (Object.hasOwn(given, id) ? given[id]?.trim() : undefined) || undefined;

/** Of fields that say the same thing, two written would leave one of them silently aside. */
function refuseTwice({ fields, oneOf }: Worksheet, given: WrittenFields): void {
  for (const { ids, wanted } of oneOf) {
    const labels = ids.map((id) => fields.find((field) => field.id === id)!.label);
    const written = ids.filter((id) => ownWords(given, id) !== undefined);
    if (written.length > 1)
      throw new WorksheetError(
        `${listed(labels, 'and')} say the same thing: give one of them and leave the other empty`,
        written[1],
      );
    if (wanted && written.length === 0)
      throw new WorksheetError(`${listed(labels, 'or')}: one of them is wanted`, ids[0]);
  }
}

function refuseUnknown({ id, fields }: Worksheet, given: WrittenFields): void {
  const unknown = Object.keys(given).find((name) => !fields.some((field) => field.id === name));
  if (unknown === undefined) return;
  const known = fields.map((field) => field.id).join(', ');
  throw new WorksheetError(`worksheet ${id} has no field "${unknown}"; its fields are ${known}`, unknown);
}

function writtenIn(field: Field, given: WrittenFields): string | undefined {
  const own = ownWords(given, field.id);
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

/** What a room refuses, named by the field that a person filled in, its bounds in the unit that they wrote. */
function named(
  { names, fields }: Worksheet,
  written: ReadonlyMap<string, string | undefined>,
  error: Refusal,
): WorksheetError {
  const id = names[error.field ?? ''] ?? error.field;
  const field = fields.find((each) => each.id === id);
  const words = field && boundWords(error, written.get(field.id));
  return causedBy(new WorksheetError(words ? `${field.label} ${words}` : error.message, id), error);
}

function boundWords({ bounds }: Refusal, text: string | undefined): string | undefined {
  if (!bounds || text === undefined) return undefined;
  const { least, most, unit } = bounds;
  const own = writtenUnit(text, unit);
  const said = (value: number | undefined) => {
    if (value === undefined) return undefined;
    return own ? `${Number(to(of(value, own.from), own.to).toPrecision(4))} ${own.to}` : String(value);
  };
  if (least !== undefined && most !== undefined)
    return `must lie between ${said(least)} and ${said(most)}; got ${text}`;
  return least === undefined
    ? `must be at most ${said(most)}; got ${text}`
    : `must be at least ${said(least)}; got ${text}`;
}

/** The unit of a bound, and the one in which the person wrote; none for plain numbers and for lists. */
function writtenUnit(text: string, unit: string): { from: string; to: string } | undefined {
  const from = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (!from || from.id === '1') return undefined;
  try {
    return { from: from.id, to: parse(text, from.kind).unit };
  } catch (error) {
    if (error instanceof QuantityError) return { from: from.id, to: from.id };
    throw error;
  }
}

/** A quantity refused while computing is named by the field in which its words were written, if there is one. */
function refusedInside(
  { fields }: Worksheet,
  written: ReadonlyMap<string, string | undefined>,
  error: QuantityError,
): WorksheetError {
  const field = fields.find(({ id }) => written.get(id) === error.text);
  return field ? inField(field, error) : causedBy(new WorksheetError(error.message), error);
}
