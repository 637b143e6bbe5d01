import { requireNotNegative, requirePositive } from './error.js';

/** A round hose or pipe, and what flows in it; SI units. */
export interface PipeFlow {
  readonly diameterM: number;
  readonly flow: number;
  readonly density: number;
  /** dynamic, Pa·s */
  readonly viscosity: number;
  /** height of the wall's roughness; a rubber or plastic hose counts as smooth, 0 */
  readonly roughnessM: number;
}

/** Mean speed in a round section, m/s. Example: 10 gal/min in 1/2 in: 4.98 m/s. */
export function pipeSpeed(flow: number, diameterM: number): number {
  return requireNotNegative(flow, 'flow') / ((Math.PI / 4) * requirePositive(diameterM, 'diameter') ** 2);
}

export const reynolds = ({ diameterM, flow, density, viscosity }: PipeFlow): number =>
  (requirePositive(density, 'density') * pipeSpeed(flow, diameterM) * diameterM) /
  requirePositive(viscosity, 'viscosity');

/**
 * Darcy friction factor of a full round pipe.
 * Source: 64/Re for laminar flow; C. F. Colebrook (1939) for turbulent, solved to 1e-12 (White, Fluid Mechanics, eq. 6.48).
 * Method: fixed-point steps on 1/√f, which contract for every Re above 2300.
 * Validity: between Re 2300 and 4000 nobody can say; the larger, turbulent figure is taken.
 * Example: smooth, Re 100 000: 0.0180.
 */
export function frictionFactor(re: number, relativeRoughness: number): number {
  if (requirePositive(re, 'reynolds') < 2300) return 64 / re;
  let x = 8;
  for (let i = 0; i < 200; i += 1) {
    const next = -2 * Math.log10(requireNotNegative(relativeRoughness, 'roughness') / 3.7 + (2.51 * x) / re);
    if (Math.abs(next - x) < 1e-12) break;
    x = next;
  }
  return 1 / x ** 2;
}

/**
 * Head that friction takes along a pipe, meters of the liquid: f·(L/d)·v²/2g, and `fittings` velocity heads on top.
 * Source: Darcy–Weisbach. Bound: 10 to 15 % as the Moody chart goes, more in a kinked or aged hose.
 * Example (White): oil of 900 kg/m³ and 1e-5 m²/s, 0.2 m³/s through 500 m of 200 mm, ε 0.26 mm: 117 m.
 */
export function headLoss(pipe: PipeFlow, lengthM: number, fittings = 0): number {
  if (pipe.flow === 0) return 0;
  const f = frictionFactor(reynolds(pipe), pipe.roughnessM / pipe.diameterM);
  const velocityHead = pipeSpeed(pipe.flow, pipe.diameterM) ** 2 / (2 * gravity);
  return (
    (f * (requireNotNegative(lengthM, 'length') / pipe.diameterM) +
      requireNotNegative(fittings, 'fittings')) *
    velocityHead
  );
}

export const gravity = 9.80665;
