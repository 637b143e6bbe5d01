import type { ExactInference, Prospect } from '../src/infer/index.js';

/** Bits of uncertainty in a probability. */
export function entropyBits(p: number): number {
  return p <= 0 || p >= 1 ? 0 : -(p * Math.log2(p) + (1 - p) * Math.log2(1 - p));
}

/**
 * By fault: how many bits about it the outcomes are expected to give (mutual information). The prospects must be
 * those of outcomes that exclude each other and leave nothing out. Prospects without a posterior count as
 * telling nothing, which is off by less than their probability in bits.
 */
export function informationBits(inference: ExactInference, all: readonly Prospect[]): Float64Array {
  return inference.posterior.map((prior, f) => {
    let gain = 0;
    for (const { probability, posterior } of all) {
      if (posterior) gain += probability * (entropyBits(prior) - entropyBits(posterior[f]!));
    }
    return Math.max(0, gain);
  });
}
