/**
 * Where the figures of an example come from: read where they are published, remembered from there, our own arithmetic,
 * or a fact of the trade that nobody in particular publishes.
 */
export type Mark = 'seen' | 'memory' | 'memory, recomputed' | 'calculated' | 'common practice';

/** Whether something outside the program was published that this example holds it to. */
export const isPublished = ({ mark }: Example): boolean =>
  mark !== 'calculated' && mark !== 'common practice';

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

/** A number expected of an answer, with its tolerance in the same unit. */
export const near = (value: number, tolerance: number, unit?: string): Expected => ({
  ...{ value, tolerance },
  ...(unit !== undefined && { unit }),
});
