import type { Kind, Origin, Quantity, ThreadName } from '../quantity/index.js';
import type { Picture } from './picture.js';

/**
 * A calculation defined once and run anywhere: command, web form, HTTP endpoint, help text and tests come from
 * this one definition.
 */
export interface Worksheet {
  /** word-with-hyphens, unique over all rooms */
  readonly id: string;
  /** what a person wants to know, as they would ask it: "What torque gives this clamp load?" */
  readonly question: string;
  readonly title: string;
  readonly purpose: string;
  readonly fields: readonly Field[];
  /** Pure. Throws WorksheetError naming the field, the value and the bound when it cannot answer. */
  readonly compute: (given: Given) => readonly Answer[];
  /** shown before the form */
  readonly cautions: readonly string[];
  readonly sources: readonly string[];
  /** published worked examples; the test suite runs all of them */
  readonly examples: readonly Example[];
}

/** `Kind` fields are written as at the bench ("140 in-lb"); the others are said in a word. */
export type FieldKind = Kind | 'thread' | 'choice' | 'number' | 'count' | 'text' | 'points' | 'list';

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
}

/** A place in a plane, millimetres. */
export interface Point {
  readonly xMm: number;
  readonly yMm: number;
}

/** The parsed fields. Each getter throws WorksheetError when the field is missing or of another kind. */
export interface Given {
  has(id: string): boolean;
  quantity(id: string): Quantity;
  /** the quantity's SI value */
  si(id: string): number;
  /** the quantity's value in a named unit ("mm", "in-lb", "psi") */
  in(id: string, unit: string): number;
  thread(id: string): ThreadName;
  choice(id: string): string;
  number(id: string): number;
  text(id: string): string;
  points(id: string): readonly Point[];
  /** list items: SI values of quantities, or plain numbers */
  list(id: string): readonly number[];
  /** what the person wrote */
  written(id: string): string;
}

export type AnswerValue =
  /** printed in the reader's system, or in `inUnit` whatever the system */
  | { readonly type: 'quantity'; readonly quantity: Quantity; readonly inUnit?: string }
  /** `digits` after the decimal point; four significant ones when left out */
  | { readonly type: 'number'; readonly number: number; readonly digits?: number }
  | { readonly type: 'text'; readonly text: string }
  | { readonly type: 'verdict'; readonly verdict: 'pass' | 'fail' | 'cannot-decide'; readonly text: string }
  | { readonly type: 'list'; readonly items: readonly string[] };

export interface Answer {
  readonly id: string;
  readonly label: string;
  readonly value: AnswerValue;
  /** where the number comes from: formula with source, table, rule of thumb */
  readonly origin: Origin;
  readonly note?: string;
  /** curves that show this answer among its neighbors, where a person would rather look */
  readonly picture?: Picture;
}

/** How sure we are of a published figure. See the marks in test/published/. */
export type Mark = 'seen' | 'memory' | 'memory, recomputed' | 'calculated' | 'common practice';

export interface Example {
  readonly title: string;
  readonly given: Readonly<Record<string, string>>;
  /** by answer id; a refusal by field id */
  readonly expect: Readonly<Record<string, Expected>>;
  readonly source: string;
  readonly mark: Mark;
}

/**
 * A number in a named unit with its tolerance (in that unit); or a text that must be equal; or a refusal, keyed by
 * the field that is refused, whose message must contain the words.
 */
export type Expected =
  | { readonly value: number; readonly unit?: string; readonly tolerance: number }
  | { readonly text: string }
  | { readonly refused: string };

/** An answer a worksheet cannot give; names the field. */
export class WorksheetError extends Error {
  constructor(
    message: string,
    readonly field?: string,
  ) {
    super(message);
    this.name = 'WorksheetError';
  }
}
