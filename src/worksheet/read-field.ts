import {
  type Kind,
  kinds,
  parse,
  parseThread,
  type Quantity,
  QuantityError,
  type ThreadName,
} from '../quantity/index.js';
import { readCount, readNumberList, readPlainNumber, readQuantityList } from './read-list.js';
import { readPoints } from './read-points.js';
import { type Field, type FieldKind, type Point, WorksheetError } from './worksheet.js';

/** A field's text, parsed. */
export type FieldValue =
  | { readonly type: 'quantity'; readonly quantity: Quantity }
  | { readonly type: 'thread'; readonly thread: ThreadName }
  | { readonly type: 'choice'; readonly choice: string }
  | { readonly type: 'number'; readonly number: number }
  | { readonly type: 'text'; readonly text: string }
  | { readonly type: 'points'; readonly points: readonly Point[] }
  | { readonly type: 'list'; readonly list: readonly number[] };

type Reader = (text: string, field: Field) => FieldValue;

const quantityReader =
  (kind: Kind): Reader =>
  (text) => ({ type: 'quantity', quantity: parse(text, kind) });

const readers: Readonly<Record<FieldKind, Reader>> = {
  ...(Object.fromEntries(kinds.map((kind) => [kind, quantityReader(kind)])) as Record<Kind, Reader>),
  thread: (text) => ({ type: 'thread', thread: parseThread(text) }),
  choice: (text, field) => ({ type: 'choice', choice: readChoice(text, field) }),
  number: (text) => ({ type: 'number', number: readPlainNumber(text) }),
  count: (text) => ({ type: 'number', number: readCount(text) }),
  text: (text) => ({ type: 'text', text }),
  points: (text) => ({ type: 'points', points: readPoints(text) }),
  list: (text, field) => ({ type: 'list', list: readList(text, field) }),
};

/** Some thousand readings; a page pasted by mistake is longer. */
const longestText = 20_000;

/** A field's text parsed by the field's kind. Throws WorksheetError that names the field and says how to write it. */
export function readField(field: Field, text: string): FieldValue {
  try {
    if (text.length > longestText)
      throw new WorksheetError(`${text.length} characters; at most ${longestText} are read`);
    return readers[field.kind](text, field);
  } catch (error) {
    if (error instanceof QuantityError || error instanceof WorksheetError) throw inField(field, error);
    throw error;
  }
}

/** The error with the field's label before its words and the field's id in `field`; the first error is its cause. */
export function inField(field: Field, cause: Error): WorksheetError {
  const error = new WorksheetError(`${field.label}: ${cause.message}`, field.id);
  error.cause = cause;
  return error;
}

function readChoice(text: string, { choices = [] }: Field): string {
  const said = text.toLowerCase();
  const found = choices.find(({ id, label }) => id.toLowerCase() === said || label.toLowerCase() === said);
  if (found) return found.id;
  throw new WorksheetError(`"${text}" is not one of ${choices.map(({ id }) => id).join(', ')}`);
}

function readList(text: string, { of = 'number' }: Field): readonly number[] {
  return of === 'number' ? readNumberList(text) : readQuantityList(text, of).map(({ si }) => si);
}
