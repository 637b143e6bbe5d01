export type QuantityErrorCode =
  | 'empty'
  | 'not-a-number'
  | 'no-unit'
  | 'unknown-unit'
  | 'kind-mismatch'
  | 'ambiguous'
  | 'implausible'
  | 'out-of-range';

interface Detail {
  /** what was written, word for word */
  readonly text: string;
  readonly wanted?: string | undefined;
  readonly given?: string | undefined;
  /** what to write instead */
  readonly hint?: string | undefined;
}

/** A quantity that cannot be read or must not be believed. `message` says all of it, the hint included. */
export class QuantityError extends Error {
  readonly text: string;
  readonly wanted: string | undefined;
  readonly given: string | undefined;
  readonly hint: string | undefined;

  constructor(
    readonly code: QuantityErrorCode,
    message: string,
    detail: Detail,
  ) {
    super(detail.hint ? `${message}; ${detail.hint}` : message);
    this.name = 'QuantityError';
    this.text = detail.text;
    this.wanted = detail.wanted;
    this.given = detail.given;
    this.hint = detail.hint;
  }
}
