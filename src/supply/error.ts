import { PlacedError } from '../phrase/index.js';

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

/** Something that cannot be bought. `message` is a whole sentence. */
export class SupplyError extends PlacedError<SupplyErrorCode> {}
