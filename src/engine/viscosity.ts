import { EngineError, requirePositive, requireWithin } from './error.js';

/** A kinematic viscosity (mm²/s, the same number in cSt) at a temperature. */
export interface ViscosityPoint {
  readonly celsius: number;
  readonly mm2PerS: number;
}

/** log log(ν + 0.7) = A − B·log T */
export interface ViscosityLine {
  readonly a: number;
  readonly b: number;
}

/** Under this the standard adds a correction that this form leaves out. */
const leastViscosity = 2;

/**
 * The oil's line on the viscosity–temperature chart through two points.
 *
 * Source: ASTM D341, the form with 0.7 and decimal logarithms, T = t + 273.15 K (some tables use 273; some formulas
 * use 0.8: their constants do not mix). Valid from 2 mm²/s up and above the cloud point; between the two points within
 * about 1 %, extrapolated to −20 °C within a factor of 1.5 for plain oils and worse for oils with viscosity improver,
 * which also thin under shear. Throws EngineError for equal temperatures, for a viscosity under 2, and for one that
 * rises with temperature. Example: 32 at 40 °C, 5.4 at 100 °C: A 9.5308, B 3.7466.
 */
export function viscosityLine(first: ViscosityPoint, second: ViscosityPoint): ViscosityLine {
  const [cold, hot] = first.celsius < second.celsius ? [first, second] : [second, first];
  if (hot.celsius - cold.celsius < 5)
    throw new EngineError('the two temperatures must lie at least 5 °C apart.', 'temperature', hot.celsius);
  const b =
    (double(cold.mm2PerS) - double(hot.mm2PerS)) / Math.log10(kelvin(hot.celsius) / kelvin(cold.celsius));
  if (!(b > 0))
    throw new EngineError(
      `an oil thins as it warms; ${cold.mm2PerS} at ${cold.celsius} °C and ${hot.mm2PerS} at ${hot.celsius} °C do not.`,
      'viscosity',
      hot.mm2PerS,
    );
  return { a: double(cold.mm2PerS) + b * Math.log10(kelvin(cold.celsius)), b };
}

/** Viscosity on the line, mm²/s. Throws EngineError under 2 mm²/s. Example: the oil above at 80 °C: 8.53. */
export function viscosityAt({ a, b }: ViscosityLine, celsius: number): number {
  const mm2PerS = 10 ** (10 ** (a - b * Math.log10(kelvin(celsius)))) - 0.7;
  if (!(mm2PerS >= leastViscosity))
    throw new EngineError(
      `at ${celsius} °C the oil would be under ${leastViscosity} mm²/s, where this form of ASTM D341 does not hold.`,
      'temperature',
      celsius,
    );
  return mm2PerS;
}

function double(mm2PerS: number): number {
  if (!(requirePositive(mm2PerS, 'viscosity') >= leastViscosity))
    throw new EngineError(
      `this form of ASTM D341 holds from ${leastViscosity} mm²/s; got ${mm2PerS}.`,
      'viscosity',
      mm2PerS,
    );
  return Math.log10(Math.log10(mm2PerS + 0.7));
}

const kelvin = (celsius: number) => requireWithin(celsius, -60, 200, 'temperature', '°C') + 273.15;

/**
 * Dynamic viscosity, mPa·s: kinematic × density, which falls 0.065 % a kelvin from 15 °C (common practice, ± 0.01 %).
 * Example: 100 mm²/s at 15 °C, 0.875 kg/L: 87.5 mPa·s.
 */
export function dynamicViscosity(mm2PerS: number, celsius: number, densityAt15 = 875): number {
  return (mm2PerS * requirePositive(densityAt15, 'density') * (1 - 0.00065 * (celsius - 15))) / 1000;
}
