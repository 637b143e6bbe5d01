import { of, parse, show, to } from '../../src/quantity/index.js';
import { near, published, same } from '../support/published.js';

/**
 * NIST Special Publication 811:2008, Guide for the Use of the International System of Units, Appendix B: conversion
 * factors, exact or to seven figures.
 */
const sp811 = published('NIST SP 811:2008, Appendix B');

type Factor = readonly [unit: string, inUnit: string, value: number];
const exactly = (factors: readonly Factor[]) =>
  factors.map(([unit, inUnit, value]) =>
    near(`one ${unit} in ${inUnit}`, to(of(1, unit), inUnit), value, 4 * Number.EPSILON * value),
  );

sp811('exact factors', 'from memory, recomputed', () =>
  exactly([
    ['in', 'mm', 25.4],
    ['ft', 'm', 0.3048],
    ['lb', 'kg', 0.45359237],
    ['lbf', 'N', 4.4482216152605],
    ['in-lb', 'N·m', 0.1129848290276167],
    ['ft-lb', 'N·m', 1.3558179483314003],
    ['hp', 'W', 745.69987158227],
  ]),
);
sp811('exact factors of volumes', 'from memory', () =>
  exactly([
    ['imp gal', 'L', 4.54609],
    ['imp fl oz', 'mL', 28.4130625],
    ['gal', 'cu in', 231],
    ['gal', 'L', 3.785411784],
  ]),
);
sp811('pressures that are exact', 'seen', () =>
  exactly([
    ['bar', 'Pa', 100_000],
    ['atm', 'Pa', 101_325],
  ]),
);
sp811('kgf·cm, from standard gravity', 'calculated', () => exactly([['kgf·cm', 'N·m', 0.0980665]]));

/** Printed with so many figures: the tolerance is half of the last one. */
type Printed = readonly [unit: string, inUnit: string, value: number, half: number];
const printedRows = (rows: readonly Printed[]) =>
  rows.map(([unit, inUnit, value, half]) =>
    near(`one ${unit} in ${inUnit}`, to(of(1, unit), inUnit), value, half),
  );

// the bar in torr is rounded down in the last figure there
sp811('printed factors', 'seen', () =>
  printedRows([
    ['ft-lb', 'N·m', 1.3558, 5e-5],
    ['N·m', 'ft-lb', 0.7376, 5e-5],
    ['bar', 'psi', 14.5038, 5e-5],
    ['atm', 'psi', 14.69595, 5e-6],
    ['bar', 'atm', 0.986923, 5e-7],
    ['bar', 'Torr', 750.061, 1e-3],
    ['inHg', 'Pa', 3386.389, 5e-4],
  ]),
);

/** x E±nn of the table, seven figures; half of the last one is 5e-7 of the leading one, exact ones included. */
const sevenFigures: readonly Factor[] = [
  ['in-lb', 'N·m', 1.129848e-1],
  ['in-oz', 'N·m', 7.061552e-3],
  ['kgf·m', 'N·m', 9.80665],
  ['inH2O', 'Pa', 2.490889e2],
  ['mmHg', 'Pa', 1.333224e2],
  ['mmH2O', 'Pa', 9.80665],
  ['cmH2O', 'Pa', 9.80665e1],
  ['Torr', 'Pa', 1.333224e2],
  ['psi', 'Pa', 6.894757e3],
  ['ksi', 'Pa', 6.894757e6],
  ['kgf/cm²', 'Pa', 9.80665e4],
  ['kgf', 'N', 9.80665],
  ['ozf', 'N', 2.780139e-1],
  ['kip', 'N', 4.448222e3],
  ['oz', 'kg', 2.834952e-2],
  ['lb/ft³', 'kg/m³', 1.601846e1],
  ['lb/gal', 'kg/m³', 1.198264e2],
  ['ft²', 'm²', 9.290304e-2],
  ['in²', 'm²', 6.4516e-4],
  ['cu in', 'm³', 1.638706e-5],
  ['ft³', 'm³', 2.831685e-2],
  ['fl oz', 'm³', 2.957353e-5],
  ['pt', 'm³', 4.731765e-4],
  ['qt', 'm³', 9.463529e-4],
  ['gal', 'm³', 3.785412e-3],
  ['imp fl oz', 'm³', 2.841306e-5],
  ['imp gal', 'm³', 4.54609e-3],
  ['yd', 'm', 9.144e-1],
  ['thou', 'm', 2.54e-5],
  ['ft/min', 'm/s', 5.08e-3],
  ['mph', 'm/s', 4.4704e-1],
  ['km/h', 'm/s', 2.777778e-1],
  ['in/s', 'm/s', 2.54e-2],
  ['PS', 'W', 7.354988e2],
  ['hp', 'W', 7.456999e2],
  ['rpm', 'rad/s', 1.047198e-1],
  ['°', 'rad', 1.745329e-2],
  ['turns', 'rad', 6.283185],
  ['gal/min', 'm³/s', 6.30902e-5],
  ['ft³/min', 'm³/s', 4.719474e-4],
  ['days', 's', 8.64e4],
  ['h', 's', 3.6e3],
];
sp811('factors of seven figures', 'from memory', () =>
  sevenFigures.map(([unit, inUnit, value]) => {
    const lead = 10 ** Math.floor(Math.log10(value));
    return near(`one ${unit} in ${inUnit}`, to(of(1, unit), inUnit), value, 5.1e-7 * lead);
  }),
);

sp811('psi to all figures', 'from memory, recomputed', () =>
  printedRows([['psi', 'Pa', 6894.75729316836, 5e-12]]),
);

sp811('power from torque and speed: 9549.2966 and 5252.1131', 'calculated', () => {
  const rpm = of(1, 'rpm').si;
  return [
    near('kW = N·m × rpm over', 1000 / rpm, 9549.2966, 5e-5),
    near('hp = lbf·ft × rpm over', of(1, 'hp').si / (of(1, 'ft-lb').si * rpm), 5252.1131, 5e-5),
  ];
});

sp811('inches of mercury and of water: 13.5951 times', 'from memory', () => [
  near('inH2O', to(of(1, 'inHg'), 'inH2O'), 13.5951, 5e-11),
  near('four inches of water in inHg', to(of(4, 'inH2O'), 'inHg'), 0.294, 5e-4),
]);

sp811('temperatures: 0 °F, 32 °F, 212 °F, −40 °F', 'from memory', () => [
  near('0 °F', to(of(0, '°F'), '°C'), -17.778, 5e-4),
  near('32 °F', to(of(32, '°F'), 'K'), 273.15, 1e-9),
  near('212 °F', to(of(212, '°F'), '°C'), 100, 1e-9),
  near('−40 °F', to(of(-40, '°F'), '°C'), -40, 1e-9),
]);

// the rounding trap: a manual in public hands prints 20.5 N·m for it, which is 181.4 in-lb
published('a manual’s wrong conversion')('180 in-lb is 20.34 N·m, not the printed 20.5', 'calculated', () => [
  near('N·m', to(parse('180 in-lb', 'torque'), 'N·m'), 20.34, 5e-3),
  same('as shown', show(parse('180 in-lb', 'torque'), 'metric'), '20.3 N·m'),
  near('20.5 N·m in in-lb', to(parse('20.5 N·m'), 'in-lb'), 181.4, 0.05),
]);

published('the bench')('15 ft-lb is 180 in-lb', 'common practice', () => [
  near('in-lb', to(parse('15 ft-lb'), 'in-lb'), 180, 5e-13),
]);
