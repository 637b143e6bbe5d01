export type SupplyErrorCode =
  /** a field is missing or of the wrong kind */
  | 'shape'
  | 'duplicate'
  | 'unknown'
  /** a needed part that no offer holds */
  | 'not-offered'
  /** no basket keeps all conditions */
  | 'impossible'
  /** the solver stopped without an answer */
  | 'unsolved';

interface Detail {
  /** where in what was given: `offers[2].contains` */
  readonly place: string;
  readonly value?: unknown;
  /** what would have been taken */
  readonly bound?: string;
}

/** Something that cannot be bought. `message` is a whole sentence. */
export class SupplyError extends Error {
  readonly place: string;
  readonly value: unknown;
  readonly bound: string | undefined;

  constructor(
    readonly code: SupplyErrorCode,
    message: string,
    { place, value, bound }: Detail,
  ) {
    super(`${place}: ${message}`);
    this.name = 'SupplyError';
    this.place = place;
    this.value = value;
    this.bound = bound;
  }
}
