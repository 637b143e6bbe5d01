import { airGamma, airGasConstant } from '../orifice.js';
import { displacementCc } from '../slider-crank.js';
import type { VolumeLaw } from './pull-speed.js';
import type { CompressionGauge, CrankedEngine } from './setup.js';

/** What rides in the state vector: the first three steer the step, the rest are sums for the balance. */
export const cylinderKg = 0;
export const cylinderJ = 1;
export const gaugeKg = 2;
export const leakedKg = 3;
export const throughValvesKg = 4;
export const throughReleaseKg = 5;
export const creviceKg = 6;
export const workJ = 7;
export const heatJ = 8;
export const goneJ = 9;
export const steering = 3;
export const withSums = 10;

export const cv = airGasConstant / (airGamma - 1);
export const cp = cv + airGasConstant;

/** Sums over all pulls. Mass: cylinder + crevices + gauge + out = 0. Energy: cylinder + work + gone − heat = 0. */
export interface Balance {
  readonly cylinderKg: number;
  /** into the narrow spaces, net; every pull begins with them full of outside air */
  readonly creviceKg: number;
  readonly gaugeKg: number;
  readonly leakedKg: number;
  readonly throughValvesKg: number;
  readonly throughReleaseKg: number;
  readonly cylinderJ: number;
  readonly workJ: number;
  readonly heatJ: number;
  /** enthalpy that left with the gas, net */
  readonly goneJ: number;
}

export function balanceOf(sums: Float64Array): Balance {
  const at = (i: number) => sums[i]!;
  return {
    cylinderKg: at(cylinderKg),
    creviceKg: at(creviceKg),
    gaugeKg: at(gaugeKg),
    leakedKg: at(leakedKg),
    throughValvesKg: at(throughValvesKg),
    throughReleaseKg: at(throughReleaseKg),
    cylinderJ: at(cylinderJ),
    workJ: at(workJ),
    heatJ: at(heatJ),
    goneJ: at(goneJ),
  };
}

export function volumeLaw(engine: CrankedEngine, { adapterMl }: CompressionGauge): VolumeLaw {
  const swept = displacementCc(engine) * 1e-6;
  const clearance = swept / (engine.compressionRatio - 1) + adapterMl * 1e-6;
  const r = engine.strokeMm / 2000;
  const l = engine.rodMm / 1000;
  const area = swept / (2 * r);
  return {
    ...{ area, clearance, r, l },
    at(angleDeg: number): number {
      const angle = (angleDeg * Math.PI) / 180;
      const across = r * Math.sin(angle);
      return clearance + area * (r * (1 - Math.cos(angle)) + l - Math.sqrt(l * l - across * across));
    },
  };
}
