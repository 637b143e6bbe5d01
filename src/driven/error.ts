import { boundsOf, Refusal } from '../worksheet/index.js';

/** A question about a driven machine that cannot be answered as put. Names the field, the value and the bound. */
export class DrivenError extends Refusal {}

export const {
  positive: requirePositive,
  notNegative: requireNotNegative,
  within: requireWithin,
} = boundsOf(DrivenError);
