interface Detail {
  /** where in what was given: `activities[2].after[0].id` */
  readonly place: string;
  readonly value?: unknown;
  /** what would have been taken */
  readonly bound?: string;
}

/** What is wrong at a place in what was given. `message` is a whole sentence; each room throws its own kind. */
export class PlacedError<Code extends string> extends Error {
  readonly place: string;
  readonly value: unknown;
  readonly bound: string | undefined;

  constructor(
    readonly code: Code,
    message: string,
    { place, value, bound }: Detail,
  ) {
    super(`${place}: ${message}`);
    this.name = new.target.name;
    this.place = place;
    this.value = value;
    this.bound = bound;
  }
}
