import { boundsOf, Refusal } from '../worksheet/index.js';

/** A question about an engine that cannot be answered as put. Names the field, the value and the bound. */
export class EngineError extends Refusal {}

export const {
  finite: requireFinite,
  positive: requirePositive,
  notNegative: requireNotNegative,
  within: requireWithin,
} = boundsOf(EngineError);
