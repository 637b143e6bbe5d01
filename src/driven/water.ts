import { requireWithin } from './error.js';

/**
 * Density of liquid water at the pressure of the air, kg/m³.
 * Source: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97 (from memory). Bound: 0.01 kg/m³ between 0 and 100 °C.
 * Example: 20 °C: 998.20.
 */
export function waterDensity(celsius: number): number {
  const t = requireWithin(celsius, 0, 100, 'temperature', '°C');
  const above =
    999.83952 +
    t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))));
  return above / (1 + 16.87985e-3 * t);
}

/**
 * Dynamic viscosity of liquid water at the pressure of the air, Pa·s.
 * Source: IAPWS R12-08, the correlation for 0.1 MPa (from memory). Bound: 1 % between 0 and 100 °C.
 * Example: 20 °C: 1.0016e-3.
 */
export function waterViscosity(celsius: number): number {
  const t = (requireWithin(celsius, 0, 100, 'temperature', '°C') + 273.15) / 300;
  return 1e-6 * (280.68 * t ** -1.9 + 511.45 * t ** -7.7 + 61.131 * t ** -19.6 + 0.45903 * t ** -40);
}

/**
 * Pressure at which water boils at a temperature, Pa.
 * Source: IAPWS-IF97, region 4, saturation-pressure equation (from memory). Bound: 0.1 % as the release states.
 * Example: 100 °C: 101 418 Pa.
 */
export function boilingPressure(celsius: number): number {
  const kelvin = requireWithin(celsius, 0, 100, 'temperature', '°C') + 273.15;
  return saturation(kelvin);
}

/** The equation over its whole range of 273.15 to 647.096 K. */
export function saturation(kelvin: number): number {
  const theta = kelvin + n9 / (kelvin - n10);
  const a = theta ** 2 + n1 * theta + n2;
  const b = n3 * theta ** 2 + n4 * theta + n5;
  const c = n6 * theta ** 2 + n7 * theta + n8;
  return 1e6 * ((2 * c) / (-b + Math.sqrt(b ** 2 - 4 * a * c))) ** 4;
}
const n1 = 0.11670521452767e4;
const n2 = -0.72421316703206e6;
const n3 = -0.17073846940092e2;
const n4 = 0.1202082470247e5;
const n5 = -0.32325550322333e7;
const n6 = 0.1491510861353e2;
const n7 = -0.48232657361591e4;
const n8 = 0.40511340542057e6;
const n9 = -0.23855557567849;
const n10 = 0.65017534844798e3;
