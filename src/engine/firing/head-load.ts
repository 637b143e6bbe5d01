import { requireNotNegative, requirePositive, requireWithin } from '../error.js';

export interface HeadJoint {
  /** highest pressure over that outside, Pa */
  readonly gaugePa: number;
  /** over which the gas reaches the head: the gasket's opening */
  readonly openingMm2: number;
  readonly boreMm: number;
  readonly bolts: number;
  /** of one bolt, before it fires */
  readonly clampN: number;
}

export interface HeadLoad {
  /** on the head, lifting it */
  readonly headN: number;
  /** on the piston, and down the rod as long as nothing moves */
  readonly pistonN: number;
  readonly perBoltN: number;
  /** clamp load of all bolts over what lifts the head */
  readonly separationMargin: number;
}

/**
 * What firing does to the head's joint: force on head and piston, and how far the bolts' clamp load is from letting the
 * head lift.
 *
 * Source: *Mechanical Engineering Design*, 9th ed., Eq. 8-30: n0 = Fi/(P·(1 − C)), with C = 0: the bolts' own share of the
 * load is not counted, which is on the safe side by the tenth to third that C is. Method: pressure × opening, evenly
 * on all bolts. The gasket wants pressure left over to seal: a margin of 1 is where the head just lifts, not where it
 * holds gas. Throws EngineError naming the field.
 * Example: 3.8 MPa over a 68 mm bore, 4 bolts of 15 kN: 13.8 kN, margin 4.35.
 */
export function headLoad({ gaugePa, openingMm2, boreMm, bolts, clampN }: HeadJoint): HeadLoad {
  const pa = requireNotNegative(gaugePa, 'pressure');
  requireWithin(bolts, 1, 40, 'bolts');
  const headN = pa * requirePositive(openingMm2, 'opening') * 1e-6;
  return {
    headN,
    pistonN: pa * (Math.PI / 4) * requirePositive(boreMm, 'bore') ** 2 * 1e-6,
    perBoltN: headN / bolts,
    separationMargin: (requireNotNegative(clampN, 'clamp') * bolts) / headN,
  };
}
