export type NetworkErrorCode =
  /** a field is missing or of the wrong kind */
  | 'shape'
  | 'duplicate'
  | 'unknown'
  | 'cycle'
  | 'probability'
  | 'distribution'
  | 'weights'
  | 'seen-twice'
  | 'contradiction'
  /** what was seen has probability nought */
  | 'impossible'
  /** an exact answer would take more than the limit */
  | 'too-wide';

interface Detail {
  /** where in the network: `signs[2].causes[0].outcome` */
  readonly place: string;
  readonly value?: unknown;
  /** what would have been taken */
  readonly bound?: string;
}

/** A network that cannot be taken, or a question it cannot answer. `message` is a whole sentence. */
export class NetworkError extends Error {
  readonly place: string;
  readonly value: unknown;
  readonly bound: string | undefined;

  constructor(
    readonly code: NetworkErrorCode,
    message: string,
    detail: Detail,
  ) {
    super(`${detail.place}: ${message}`);
    this.name = 'NetworkError';
    this.place = detail.place;
    this.value = detail.value;
    this.bound = detail.bound;
  }
}
