import { requireNotNegative, requirePositive, requireWithin } from './error.js';

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

/**
 * The flow function φ(p/p0): ṁ = A·p0/√(R·T0)·φ.
 *
 * Source: *Fundamentals of Engineering Thermodynamics*, isentropic nozzle. φ = √(2γ/(γ−1)·(r^{2/γ} − r^{(γ+1)/γ})),
 * held at its value at the critical ratio below it. 0 at r = 1 and rising from there with infinite slope.
 * Example: `flowFunction(0.5)` is 0.684731 (choked), `flowFunction(1)` is 0.
 */
export function flowFunction(ratio: number, gamma = airGamma): number {
  requireWithin(ratio, 0, 1, 'ratio');
  const r = Math.max(ratio, criticalRatio(gamma));
  const s = r ** (1 / gamma);
  return Math.sqrt(Math.max(0, ((2 * gamma) / (gamma - 1)) * (s * s - r * s)));
}

export interface OrificeFlow {
  /** effective: the hole's area times its discharge coefficient */
  readonly areaM2: number;
  readonly fromPa: number;
  readonly fromK: number;
  readonly toPa: number;
  readonly gamma?: number;
  readonly gasConstant?: number;
}

/**
 * Mass flow through an orifice, kg/s, choked or not.
 *
 * Source and method as `flowFunction`. Exact for a perfect gas and a known effective area; the discharge coefficient
 * (0.6 for a sharp edge to 0.95 for a rounded one) is most of the uncertainty. Throws EngineError for a downstream
 * pressure above the upstream one: the caller says which way it flows.
 * Example: 0.001 m², 1 MPa and 360 K into 500 kPa: 2.130 kg/s; into 784 kPa: 1.793 kg/s.
 */
export function orificeFlow({ areaM2, fromPa, fromK, toPa, ...gas }: OrificeFlow): number {
  requireNotNegative(areaM2, 'area');
  requirePositive(fromPa, 'fromPa');
  requirePositive(fromK, 'fromK');
  requireWithin(toPa, 0, fromPa, 'toPa', 'Pa');
  const { gamma = airGamma, gasConstant = airGasConstant } = gas;
  return ((areaM2 * fromPa) / Math.sqrt(gasConstant * fromK)) * flowFunction(toPa / fromPa, gamma);
}

/** Area of a round hole, mm². */
export function holeAreaMm2(diameterMm: number): number {
  return (Math.PI / 4) * requireNotNegative(diameterMm, 'diameter') ** 2;
}

/** Diameter of the round hole of this area, mm. */
export function holeDiameterMm(areaMm2: number): number {
  return Math.sqrt((4 / Math.PI) * requireNotNegative(areaMm2, 'area'));
}
