import { within } from './error.js';
import { boltLoads, type Strength } from './grades.js';
import type { ThreadForm } from './thread-form.js';
import { clampRange, type FactorDoubt, torqueForClamp } from './torque.js';

/**
 * Part of the proof load to aim for: 0.75 for a joint that comes apart again, 0.90 for one that stays.
 * Source: Mechanical Engineering Design, 9th ed., Eq. 8-31.
 */
export const proofShares = { reusable: 0.75, permanent: 0.9 } as const;

export interface BoltTorque {
  readonly clampN: number;
  readonly torqueNm: number;
  /** clamp load at this torque after ±25 % */
  readonly clampRangeN: readonly [number, number];
  /** the upper end of the range in parts of the proof load; above 1 the bolt may take a set */
  readonly worstShareOfProof: number;
}

/**
 * Clamp load and torque for a bolt of known strength: F = share·Sp·At, T = K·d·F.
 *
 * Source: Mechanical Engineering Design, 9th ed., Eq. 8-27 and 8-31. Steel bolt in a joint that is at least as
 * strong; never a substitute for the engine's own figure, which allows for gaskets and soft threads.
 * Example: 5/16-18 SAE 5, K 0.20, reusable: 14.9 kN, 23.6 N·m (209 lbf·in).
 */
export function torqueForBolt({
  form,
  strength,
  nutFactor,
  share,
  doubt,
}: {
  form: ThreadForm;
  strength: Strength;
  nutFactor: number;
  share: number;
  /** about the nut factor, for the range of the clamp load */
  doubt?: FactorDoubt | undefined;
}): BoltTorque {
  within(share, 0.01, 1, 'share');
  const { proofN } = boltLoads(form, strength);
  const clampN = share * proofN;
  const clampRangeN = clampRange(clampN, undefined, doubt);
  return {
    clampN,
    torqueNm: torqueForClamp({ clampN, nutFactor, majorMm: form.majorMm }),
    clampRangeN,
    worstShareOfProof: clampRangeN[1] / proofN,
  };
}
