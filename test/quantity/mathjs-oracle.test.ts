import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { type Kind, of, to, units } from '../../src/quantity/index.js';

/** mathjs's own unit table as an oracle. Where it stores a rounded figure the expression is built from its bases. */
const expressions: Readonly<Record<string, string>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  km: 'km',
  µm: 'um',
  in: 'inch',
  thou: 'mil',
  ft: 'ft',
  yd: 'yd',
  'mm²': 'mm^2',
  'cm²': 'cm^2',
  'm²': 'm^2',
  'in²': 'sqin',
  'ft²': 'sqft',
  mL: 'ml',
  cc: 'cc',
  L: 'L',
  'mm³': 'mm^3',
  'm³': 'm^3',
  'cu in': 'cuin',
  'ft³': 'ft^3',
  'fl oz': 'floz',
  pt: 'pint',
  qt: 'qt',
  gal: 'gallon',
  mg: 'mg',
  g: 'g',
  kg: 'kg',
  oz: 'oz',
  lb: 'lbm',
  'kg/m³': 'kg/m^3',
  'g/cm³': 'g/cm^3',
  'g/L': 'g/L',
  'lb/ft³': 'lbm/ft^3',
  'lb/gal': 'lbm/gallon',
  N: 'N',
  kN: 'kN',
  kgf: 'kgf',
  lbf: 'lbf',
  'in-lb': 'in lbf',
  'ft-lb': 'ft lbf',
  N·m: 'N m',
  N·cm: 'N cm',
  kgf·m: 'kgf m',
  kgf·cm: 'kgf cm',
  Pa: 'Pa',
  hPa: 'hPa',
  kPa: 'kPa',
  MPa: 'MPa',
  GPa: 'GPa',
  bar: 'bar',
  mbar: 'mbar',
  atm: 'atm',
  'kgf/cm²': 'kgf/cm^2',
  mmH2O: 'mmH2O',
  cmH2O: 'cmH2O',
  psi: 'lbf/inch^2',
  W: 'W',
  kW: 'kW',
  'm/s': 'm/s',
  'mm/s': 'mm/s',
  'km/h': 'km/hour',
  'ft/min': 'ft/minute',
  'ft/s': 'ft/s',
  'in/s': 'inch/s',
  mph: 'mile/hour',
  rpm: 'cycle/minute',
  'rad/s': 'rad/s',
  'rev/s': 'cycle/s',
  '°/s': 'deg/s',
  Hz: 'Hz',
  kHz: 'kHz',
  s: 's',
  ms: 'ms',
  min: 'minute',
  h: 'hour',
  days: 'day',
  weeks: 'week',
  '°': 'deg',
  rad: 'rad',
  turns: 'cycle',
  K: 'K',
  'mL/min': 'ml/minute',
  'L/min': 'L/minute',
  'L/h': 'L/hour',
  'm³/s': 'm^3/s',
  'm³/h': 'm^3/hour',
  'fl oz/min': 'floz/minute',
  'gal/h': 'gallon/hour',
  'gal/min': 'gallon/minute',
  'ft³/min': 'ft^3/minute',
  'mm²/s': 'mm^2/s',
  'm²/s': 'm^2/s',
  mPa·s: 'mPa s',
  Pa·s: 'Pa s',
  mA: 'mA',
  A: 'A',
  mV: 'mV',
  V: 'V',
  kV: 'kV',
  mΩ: 'mohm',
  Ω: 'ohm',
  kΩ: 'kohm',
  MΩ: 'Mohm',
  pF: 'pF',
  nF: 'nF',
  µF: 'uF',
  farad: 'F',
};

/** Multiples of a base that mathjs knows, for units that it does not. */
const multiples: Readonly<Record<string, readonly [factor: number, expression: string]>> = {
  ozf: [1 / 16, 'lbf'],
  kip: [1000, 'lbf'],
  'in-oz': [1 / 16, 'in lbf'],
  ksi: [1000, 'lbf/inch^2'],
  Mpsi: [1e6, 'lbf/inch^2'],
  hp: [550, 'ft lbf/s'],
  PS: [75, 'kgf m/s'],
  inH2O: [25.4, 'mmH2O'],
  Torr: [1 / 760, 'atm'],
};

/** mathjs has no such unit (imperial, mercury at SP 811's density) or defines it otherwise (Julian year); and °C, °F below. */
const unknownToMathjs = [
  'imp fl oz',
  'imp pt',
  'imp qt',
  'imp gal',
  'mmHg',
  'inHg',
  'months',
  'years',
  '%',
  '1',
  '°C',
  '°F',
];

const siExpressions: Readonly<Record<Kind, string>> = {
  length: 'm',
  area: 'm^2',
  volume: 'm^3',
  mass: 'kg',
  density: 'kg/m^3',
  force: 'N',
  torque: 'N m',
  pressure: 'Pa',
  power: 'W',
  speed: 'm/s',
  rotation: 'rad/s',
  frequency: 'Hz',
  time: 's',
  angle: 'rad',
  temperature: 'K',
  flow: 'm^3/s',
  'kinematic-viscosity': 'm^2/s',
  'dynamic-viscosity': 'Pa s',
  voltage: 'V',
  current: 'A',
  resistance: 'ohm',
  capacitance: 'F',
  ratio: '1',
};

function expectRelative(got: number, expected: number, relative: number, what: string): void {
  expect(Math.abs(got - expected), what).toBeLessThanOrEqual(relative * Math.abs(expected));
}

describe('the unit table agrees with mathjs', () => {
  test('every unit is compared or listed as one that mathjs does not know', () => {
    const covered = [...Object.keys(expressions), ...Object.keys(multiples), ...unknownToMathjs].sort();
    expect(covered).toEqual(Object.keys(units).sort());
  });

  test.each(Object.entries(expressions))('%s is %s to 1e-12', (id, expression) => {
    const { kind } = units[id]!;
    const expected = mathUnit(1, expression).toNumber(siExpressions[kind]);
    expectRelative(of(1, id).si, expected, 1e-12, id);
  });

  test.each(Object.entries(multiples))('%s is %s to 1e-12', (id, [factor, expression]) => {
    const { kind } = units[id]!;
    const expected = factor * mathUnit(1, expression).toNumber(siExpressions[kind]);
    expectRelative(of(1, id).si, expected, 1e-12, id);
  });

  test.each([
    ['psi', 'psi', 'Pa', 1e-10],
    ['hp', 'hp', 'W', 1e-10],
    ['kip', 'kip', 'N', 1e-8],
    ['mmHg', 'mmHg', 'Pa', 4e-6],
    ['Torr', 'torr', 'Pa', 4e-6],
  ])('%s agrees with the rounded figure mathjs stores under %s', (id, name, si, relative) => {
    expectRelative(of(1, id).si, mathUnit(1, name).toNumber(si), relative, id);
  });

  test.each([-40, -17.78, 0, 20, 37, 68, 100, 212, 451])('%d degrees on both scales', (degrees) => {
    expect(of(degrees, '°C').si).toBeCloseTo(mathUnit(degrees, 'degC').toNumber('K'), 10);
    expect(of(degrees, '°F').si).toBeCloseTo(mathUnit(degrees, 'degF').toNumber('K'), 10);
    expect(to(of(degrees, '°C'), '°F')).toBeCloseTo(mathUnit(degrees, 'degC').toNumber('degF'), 10);
  });
});
