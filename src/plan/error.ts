import { PlacedError } from '../phrase/index.js';

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

/** Something that cannot be planned. `message` is a whole sentence. */
export class PlanError extends PlacedError<PlanErrorCode> {}
