import { requireNotNegative, requireWithin } from './error.js';

/** Specific gas constant of dry air, J/(kg·K); ICAO Doc 7488 (R = 8314.32, M = 28.964420). */
export const airGasConstant = 287.05287;
/** Ratio of specific heats of air at bench temperatures. */
export const airGamma = 1.4;

/**
 * The pressure ratio p/p0 at and below which an orifice chokes: (2/(γ+1))^(γ/(γ−1)).
 *
 * Source: isentropic flow of a perfect gas, *Fundamentals of Engineering Thermodynamics*. Exact for a perfect gas.
 * Example: `criticalRatio(1.4)` is 0.528282.
 */
export function criticalRatio(gamma = airGamma): number {
  return (2 / (gamma + 1)) ** (gamma / (gamma - 1));
}

/** The flow function of air where the orifice is not choked; called too often to be checked. */
export function freeFlow(ratio: number): number {
  const s = ratio ** (1 / airGamma);
  return Math.sqrt(((2 * airGamma) / (airGamma - 1)) * (s * s - ratio * s));
}

/** The same at and below the critical ratio: 0.684731. */
export const chokedFlow = freeFlow(criticalRatio());

/**
 * The flow function φ(p/p0) of air: ṁ = A·p0/√(R·T0)·φ, with the effective area A.
 *
 * Source: *Fundamentals of Engineering Thermodynamics*, isentropic nozzle: φ = √(2γ/(γ−1)·(r^{2/γ} − r^{(γ+1)/γ})), held at
 * its value at the critical ratio below it. Exact for a perfect gas of γ 1.4; the hole's discharge coefficient (0.6 for
 * a sharp edge to 0.95 for a rounded one) is most of the uncertainty. 0 at r = 1 and rising from there with infinite slope.
 * Throws EngineError outside 0 to 1: the caller says which way it flows.
 * Example: `flowFunction(0.5)` is 0.684731 (choked), `flowFunction(1)` is 0.
 */
export function flowFunction(ratio: number): number {
  requireWithin(ratio, 0, 1, 'ratio');
  return ratio <= criticalRatio() ? chokedFlow : freeFlow(ratio);
}

/** Area of a round hole, mm². */
export function holeAreaMm2(diameterMm: number): number {
  return (Math.PI / 4) * requireNotNegative(diameterMm, 'diameter') ** 2;
}

/** Diameter of the round hole of this area, mm. */
export function holeDiameterMm(areaMm2: number): number {
  return Math.sqrt((4 / Math.PI) * requireNotNegative(areaMm2, 'area'));
}
