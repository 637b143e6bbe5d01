import { boundsOf, Refusal } from '../worksheet/index.js';

/** A measurement question that cannot be answered as put. */
export class GaugeError extends Refusal {}

export const {
  finite: requireFinite,
  positive: requirePositive,
  notNegative: requireNotNegative,
} = boundsOf(GaugeError);

/** The share of cases a decision is to be right in; at one half it decides nothing. */
export function requireConfidence(confidence: number): void {
  if (!(confidence > 0.5 && confidence < 1))
    throw new GaugeError(
      `confidence must lie between 0.5 and 1; got ${confidence}.`,
      'confidence',
      confidence,
    );
}
