import { requireWithin } from './error.js';

/** Sea level of the standard atmosphere. */
export const seaLevelPa = 101_325;
export const seaLevelK = 288.15;

const lapsePerM = 0.0065;
const gasConstant = 287.05287;
const exponent = 9.80665 / (lapsePerM * gasConstant);
const earthRadiusM = 6_356_766;

export interface StandardAir {
  readonly kelvin: number;
  readonly pascal: number;
  readonly kgPerM3: number;
}

/**
 * Temperature, pressure and density of the ICAO standard atmosphere at a *geopotential* height.
 *
 * Source: ICAO Doc 7488 / ISO 2533. T = 288.15 − 0.0065·H, p = 101325·(T/288.15)^5.25588, ρ = p/(287.05287·T). Valid
 * from −2000 m to 11 000 m; a map's height is geometric (see `geopotentialM`): the two differ by 1.4 m at 3000 m, 12 Pa.
 * A real day differs by some 3 % in pressure. Throws EngineError outside the range.
 * Example: 2000 m: 275.15 K, 79 495 Pa, 1.00649 kg/m³.
 */
export function standardAir(geopotentialHeightM: number): StandardAir {
  const kelvin = seaLevelK - lapsePerM * requireWithin(geopotentialHeightM, -2000, 11_000, 'altitude', 'm');
  const pascal = seaLevelPa * (kelvin / seaLevelK) ** exponent;
  return { kelvin, pascal, kgPerM3: pascal / (gasConstant * kelvin) };
}

/** Geopotential height of a geometric one: Z·r/(r + Z), r = 6 356 766 m (ICAO Doc 7488). Example: 2000 m: 1999.37 m. */
export function geopotentialM(geometricM: number): number {
  return (earthRadiusM * geometricM) / (earthRadiusM + geometricM);
}

/** The standard atmosphere at a height as a map gives it. Example: 2000 m: 79 501 Pa. */
export function standardAirAtMapHeight(geometricM: number): StandardAir {
  return standardAir(geopotentialM(geometricM));
}
