import { EngineError, requirePositive, requireWithin } from './error.js';

/** kg/m³ at 15 °C: gasoline 720 to 775 (745 taken), ethanol. */
export const fuelDensity = { gasoline: 745, ethanol: 789 } as const;

/**
 * Air to burn one mass of a fuel CHyOz, by mass.
 *
 * Source: *Internal Combustion Engine Fundamentals* 1988, eq. 3.6, with oxygen in the fuel counted: 34.56·(4 + y − 2z)/
 * (12.011 + 1.008·y + 16.00·z). Exact for the formula given; pump gasoline varies by about 1 % with its makeup.
 * Example: CH1.87: 14.60; isooctane (y 2.25): 15.13; ethanol (y 3, z 0.5): 9.00.
 */
export function stoichiometricAir(hydrogen: number, oxygen = 0): number {
  requireWithin(hydrogen, 0, 4, 'hydrogen');
  requireWithin(oxygen, 0, 2, 'oxygen');
  return (34.56 * (4 + hydrogen - 2 * oxygen)) / (12.011 + 1.008 * hydrogen + 16 * oxygen);
}

const gasolineAir = stoichiometricAir(1.87);
const ethanolAir = stoichiometricAir(3, 0.5);

export interface Blend {
  readonly ethanolByMass: number;
  readonly airFuelRatio: number;
  readonly kgPerM3: number;
}

/**
 * A blend of gasoline and ethanol by volume: its stoichiometric air and its density.
 *
 * Method: the ratio of a blend is the mean of the two by *mass*; by volume it comes out wrong. Volumes are taken as
 * additive (the true change is under 0.3 %). `gasolineRatio` 14.6 stands (CH1.87); many tables use 14.7.
 * Throws EngineError outside 0 to 1. Example: E10: 10.5 % by mass, 14.01; E85: 9.80.
 */
export function ethanolBlend(byVolume: number, gasolineRatio = gasolineAir): Blend {
  requireWithin(byVolume, 0, 1, 'ethanol');
  const ethanolKg = byVolume * fuelDensity.ethanol;
  const kgPerM3 = ethanolKg + (1 - byVolume) * fuelDensity.gasoline;
  const ethanolByMass = ethanolKg / kgPerM3;
  return {
    ethanolByMass,
    kgPerM3,
    airFuelRatio:
      ethanolByMass * ethanolAir + (1 - ethanolByMass) * requirePositive(gasolineRatio, 'gasolineRatio'),
  };
}

/**
 * How much leaner a carburetor set for one blend runs on another, unchanged: the ratio of excess air.
 *
 * Method: a jet passes mass in proportion to √density; a lean mixture has more air than its fuel wants. 1.04 is 4 %
 * lean. Leaves out the viscosity of the fuel (a percent or two on small jets). Example: from E0 to E10: 1.039.
 */
export function leaningOnBlend(fromByVolume: number, toByVolume: number): number {
  const [from, to] = [ethanolBlend(fromByVolume), ethanolBlend(toByVolume)];
  return (from.airFuelRatio / to.airFuelRatio) * Math.sqrt(from.kgPerM3 / to.kgPerM3);
}

/**
 * Oil for a two-stroke mixture in the unit of the fuel: fuel/ratio ("50:1" is 50 parts of fuel to one of oil). Exact.
 * Throws EngineError outside 10 to 100. Example: 5 L at 50:1: 0.1 L.
 */
export function twoStrokeOil(fuel: number, ratio: number): number {
  return requirePositive(fuel, 'fuel') / requireWithin(ratio, 10, 100, 'ratio');
}

export interface WaterTolerance {
  /** part of the volume */
  readonly part: number;
  readonly u: number;
}

/**
 * How much water E10 takes up before water and alcohol fall out together, as a part of its volume.
 *
 * Source: from memory: 0.5 % at 15 °C (3.8 teaspoons a US gallon); 0.004 % less a kelvin as it cools is trade judgement,
 * no source. Within a third either way: it depends on the gasoline's aromatics. Gasoline without alcohol takes up
 * practically none (0.01 %). Throws EngineError outside −30 to 40 °C. Example: 15 °C: 0.005; −10 °C: 0.004.
 */
export function waterToleranceE10(celsius: number): WaterTolerance {
  const part = 0.005 + 4e-5 * (requireWithin(celsius, -30, 40, 'temperature', '°C') - 15);
  return { part, u: part / 6 };
}

/** Days in a vented tank, and in a full closed can: after `good` doubtful, after `bad` stale. Common practice. */
const fuelLife = {
  e10: { tank: { good: 30, bad: 90 }, can: { good: 90, bad: 180 } },
  'no-ethanol': { tank: { good: 90, bad: 180 }, can: { good: 180, bad: 365 } },
  canned: { tank: { good: 365, bad: 730 }, can: { good: 730, bad: 1825 } },
} as const;
export type FuelKind = keyof typeof fuelLife;

/** Stabilizer added while fresh; it does nothing for fuel already stale. Common practice. */
const stabilized = 3;

export type FuelState = 'good' | 'doubtful' | 'stale';

export interface FuelAge {
  readonly state: FuelState;
  readonly goodUntilDays: number;
  readonly staleAfterDays: number;
}

/**
 * Whether fuel of an age is still worth putting in. Common practice, not a measurement: heat and an open vent halve it,
 * and smell, color and the starting test go before it. Example: E10, 6 months in a mower's tank: stale.
 */
export function fuelAge(
  kind: FuelKind,
  kept: 'tank' | 'can',
  withStabilizer: boolean,
  days: number,
): FuelAge {
  if (!(days >= 0)) throw new EngineError(`the age cannot be below 0; got ${days} days.`, 'age', days);
  const life = fuelLife[kind][kept];
  const longer = withStabilizer && kind !== 'canned' ? stabilized : 1;
  const [goodUntilDays, staleAfterDays] = [life.good * longer, life.bad * longer];
  const state = days <= goodUntilDays ? 'good' : days <= staleAfterDays ? 'doubtful' : 'stale';
  return { state, goodUntilDays, staleAfterDays };
}
