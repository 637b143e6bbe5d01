import { requireWithin } from './error.js';
import { dryAirPressure, type Weather } from './moist-air.js';

/**
 * Factor from observed brake power to power in standard air, spark ignition, naturally aspirated.
 *
 * Source: SAE J1349 (June 1990): 1.180·(990/Pd)·√((T + 273)/298) − 0.18, Pd dry air in mbar, T in °C; 85 % mechanical
 * efficiency is assumed in it. The root stands over the temperature term alone: a public page that has it over both is
 * wrong. The standard allows factors from 0.95 to 1.05 for rating; beyond it is an estimate.
 * Example: 990 mbar, 25 °C: 1.000; 850 mbar, 25 °C: 1.194.
 */
export function saeJ1349Factor(dryPascal: number, celsius: number): number {
  requireAir(dryPascal, celsius);
  return 1.18 * (99_000 / dryPascal) * Math.sqrt((celsius + 273) / 298) - 0.18;
}

/**
 * The part of its power that an engine keeps in this air, against another: the one answer of every sheet to what a height
 * or a hot day takes away.
 *
 * Method: ratio of both factors of SAE J1349, whose 85 % mechanical efficiency it takes over; small singles reach less,
 * and so lose a little more. Example: 2000 m against sea level, 20 °C and 50 % at both: 0.752.
 */
export function powerLeft(here: Weather, there: Weather): number {
  const factor = (air: Weather) => saeJ1349Factor(dryAirPressure(air), air.celsius);
  return factor(there) / factor(here);
}

/** The same air brought to sea level. */
export const atSeaLevel = (weather: Weather): Weather => ({ ...weather, pascal: 101_325 });

/**
 * The same by ISO 1585 / ISO 3046-1 for spark ignition: (99 kPa/pd)^1.2·(T/298)^0.6, from memory.
 * Allowed from 0.93 to 1.07 for rating. Example: 99 kPa, 25 °C: 1; 96 kPa, 35 °C: 1.058.
 */
export function iso1585Factor(dryPascal: number, celsius: number): number {
  requireAir(dryPascal, celsius);
  return (99_000 / dryPascal) ** 1.2 * ((celsius + 273.15) / 298.15) ** 0.6;
}

function requireAir(dryPascal: number, celsius: number): void {
  requireWithin(dryPascal, 40e3, 120e3, 'pressure', 'Pa');
  requireWithin(celsius, -45, 60, 'temperature', '°C');
}
