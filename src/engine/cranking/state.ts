import { airGamma, airGasConstant } from '../orifice.js';

/**
 * What rides in the state vector. The first three steer the step; the rest are sums for the balance, which a slope writes
 * in one go from `leakedKg` on, in this order.
 */
const names = [
  ...(['cylinderKg', 'cylinderJ', 'gaugeKg', 'leakedKg', 'throughValvesKg', 'throughReleaseKg'] as const),
  ...(['creviceKg', 'workJ', 'heatJ', 'goneJ'] as const),
] as const;
export const [cylinderKg, cylinderJ, gaugeKg, leakedKg, throughValvesKg] = [0, 1, 2, 3, 4] as const;
export const goneJ = names.indexOf('goneJ');
export const steering = 3;
export const withSums = names.length;

export const gammaLess1 = airGamma - 1;
export const cv = airGasConstant / gammaLess1;
export const cp = cv + airGasConstant;

/**
 * Sums over all pulls; every pull begins with the narrow spaces full of outside air, and `goneJ` is the enthalpy that
 * left with the gas, net. Mass: cylinder + crevices + gauge + out = 0. Energy: cylinder + work + gone − heat = 0.
 */
export type Balance = Readonly<Record<(typeof names)[number], number>>;

export const balanceOf = (sums: Float64Array): Balance =>
  Object.fromEntries(names.map((name, i) => [name, sums[i]!])) as Balance;
