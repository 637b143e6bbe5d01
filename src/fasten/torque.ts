import { positive, within } from './error.js';

/** Preload scatter of a torque wrench on ordinary bolts: ±25 %. Source: IFI Fastener Standards, 5th ed., N-12 and N-16. */
export const preloadScatter = 0.25;

/**
 * Torque for a clamp load, N·m: T = K·d·F.
 *
 * Source: Mechanical Engineering Design, 9th ed., Eq. 8-27. K lumps thread, collar and all friction together.
 * Validity: 60° threads turned slowly; the clamp load scatters by ±25 % round this at one torque.
 * Example: 3/4-16, 25 000 lbf, K 0.20 gives 3750 lbf·in (423.7 N·m).
 */
export function torqueForClamp({
  clampN,
  nutFactor,
  majorMm,
}: Record<'clampN' | 'nutFactor' | 'majorMm', number>): number {
  positive(clampN, 'clamp', 'N');
  within(nutFactor, 0.01, 1, 'k');
  positive(majorMm, 'thread', 'mm');
  return nutFactor * (majorMm / 1000) * clampN;
}

/** Clamp load that a torque gives, N: F = T/(K·d). The inverse of `torqueForClamp`, same source and validity. */
export function clampForTorque({
  torqueNm,
  nutFactor,
  majorMm,
}: Record<'torqueNm' | 'nutFactor' | 'majorMm', number>): number {
  positive(torqueNm, 'torque', 'N·m');
  within(nutFactor, 0.01, 1, 'k');
  positive(majorMm, 'thread', 'mm');
  return torqueNm / (nutFactor * (majorMm / 1000));
}

/** The nut factor taken, and the ends of what is published for the condition. */
export interface FactorDoubt {
  readonly taken: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Where a clamp load really lies when a wrench sets it: ±25 %, and where the nut factor is one of a published spread,
 * what its ends make of the same torque in quadrature (JCGM 100:2008, 5.1.2).
 * Example: 10 kN at K 0.20, published 0.20 to 0.30: 5.8 to 12.5 kN.
 */
export function clampRange(
  clampN: number,
  scatter = preloadScatter,
  factor?: FactorDoubt,
): readonly [number, number] {
  const down = factor ? 1 - factor.taken / factor.high : 0;
  const up = factor ? factor.taken / factor.low - 1 : 0;
  return [clampN * (1 - Math.hypot(scatter, down)), clampN * (1 + Math.hypot(scatter, up))];
}
