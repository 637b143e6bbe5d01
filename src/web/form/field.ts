import { type Written, written } from '../../job/index.js';
import { type Kind, parse, QuantityError, to } from '../../quantity/index.js';
import { amountIn, countIn } from './amount.js';

/** What stands in a form's fields, by name, as it was typed or tapped. All of it can be kept as JSON. */
export type Given = Readonly<Record<string, unknown>>;

/** A part of a description that may hang on what else stands in the form. */
export type Now<T> = T | ((given: Given) => T);

export const now = <T>(part: Now<T>, given: Given): T =>
  typeof part === 'function' ? (part as (given: Given) => T)(given) : part;

export interface Choice<T extends string = string> {
  readonly id: T;
  readonly label: string;
}

interface Asked<As extends string> {
  readonly as: As;
  readonly label: string;
  readonly help?: Now<string | undefined>;
  /** an example of what may be written */
  readonly hint?: Now<string | undefined>;
  /** what stands there at first where the log says nothing, as it would be typed; it may hang on what was typed elsewhere */
  readonly begin?: Now<unknown>;
  /** refused in these words when it is left empty */
  readonly need?: string;
  /** what is wrong with it beyond its form, said while it is typed and refused when it is kept */
  readonly doubt?: (given: Given) => string | undefined;
  /** it is asked only while this holds; unasked it is not in the line */
  readonly when?: (given: Given) => boolean;
  /** what else changes when it is changed by hand */
  readonly sets?: (value: never, given: Given) => Given;
}

/** Words. `lines` is a list, one item a line. */
export type WordsField = Asked<'text' | 'long' | 'date' | 'search'>;
export type LinesField = Asked<'lines'>;
/** A number with its unit, kept word for word. A unit that is known is taken when only a number is typed. */
export type QuantityField = Asked<'quantity'> & {
  readonly kind: Now<Kind>;
  readonly unit?: Now<string | undefined>;
};
/** A plain number; `whole` counts from 1; with a currency it is a sum in that currency; `counts` may be typed in other units. */
export type NumberField = Asked<'number'> & {
  readonly whole?: boolean;
  readonly currency?: string;
  readonly counts?: Counted;
};
/** What a bare number is a number of: "2 yrs" is 24 where months are counted. */
export interface Counted {
  readonly kind: Kind;
  readonly unit: string;
}
export type MoneyField = Asked<'money'> & { readonly currency: string };
/** One of several: buttons, or a list to open where they are many. */
export type ChoiceField<T extends string> = Asked<'choice' | 'select'> & {
  readonly choices: Now<readonly Choice<T>[]>;
  /** the words of the empty choice of a list */
  readonly none?: string;
};
export type ManyField = Asked<'many' | 'ticks'> & { readonly choices: Now<readonly Choice[]> };
export type TickField = Asked<'tick'>;
/** True or false, or not said: two buttons. */
export type YesNoField = Asked<'yes-no'>;
/** Rows that are filled in alike and added at the end; a row left as it began is not in the line. */
export type RowsField<R> = Asked<'rows'> & {
  readonly row: { readonly [P in keyof R & string]?: FieldFor<R[P]> };
  /** the words of the button that adds one */
  readonly more: string;
};
/** Drawn and changed by the form's own code (holes on a picture, a grid of readings); kept as it stands. */
export type DrawnField = Asked<'drawn'>;

export type Field =
  | WordsField
  | LinesField
  | QuantityField
  | NumberField
  | MoneyField
  | ChoiceField<string>
  | ManyField
  | TickField
  | YesNoField
  | RowsField<Readonly<Record<string, unknown>>>
  | DrawnField;

interface Money {
  readonly amount: number;
  readonly currency: string;
}

/** The kinds of field that can say a value of this type. */
export type FieldFor<T> = DrawnField | FieldOf<NonNullable<T>>;
type FieldOf<T> = [T] extends [Written]
  ? QuantityField
  : [T] extends [Money]
    ? MoneyField
    : [T] extends [boolean]
      ? TickField | YesNoField
      : [T] extends [number]
        ? NumberField
        : [T] extends [string]
          ? WordsField | ChoiceField<T>
          : [T] extends [readonly string[]]
            ? ManyField | LinesField
            : [T] extends [readonly (infer R)[]]
              ? RowsField<R>
              : never;

type Inner<P extends string, T> = T extends Written | Money | readonly unknown[]
  ? never
  : T extends object
    ? `${P}.${keyof T & string}`
    : never;
/** The fields of a body, those inside one of its parts with a dot: `consent.by`. */
type PathOf<B> = B extends unknown
  ? { [P in keyof B & string]-?: P | Inner<P, NonNullable<B[P]>> }[keyof B & string]
  : never;
type At<B, P extends string> = B extends unknown
  ? P extends keyof B
    ? B[P]
    : P extends `${infer A}.${infer Rest}`
      ? A extends keyof B
        ? Rest extends keyof NonNullable<B[A]>
          ? NonNullable<B[A]>[Rest]
          : never
        : never
      : never
  : never;

/**
 * The fields of a form by the place in the entry's body that each one says: a name or a kind that the body does not have is
 * a compile error. A name with `$` before it is the form's own question and goes into no line by itself.
 */
export type FieldsOf<B> = { readonly [P in PathOf<B>]?: FieldFor<At<B, P>> } & {
  readonly [own: `$${string}`]: Field;
};
export type Fields = Readonly<Record<string, Field>>;

/** A field that says nothing the log can take: which one, and why, in words. */
export class FieldError extends Error {
  constructor(
    readonly field: string,
    message: string,
  ) {
    super(message);
    this.name = 'FieldError';
  }
}

/** How a kind of field stands when it is empty, how it shows a value of the log, and what is read out of it. */
interface Way<F extends Field> {
  readonly empty: unknown;
  readonly show: (value: never, field: F) => unknown;
  readonly read: (given: never, field: F, all: Given) => unknown;
}

const asItIs = (value: unknown) => value;
const words = { empty: '', show: asItIs, read: (text: string) => text.trim() };
const tapped = { empty: '', show: asItIs, read: asItIs };
const several = { empty: [], show: asItIs, read: asItIs };

const ways = {
  text: words,
  long: words,
  date: words,
  search: words,
  choice: tapped,
  select: tapped,
  many: several,
  ticks: several,
  lines: {
    empty: '',
    show: (items: readonly string[]) => items.join('\n'),
    read: (text: string) => linesIn(text),
  },
  quantity: {
    empty: '',
    show: (value: Written) => value.written,
    read: (text: string, { kind, unit }, all) => quantityIn(text, now(kind, all), unit && now(unit, all)),
  } satisfies Way<QuantityField>,
  number: {
    empty: '',
    show: String,
    read: (text: string, { label, whole, currency, counts }) => {
      if (counts && hasUnit(text)) return countedIn(text, counts);
      return whole ? countIn(label, text) : amountIn(label, text, currency);
    },
  } satisfies Way<NumberField>,
  money: {
    empty: '',
    show: ({ amount }: Money) => String(amount),
    read: (text: string, { label, currency }) => ({ amount: amountIn(label, text, currency), currency }),
  } satisfies Way<MoneyField>,
  tick: { empty: false, show: asItIs, read: asItIs },
  'yes-no': {
    empty: '',
    show: (value: boolean) => (value ? 'yes' : 'no'),
    read: (text: string) => text === 'yes',
  },
  rows: {
    empty: [],
    show: (rows: readonly Given[], { row }) => rows.map((each) => beginOf(row as Fields, each)),
    read: (rows: readonly Given[], { row }) => rowsIn(rows, row as Fields),
  } satisfies Way<RowsField<Given>>,
  drawn: { empty: undefined, show: asItIs, read: asItIs },
} satisfies Record<Field['as'], unknown>;

const wayOf = (field: Field) => ways[field.as] as Way<Field>;

/** What stands in a field at first: what the log holds, else what the description says, else nothing. */
export function beginOf(fields: Fields, known: Given = {}, typed: Given = {}): Given {
  return Object.fromEntries(
    Object.entries(fields).map(([name, field]) => {
      const value = at(known, name);
      const { empty, show } = wayOf(field);
      return [name, value === undefined ? (now(field.begin, typed) ?? empty) : show(value as never, field)];
    }),
  );
}

/** The value at a dotted place of a body. */
function at(body: Given, path: string): unknown {
  return path.split('.').reduce<unknown>((inner, step) => (inner as Given | undefined)?.[step], body);
}

export function isEmpty(value: unknown): boolean {
  if (value === undefined || value === false) return true;
  return typeof value === 'string' ? value.trim() === '' : Array.isArray(value) && value.length === 0;
}

export const isAsked = (field: Field, given: Given): boolean => field.when?.(given) ?? true;

/** What the field says, nothing while it is empty. @throws FieldError in the words that stand under it */
export function readField(name: string, field: Field, given: Given): unknown {
  const value = given[name];
  if (isEmpty(value)) {
    if (field.need) throw new FieldError(name, field.need);
    return undefined;
  }
  const doubt = field.doubt?.(given);
  if (doubt) throw new FieldError(name, doubt);
  try {
    return wayOf(field).read(value as never, field, given);
  } catch (error) {
    if (error instanceof FieldError) throw new FieldError(`${name}.${error.field}`, error.message);
    throw error instanceof Error ? new FieldError(name, error.message) : error;
  }
}

/** The body that the fields say, without those that are empty, not asked, or the form's own. */
export function readFields(fields: Fields, given: Given): Given {
  const body: Record<string, unknown> = {};
  for (const [name, field] of Object.entries(fields)) {
    if (!isAsked(field, given)) continue;
    const value = readField(name, field, given);
    if (value !== undefined && !name.startsWith('$')) put(body, name.split('.'), value);
  }
  return body;
}

function put(body: Record<string, unknown>, [step, ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) body[step!] = value;
  else {
    body[step!] ??= {};
    put(body[step!] as Record<string, unknown>, rest, value);
  }
}

export const linesIn = (text: string): string[] =>
  text
    .split('\n')
    .map((item) => item.trim())
    .filter(Boolean);

function rowsIn(rows: readonly Given[], row: Fields): Given[] {
  return rows.flatMap((each, i) => {
    if (Object.entries(row).every(([name, { begin }]) => isEmpty(each[name]) || each[name] === begin))
      return [];
    try {
      return [readFields(row, each)];
    } catch (error) {
      throw error instanceof FieldError ? new FieldError(`${i}.${error.field}`, error.message) : error;
    }
  });
}

const hasUnit = (text: string): boolean => /[\p{L}°%"'′″:]/u.test(text);

/** To a tenth: nobody counts months closer. */
const countedIn = (text: string, { kind, unit }: Counted): number =>
  Math.round(to(parse(text, kind), unit) * 10) / 10;

/**
 * A number with its unit as it is written at the bench. Where the unit is known and only a number is typed, the unit is
 * written behind it: the words in the log say their unit themselves.
 */
export function quantityIn(text: string, kind: Kind, unit?: string): Written {
  return written(unit && !hasUnit(text) ? `${text.trim()} ${unit}` : text, kind);
}

/** What is wrong with a number while it is still being typed; nothing while it can be read or is empty. */
export function wrongWhileTyped(name: string, field: Field, given: Given): string | undefined {
  if (isEmpty(given[name]) || !(field.doubt || ['quantity', 'number', 'money'].includes(field.as)))
    return undefined;
  try {
    readField(name, field, given);
    return undefined;
  } catch (error) {
    if (error instanceof FieldError || error instanceof QuantityError) return error.message;
    throw error;
  }
}
