import {
  findUnit,
  type Kind,
  parse,
  parseThread,
  type Quantity,
  type ThreadName,
  to,
} from '../quantity/index.js';
import { WorksheetError } from './error.js';
import { readCount, readNumberList, readPlainNumber, readQuantityList } from './read-list.js';
import { type Point, readPoints } from './read-points.js';
import { numberWithin, quantityWithin, type Span, spanOf } from './span.js';

/** `Kind` fields are written as at the bench ("140 in-lb"); the others are said in a word. */
export type FieldKind = Kind | 'thread' | 'choice' | 'number' | 'count' | 'text' | 'points' | 'list';

/** A field as a form, a help text and the wire show it: plain data. */
export interface Field {
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly kind: FieldKind;
  /** for `choice` */
  readonly choices?: readonly { readonly id: string; readonly label: string }[];
  /** for `list`: what each comma-separated item is */
  readonly of?: Kind | 'number';
  /** default true; an optional field is left out by leaving it empty */
  readonly required?: boolean;
  /** stands when nothing is written; `help` must say where it comes from */
  readonly standard?: string;
  /** an example of what to write, shown in the empty field */
  readonly hint?: string;
  /** least and most that can be meant, of a number or a quantity; of each item of a list */
  readonly within?: Span;
}

/** A field that has no id yet, with how its words are read: `T` is what a worksheet computes with. */
export interface Ask<T> extends Omit<Field, 'id'> {
  /** Throws QuantityError and WorksheetError for words that are none of it. */
  readonly read: (text: string) => T;
}

/**
 * A hint alone, or more: a figure that stands when nothing is written, a field that may be left out, what can be meant
 * where that is less than what is usual of its kind.
 */
type More =
  | string
  | {
      readonly hint?: string;
      readonly standard?: string;
      readonly optional?: true;
      readonly within?: Span;
    };
/** A field that may be left out gives `undefined`, unless a figure stands for it. */
type Read<T, M extends More> = M extends { readonly standard: string }
  ? T
  : M extends { readonly optional: true }
    ? T | undefined
    : T;

function asking<T, M extends More>(
  kind: FieldKind,
  read: (text: string) => T,
  label: string,
  help: string,
  more?: M,
): Ask<Read<T, M>> {
  const { optional: mayBeLeftOut, ...told }: Exclude<More, string> =
    typeof more === 'string' ? { hint: more } : (more ?? {});
  const field = { label, help, kind, read, ...told };
  return (mayBeLeftOut ? optional(field) : field) as Ask<Read<T, M>>;
}

const ownSpan = (more: More | undefined) => (typeof more === 'object' ? more.within : undefined);

/** A quantity read, held to what can be meant and handed on as `take` wants it. */
function askingQuantity<K extends Kind, T, M extends More>(
  kind: K,
  take: (read: Quantity<K>) => T,
  label: string,
  help: string,
  more?: M,
) {
  const within = spanOf(kind, ownSpan(more));
  const check = quantityWithin(kind, within);
  return { ...asking(kind, (text) => take(check(parse(text, kind))), label, help, more), within };
}

/** A plain number read and held to what can be meant. */
function askingNumber<M extends More>(
  kind: 'number' | 'count',
  readNumber: (text: string) => number,
  label: string,
  help: string,
  more?: M,
) {
  const within = spanOf(kind, ownSpan(more));
  const check = numberWithin(within);
  return { ...asking(kind, (text) => check(readNumber(text)), label, help, more), within };
}

/**
 * The fields of a worksheet by what is asked. Each takes label, help and, as a rule, a hint.
 *
 *     ask.in('mm', 'Bore', 'Diameter of the cylinder.', { hint: '2.5625 in', within: ['15 mm', '150 mm'] })
 *     ask.quantity('length', 'Gap', 'By feeler.', { hint: '0.014 in', optional: true })   // Quantity or undefined
 */
export const ask = {
  /** A quantity of the unit's kind, written in any unit of that kind; computed with as a number in `unit`. */
  in: <M extends More = string>(unit: string, label: string, help: string, more?: M) =>
    askingQuantity(findUnit(unit).kind, (read) => to(read, unit), label, help, more),
  /** A quantity with its unit as written. */
  quantity: <K extends Kind, M extends More = string>(kind: K, label: string, help: string, more?: M) =>
    askingQuantity(kind, (read) => read, label, help, more),
  thread: <M extends More = string>(label: string, help: string, more?: M) =>
    asking('thread', (text): ThreadName => parseThread(text), label, help, more),
  /** A plain number without a unit. */
  number: <M extends More = string>(label: string, help: string, more?: M) =>
    askingNumber('number', readPlainNumber, label, help, more),
  /** A whole number from 0 up. */
  count: <M extends More = string>(label: string, help: string, more?: M) =>
    askingNumber('count', readCount, label, help, more),
  text: <M extends More = string>(label: string, help: string, more?: M) =>
    asking('text', (text) => text, label, help, more),
  /** Places in a plane. */
  points: <M extends More = string>(label: string, help: string, more?: M) =>
    asking('points', (text): readonly Point[] => readPoints(text), label, help, more),
  /** Quantities of one kind, the unit once at the end if it is the same. */
  list: <K extends Kind, M extends More = string>(kind: K, label: string, help: string, more?: M) => {
    const within = spanOf(kind, ownSpan(more));
    const check = quantityWithin(kind, within);
    const read = (text: string): readonly Quantity<K>[] => readQuantityList(text, kind).map(check);
    return { ...asking('list', read, label, help, more), of: kind, within };
  },
  /** Plain numbers. */
  numbers: <M extends More = string>(label: string, help: string, more?: M) => {
    const within = spanOf('number', ownSpan(more));
    const read = (text: string): readonly number[] => readNumberList(text).map(numberWithin(within));
    return { ...asking('list', read, label, help, more), of: 'number' as const, within };
  },
  /** One of several, by id or by its words; a list where the ids are the words. */
  choice: <C extends string>(
    label: string,
    help: string,
    choices: Readonly<Record<C, string>> | readonly C[],
    standard?: NoInfer<C>,
  ): Ask<C> => {
    const offered = offer(choices);
    const read = (text: string) => readChoice(text, offered);
    return {
      label,
      help,
      kind: 'choice',
      read,
      choices: offered,
      ...(standard !== undefined && { standard }),
    };
  },
};

/** The same field, which may be left out. */
export const optional = <T>(field: Ask<T>): Ask<T | undefined> => ({ ...field, required: false });

interface Choice<C extends string> {
  readonly id: C;
  readonly label: string;
}

function offer<C extends string>(choices: Readonly<Record<C, string>> | readonly C[]): readonly Choice<C>[] {
  const named: (readonly [C, string])[] = Array.isArray(choices)
    ? choices.map((id) => [id, id])
    : (Object.entries(choices) as [C, string][]);
  return named.map(([id, label]) => ({ id, label }));
}

function readChoice<C extends string>(text: string, choices: readonly Choice<C>[]): C {
  const said = text.toLowerCase();
  const found = choices.find(({ id, label }) => id.toLowerCase() === said || label.toLowerCase() === said);
  if (found) return found.id;
  throw new WorksheetError(`"${text}" is not one of ${choices.map(({ id }) => id).join(', ')}`);
}
