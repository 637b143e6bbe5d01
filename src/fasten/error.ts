import { boundsOf, Refusal } from '../worksheet/index.js';

/** A question about a fastener that cannot be answered as put. */
export class FastenError extends Refusal {}

export const { positive, within } = boundsOf(FastenError);
