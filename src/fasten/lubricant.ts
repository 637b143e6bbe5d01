import { positive, within } from './error.js';

export interface LubricantCorrection {
  /** the torque to set now for the clamp load that was meant */
  readonly setNm: number;
  /** clamp load if the printed torque is used all the same, in parts of the one meant */
  readonly clampIfNotCorrected: number;
}

/**
 * The torque to set when the threads are in another condition than the printed torque was given for.
 *
 * Same clamp load, T = K·d·F: set T·K(now)/K(given). Not corrected, the clamp load is K(given)/K(now) of the one meant.
 * Source: Mechanical Engineering Design, 9th ed., Eq. 8-27 with Table 8-15; ±25 % scatter remains on both.
 * Example: 140 in-lb printed for dry bare steel (0.20), threads oiled (0.18): set 126 in-lb; not corrected, 1.11 times the clamp.
 */
export function correctForLubricant({
  torqueNm,
  factorGiven,
  factorNow,
}: Record<'torqueNm' | 'factorGiven' | 'factorNow', number>): LubricantCorrection {
  positive(torqueNm, 'torque', 'N·m');
  within(factorGiven, 0.01, 1, 'given');
  within(factorNow, 0.01, 1, 'now');
  return { setNm: (torqueNm * factorNow) / factorGiven, clampIfNotCorrected: factorGiven / factorNow };
}
