import { vary } from './exact/reasoner.js';
import { withoutFinding } from './exact/weights.js';
import type { ExactInference } from './infer.js';

/** What one finding adds to what all the others say. */
export interface EvidenceWeight {
  readonly sign: string;
  /**
   * By fault: natural logarithm of the odds with the finding over the odds without it, all else being seen.
   * Positive speaks for the fault. Infinite when the finding alone settles it; 0 for a fault already settled.
   */
  readonly logOddsGain: Float64Array;
}

/**
 * The weight of each finding for each fault, in the light of the others: of two findings that say the same,
 * each may weigh little, and what one fault explains no longer speaks for another.
 *
 * Method: the network is run again without each finding in turn, over what it touches. Exact.
 */
export function evidenceWeights({ network, reasoner }: ExactInference): EvidenceWeight[] {
  const { model } = reasoner;
  const odds = reasoner.odds.subarray(0, network.faults.length);
  return network.seen.map(({ sign }, finding) => {
    const gathering = model.gatherings.findIndex((g) => g.finding === finding);
    const faults = model.plain.filter((p) => p.finding === finding).map((p) => p.fault);
    const without = vary(reasoner, withoutFinding(model, reasoner.weights, finding), { faults, gathering });
    return { sign, logOddsGain: odds.map((with_, f) => gain(with_, without.odds[f]!)) };
  });
}

function gain(with_: number, without: number): number {
  if (with_ === without) return 0;
  return Math.log(with_) - Math.log(without);
}
