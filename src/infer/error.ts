import { PlacedError } from '../phrase/index.js';

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

/** A network that cannot be taken, or a question it cannot answer. `message` is a whole sentence. */
export class NetworkError extends PlacedError<NetworkErrorCode> {}
