import type { JobSummary } from '../answers/bench/index.js';
import type { FoundPlace } from './places.js';

/** A job that was found, and where in it. */
export interface FoundJob {
  readonly summary: JobSummary;
  readonly places: readonly FoundPlace[];
}
