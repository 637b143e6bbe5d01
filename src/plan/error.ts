export type PlanErrorCode =
  /** a field is missing or of the wrong kind */
  | 'shape'
  | 'duplicate'
  | 'unknown'
  | 'cycle'
  /** it wants more of a resource than there ever is */
  | 'capacity'
  /** the times are too far apart to be worked out minute by minute */
  | 'too-long';

interface Detail {
  /** where in what was given: `activities[2].after[0].id` */
  readonly place: string;
  readonly value?: unknown;
  /** what would have been taken */
  readonly bound?: string;
}

/** Something that cannot be planned. `message` is a whole sentence. */
export class PlanError extends Error {
  readonly place: string;
  readonly value: unknown;
  readonly bound: string | undefined;

  constructor(
    readonly code: PlanErrorCode,
    message: string,
    { place, value, bound }: Detail,
  ) {
    super(`${place}: ${message}`);
    this.name = 'PlanError';
    this.place = place;
    this.value = value;
    this.bound = bound;
  }
}
