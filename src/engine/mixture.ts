import { requirePositive } from './error.js';
import { leaningOnBlend } from './fuel.js';
import { dryAirDensity, moistAirDensity, type Weather } from './moist-air.js';

/**
 * How much richer a carburetor gets by a change of air, unchanged: the ratio of fuel–air ratios, new over old.
 *
 * Method: the engine draws the same *volume*. The venturi's pull goes with the air's density ρ, the jet's flow with its
 * root, the burning air with the density of its dry part: φ/φ0 = √(ρ/ρ0)·(dry0/dry). In dry air √(ρ0/ρ). Source: orifice
 * law, *Internal Combustion Engine Fundamentals* 1988, §7.2. Holds for the main circuit of a fixed jet; a diaphragm or
 * pressure carburetor follows in part only. Within about 1 % where the jet's coefficient stays. Example: sea level to
 * 2000 m (standard air, dry): 1.103, 10 % rich.
 */
export function richening(from: Weather, to: Weather): number {
  return Math.sqrt(moistAirDensity(to) / moistAirDensity(from)) * (dryAirDensity(from) / dryAirDensity(to));
}

/** The same from dry densities alone: √(ρ0/ρ). Example: 1.225 to 1.00649 kg/m³ (2000 m): 1.1032. */
export function richeningByDensity(fromKgPerM3: number, toKgPerM3: number): number {
  return Math.sqrt(requirePositive(fromKgPerM3, 'from') / requirePositive(toKgPerM3, 'to'));
}

/**
 * Jet diameter that keeps the mixture: old diameter × √(1/richening): in dry air (ρ/ρ0)^¼.
 * Within about 1 % in diameter while the jet is of one shape. Example: 0.70 mm to 2000 m: 0.6665 mm.
 */
export function jetFor(diameterMm: number, richer: number): number {
  return requirePositive(diameterMm, 'jet') / Math.sqrt(requirePositive(richer, 'richening'));
}

/**
 * Jet diameter that keeps the excess air when the fuel changes from one ethanol content (by volume) to another.
 * Method: fuel wanted ∝ 1/(air–fuel ratio), flow ∝ area·√density. Example: 0.70 mm, E0 to E10: 0.7135 mm.
 */
export function jetForBlend(diameterMm: number, fromByVolume: number, toByVolume: number): number {
  return requirePositive(diameterMm, 'jet') * Math.sqrt(leaningOnBlend(fromByVolume, toByVolume));
}
