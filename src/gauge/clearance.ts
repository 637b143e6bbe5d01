import { type Decision, decide, type Limit } from './decide.js';
import { requireFinite, requireNotNegative, requirePositive } from './error.js';

/** Everything in one unit of length. */
export interface ClearanceQuestion {
  readonly hole: number;
  readonly shaft: number;
  /** standard uncertainties */
  readonly uHole: number;
  readonly uShaft: number;
  readonly limit?: Limit | undefined;
  readonly confidence?: number | undefined;
  readonly unit?: string | undefined;
}

export interface Clearance {
  /** hole less shaft; negative is interference */
  readonly clearance: number;
  readonly u: number;
  readonly decision?: Decision;
}

/**
 * The clearance of a shaft in a hole measured separately: piston in bore, rod on crankpin, stem in guide, pin in rod.
 *
 * Source: JCGM 100:2008, 5.1.2 (difference of independent readings). Measuring both with one instrument and one zero
 * makes a common error drop out; the u here then errs to the large side.
 * Example: bore 2.5640, piston 2.5580, u 0.00035 and 0.0002 → clearance 0.0060, u 0.00040.
 */
export function clearance(question: ClearanceQuestion): Clearance {
  const { hole, shaft, uHole, uShaft, limit, confidence, unit } = question;
  const value = requirePositive(hole, 'hole') - requirePositive(shaft, 'shaft');
  const u = Math.hypot(requireNotNegative(uHole, 'uHole'), requireNotNegative(uShaft, 'uShaft'));
  return { clearance: value, u, ...(limit && { decision: decide({ value, u, limit, confidence, unit }) }) };
}

/**
 * Stem wear from a wobble test: how far a valve lifted `lift` above its seat rocks at the head, as clearance in the
 * guide.
 *
 * Source: geometry of a straight stem that touches the guide at opposite ends: rock at the head = clearance·(2·lever/guide + 1),
 * lever from the head to the near end of the guide. Own derivation. Validity: small angles, a guide worn evenly; a
 * bell-mouthed guide shows more rock than this.
 * Example: rock 0.25 mm, lever 20 mm, guide 40 mm → clearance 0.125 mm.
 */
export function clearanceFromWobble(rock: number, lever: number, guide: number): number {
  requireNotNegative(rock, 'rock');
  requireFinite(lever, 'lever');
  return rock / ((2 * requireNotNegative(lever, 'lever')) / requirePositive(guide, 'guide') + 1);
}
