import { DrivenError, requirePositive, requireWithin } from './error.js';

/** A hydraulic cylinder, SI units. */
export interface Ram {
  readonly boreM: number;
  readonly rodM: number;
  readonly strokeM: number;
}

const disk = (diameterM: number) => (Math.PI / 4) * diameterM ** 2;

/** Areas that the oil presses on, going out and coming back, m². Refuses a rod as thick as the bore. */
export function ramAreas({ boreM, rodM }: Ram): { readonly out: number; readonly back: number } {
  const out = disk(requirePositive(boreM, 'bore'));
  if (requirePositive(rodM, 'rod') >= boreM)
    throw new DrivenError('the rod must be thinner than the bore.', 'rod', rodM);
  return { out, back: out - disk(rodM) };
}

/**
 * Force of a ram, N: pressure times area. Exact without friction; seals take 5 to 10 % (common practice).
 * Example: 4 in at 2500 psi: 31 416 lbf.
 */
export const ramForce = (areaM2: number, pressure: number): number =>
  areaM2 * requirePositive(pressure, 'pressure');

/** Time of one stroke, s: volume by flow. Example: 4 in by 24 in at 11 gal/min: 7.1 s. */
export const strokeTime = (areaM2: number, strokeM: number, flow: number): number =>
  (areaM2 * requirePositive(strokeM, 'stroke')) / requirePositive(flow, 'flow');

/**
 * Power that the engine must give for a flow at a pressure, W: Q·p/η.
 * Source: fluid-power handbooks, hp = gal/min·psi/(1714·η). Example: 11 gal/min at 2500 psi, 85 %: 18.9 hp.
 */
export function hydraulicPower(flow: number, pressure: number, efficiency: number): number {
  return (
    (requirePositive(flow, 'flow') * requirePositive(pressure, 'pressure')) /
    requireWithin(efficiency, 0.3, 1, 'efficiency')
  );
}

/** Speed that is kept in the oil's lines, m/s, at most (fluid-power handbooks, common practice). */
export const lineSpeeds = { suction: 1.2, return: 3, pressure: 6 } as const;
/** Burst pressure of a hose is at least four times its working pressure: SAE J517. */
export const hoseSafety = 4;
