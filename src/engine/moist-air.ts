import { requireWithin } from './error.js';

export interface Weather {
  readonly pascal: number;
  readonly celsius: number;
  /** 0 to 1 */
  readonly humidity: number;
}

const gasConstant = 8.314472;
const waterMolarMass = 18.01528e-3;

/**
 * Density of moist air, kg/m³, by CIPM-2007.
 *
 * Source: Metrologia 45 (2008) 149, with 400 ppm of carbon dioxide. Relative uncertainty 2.2e-5 from 600 to 1100 hPa
 * and 15 to 27 °C; used here from −20 to 50 °C, where its saturation pressure is still within a few parts in a thousand
 * of the vapor's share. Throws EngineError outside. Example: 20 °C, 101 325 Pa, 50 %: 1.19931 kg/m³.
 */
export function moistAirDensity(weather: Weather): number {
  const { pascal: p, celsius: t } = requireWeather(weather);
  const kelvin = t + 273.15;
  const x = vaporFraction(weather);
  const dryMolarMass = 28.96546e-3;
  return (
    ((p * dryMolarMass) / (compressibility(p, t, x) * gasConstant * kelvin)) *
    (1 - x * (1 - waterMolarMass / dryMolarMass))
  );
}

/** Mole fraction of vapor: humidity × enhancement × saturation pressure / pressure (CIPM-2007). */
function vaporFraction({ pascal, celsius, humidity }: Weather): number {
  const enhancement = 1.00062 + 3.14e-8 * pascal + 5.6e-7 * celsius ** 2;
  return (humidity * enhancement * saturationPressure(celsius)) / pascal;
}

/** Saturation vapor pressure over water, Pa, as CIPM-2007 has it. Example: 20 °C: 2339.2 Pa. */
export function saturationPressure(celsius: number): number {
  const k = celsius + 273.15;
  return Math.exp(1.2378847e-5 * k * k - 1.9121316e-2 * k + 33.93711047 - 6.3431645e3 / k);
}

function compressibility(p: number, t: number, x: number): number {
  const overT = p / (t + 273.15);
  const first =
    1.58123e-6 -
    2.9331e-8 * t +
    1.1043e-10 * t * t +
    (5.707e-6 - 2.051e-8 * t) * x +
    (1.9898e-4 - 2.376e-6 * t) * x * x;
  return 1 - overT * first + overT * overT * (1.83e-11 - 0.765e-8 * x * x);
}

/**
 * Density of moist air by the approximate formula of OIML R 111-1, E.3, kg/m³.
 * Within 2e-4 of CIPM-2007 for 900 to 1100 hPa, 10 to 30 °C, under 80 %. Example: 20 °C, 1013.25 hPa, 50 %: 1.1993.
 */
export function approximateAirDensity(weather: Weather): number {
  const { pascal, celsius, humidity } = requireWeather(weather);
  return (0.34848 * (pascal / 100) - 0.009 * 100 * humidity * Math.exp(0.061 * celsius)) / (273.15 + celsius);
}

/**
 * Vapor pressure over water, Pa, by the Magnus form of WMO-No. 8: 611.2·exp(17.62 t/(243.12 + t)). Example: 20 °C:
 * 2332.6.
 */
export function magnusPressure(celsius: number): number {
  requireWithin(celsius, -45, 60, 'temperature', '°C');
  return 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
}

/**
 * Partial pressure of the dry air, Pa: what burns fuel.
 * Method: the vapor taken off, humidity × `magnusPressure`. Within 0.1 % where that is: 0.5 % of the vapor at 30 °C.
 * Example: 20 °C, 101 325 Pa, 50 %: 100 159 Pa.
 */
export function dryAirPressure({ pascal, celsius, humidity }: Weather): number {
  return pascal - humidity * magnusPressure(celsius);
}

/**
 * Density of the dry part of the air, kg/m³: its partial pressure over Rd·T, Rd 287.058 J/(kg·K) (WMO-No. 8). As a perfect
 * gas, within 0.1 %. Throws EngineError as `moistAirDensity` does. Example: 20 °C, 101 325 Pa, 50 %: 1.1902.
 */
export function dryAirDensity(weather: Weather): number {
  return dryAirPressure(requireWeather(weather)) / (287.058 * (weather.celsius + 273.15));
}

function requireWeather(weather: Weather): Weather {
  requireWithin(weather.pascal, 40e3, 120e3, 'pressure', 'Pa');
  requireWithin(weather.celsius, -20, 50, 'temperature', '°C');
  requireWithin(weather.humidity, 0, 1, 'humidity');
  return weather;
}
