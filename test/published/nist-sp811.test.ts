import { describe, expect, test } from 'vitest';
import { of, parse, show, to } from '../../src/quantity/index.js';

/**
 * NIST Special Publication 811:2008, Guide for the Use of the International System of Units, Appendix B: conversion
 * factors, exact or to seven figures. Marks: seen; memory (recalled, not seen); memory, recomputed.
 */
const exact: readonly (readonly [unit: string, inUnit: string, value: number, mark: string])[] = [
  ['in', 'mm', 25.4, 'memory, recomputed'],
  ['ft', 'm', 0.3048, 'memory, recomputed'],
  ['lb', 'kg', 0.45359237, 'memory, recomputed'],
  ['lbf', 'N', 4.4482216152605, 'memory, recomputed'],
  ['in-lb', 'N·m', 0.1129848290276167, 'memory, recomputed'],
  ['ft-lb', 'N·m', 1.3558179483314003, 'memory, recomputed'],
  ['hp', 'W', 745.69987158227, 'memory, recomputed'],
  ['kgf·cm', 'N·m', 0.0980665, 'calculated from standard gravity'],
  ['imp gal', 'L', 4.54609, 'memory'],
  ['imp fl oz', 'mL', 28.4130625, 'memory'],
  ['gal', 'cu in', 231, 'memory'],
  ['gal', 'L', 3.785411784, 'memory'],
  ['bar', 'Pa', 100000, 'seen'],
  ['atm', 'Pa', 101325, 'seen'],
];

/** Printed with so many figures: the tolerance is half of the last one. */
const printed: readonly (readonly [
  unit: string,
  inUnit: string,
  value: number,
  half: number,
  mark: string,
])[] = [
  ['psi', 'Pa', 6894.75729316836, 5e-12, 'memory, recomputed'],
  ['in-lb', 'N·m', 1.129848e-1, 5e-8, 'memory'],
  ['ft-lb', 'N·m', 1.3558, 5e-5, 'seen'],
  ['N·m', 'ft-lb', 0.7376, 5e-5, 'seen'],
  ['bar', 'psi', 14.5038, 5e-5, 'seen'],
  ['atm', 'psi', 14.69595, 5e-6, 'seen'],
  ['bar', 'atm', 0.986923, 5e-7, 'seen'],
  ['bar', 'Torr', 750.061, 1e-3, 'seen: rounded down in the last figure there'],
  ['inHg', 'Pa', 3386.389, 5e-4, 'seen'],
  ['inH2O', 'Pa', 249.0889, 5e-5, 'memory: conventional inch of water 2.490 889 E+02'],
  ['mmHg', 'Pa', 133.3224, 5e-5, 'memory: conventional millimeter of mercury 1.333 224 E+02'],
];

describe('NIST SP 811:2008 Appendix B', () => {
  test.each(exact)('one %s is %s %d exactly (%s)', (unit, inUnit, value) => {
    expect(Math.abs(to(of(1, unit), inUnit) - value)).toBeLessThanOrEqual(4 * Number.EPSILON * value);
  });

  test.each(printed)('one %s in %s is %d to half its last figure %d (%s)', (unit, inUnit, value, half) => {
    expect(Math.abs(to(of(1, unit), inUnit) - value)).toBeLessThanOrEqual(half);
  });

  test('power from torque and speed: kW = N·m × rpm / 9549.2966, hp = lbf·ft × rpm / 5252.1131 (calculated)', () => {
    const rpm = of(1, 'rpm').si;
    expect(1000 / rpm).toBeCloseTo(9549.2966, 4);
    expect(of(1, 'hp').si / (of(1, 'ft-lb').si * rpm)).toBeCloseTo(5252.1131, 4);
  });

  test('inches of water and of mercury are never taken for each other: 13.5951 times', () => {
    expect(to(of(1, 'inHg'), 'inH2O')).toBeCloseTo(13.5951, 10);
    expect(to(of(4, 'inH2O'), 'inHg')).toBeCloseTo(0.294, 3);
  });

  test('the rounding trap: 180 in-lb is 20.34 N·m, not the 20.5 that a manual in public hands prints (seen, calculated)', () => {
    const torque = parse('180 in-lb', 'torque');
    expect(to(torque, 'N·m')).toBeCloseTo(20.337, 3);
    expect(Math.abs(to(torque, 'N·m') - 20.5)).toBeGreaterThan(0.16);
    expect(show(torque, 'metric')).toBe('20.3 N·m');
    expect(to(parse('20.5 N·m'), 'in-lb')).toBeCloseTo(181.4, 1);
  });

  test('15 ft-lb is 180 in-lb (common practice)', () => {
    expect(to(parse('15 ft-lb'), 'in-lb')).toBeCloseTo(180, 12);
  });
});
