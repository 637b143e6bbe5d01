import { gasOf } from '../../src/engine/firing/gas.js';
import { airGasConstant } from '../../src/engine/orifice.js';
import { dryAir } from '../../src/engine/species.js';

const air = gasOf(dryAir, airGasConstant);

/** Ratio of specific heats of dry air at a temperature. Example: 300 K: 1.400; 600 K: 1.376; 1000 K: 1.336. */
export const gammaOfAir = (kelvin: number): number => 1 + airGasConstant / air.heat(kelvin);

/** ∫ f dT by Simpson on 200 strips: under 1e-9 of the integral for these polynomials. */
function integral(f: (kelvin: number) => number, from: number, to: number): number {
  const strips = 200;
  const h = (to - from) / strips;
  let sum = f(from) + f(to);
  for (let i = 1; i < strips; i += 1) sum += f(from + i * h) * (i % 2 === 1 ? 4 : 2);
  return (sum * h) / 3;
}

const cvOverR = (kelvin: number) => air.heat(kelvin) / airGasConstant;

/** Temperature reached from `start` when f's integral reaches `wanted`, by bisection to 1e-6 K. */
function reach(f: (kelvin: number) => number, start: number, wanted: number): number {
  let [low, high] = wanted >= 0 ? [start, 3000] : [200, start];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (integral(f, start, middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export interface OttoCycle {
  readonly compressedK: number;
  readonly hottestK: number;
  readonly expandedK: number;
  readonly highestPa: number;
  readonly workJPerKg: number;
  readonly efficiency: number;
  /** mean effective pressure */
  readonly meanPa: number;
}

/**
 * The ideal Otto cycle of dry air with specific heats that rise with temperature.
 *
 * Source: *Thermodynamics: An Engineering Approach*, 7th ed., ch. 9: isentropic compression and expansion, heat at
 * constant volume. Entropy and energy by Simpson's rule over the polynomials above. It bounds what `crank` leaves out by
 * its constant γ, and is what `fire` must come to as its burning grows short. Under 3000 K.
 * Example: ratio 8, 100 kPa, 290 K, 800 kJ/kg: 651.8 K, 1575 K, 4.346 MPa, 418 kJ/kg, 52.3 %, 574 kPa.
 */
export function ottoCycle(given: {
  readonly ratio: number;
  readonly startPa: number;
  readonly startK: number;
  readonly heatJPerKg: number;
}): OttoCycle {
  const { ratio, startPa, startK } = given;
  const heat = given.heatJPerKg / airGasConstant;
  const perKelvin = (k: number) => cvOverR(k) / k;
  const compressedK = reach(perKelvin, startK, Math.log(ratio));
  const hottestK = reach(cvOverR, compressedK, heat);
  const expandedK = reach(perKelvin, hottestK, -Math.log(ratio));
  const workJPerKg = airGasConstant * (heat - integral(cvOverR, startK, expandedK));
  const startVolume = (airGasConstant * startK) / startPa;
  return {
    compressedK,
    hottestK,
    expandedK,
    highestPa: (startPa * ratio * hottestK) / startK,
    workJPerKg,
    efficiency: workJPerKg / given.heatJPerKg,
    meanPa: workJPerKg / (startVolume * (1 - 1 / ratio)),
  };
}
