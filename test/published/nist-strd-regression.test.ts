import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitLinear } from '../../src/gauge/index.js';

const load = (name: string) =>
  readFileSync(new URL(`fixtures/nist-strd-${name}.csv`, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => /^-?\d/.test(line))
    .map((line) => line.split(',').map(Number));

/** How many significant digits agree: the log relative error of the reference data sets. */
const digits = (got: number, certified: number) =>
  got === certified ? 16 : -Math.log10(Math.abs(got - certified) / Math.abs(certified));

function fitOf(rows: readonly (readonly number[])[]) {
  const y = rows.map((row) => row[0]!);
  const fit = fitLinear(
    rows.map((row) => [1, ...row.slice(1)]),
    y,
  );
  const mean = y.reduce((sum, value) => sum + value, 0) / y.length;
  const total = y.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const left = fit.residuals.reduce((sum, value) => sum + value ** 2, 0);
  const regressors = fit.coefficients.length - 1;
  return { ...fit, rSquared: 1 - left / total, f: (total - left) / regressors / fit.residualSd ** 2 };
}

describe('NIST Statistical Reference Datasets, Norris (36 readings, lower difficulty), read', () => {
  const rows = load('norris');
  const fit = fitOf(rows);
  it('has all 36 readings', () => expect(rows.length).toBe(36));
  const certified: [string, number, number][] = [
    ['B0', fit.coefficients[0]!, -0.262323073774029],
    ['B1', fit.coefficients[1]!, 1.00211681802045],
    ['deviation of B0', fit.standardErrors[0]!, 0.232818234301152],
    ['deviation of B1', fit.standardErrors[1]!, 4.29796848199937e-4],
    ['residual deviation', fit.residualSd, 0.884796396144373],
    ['R²', fit.rSquared, 0.999993745883712],
    ['F', fit.f, 5436385.54079785],
  ];
  for (const [name, got, value] of certified)
    it(`${name} to 12 digits`, () => expect(digits(got, value)).toBeGreaterThanOrEqual(12));
});

describe('NIST Statistical Reference Datasets, Longley (16 readings, 6 regressors, higher difficulty), read', () => {
  const rows = load('longley');
  const fit = fitOf(rows);
  it('has all 16 readings of 7 columns', () =>
    expect(rows.map((row) => row.length)).toEqual(Array(16).fill(7)));
  const coefficients = [
    -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
    -0.0511041056535807, 1829.15146461355,
  ];
  for (const [i, value] of coefficients.entries())
    it(`B${i} to 10 digits`, () => expect(digits(fit.coefficients[i]!, value)).toBeGreaterThanOrEqual(10));
  it('deviation of B0 to 10 digits', () =>
    expect(digits(fit.standardErrors[0]!, 890420.383607373)).toBeGreaterThanOrEqual(10));
  it('residual deviation to 10 digits', () =>
    expect(digits(fit.residualSd, 304.854073561965)).toBeGreaterThanOrEqual(10));
  it('R² to 10 digits', () => expect(digits(fit.rSquared, 0.995479004577296)).toBeGreaterThanOrEqual(10));
});

describe('NIST Statistical Reference Datasets, NoInt1 and Wampler1, read', () => {
  it('NoInt1: slope 2.07438016528926 through zero, deviation 0.0165289256198347, residual 3.56753034006338', () => {
    const x = Array.from({ length: 11 }, (_, i) => 60 + i);
    const fit = fitLinear(
      x.map((value) => [value]),
      x.map((value) => value + 70),
    );
    expect(digits(fit.coefficients[0]!, 2.07438016528926)).toBeGreaterThanOrEqual(12);
    expect(digits(fit.standardErrors[0]!, 0.0165289256198347)).toBeGreaterThanOrEqual(12);
    expect(digits(fit.residualSd, 3.56753034006338)).toBeGreaterThanOrEqual(12);
  });

  it('Wampler1: a polynomial of the fifth degree whose coefficients are all 1, to 9 digits', () => {
    const x = Array.from({ length: 21 }, (_, i) => i);
    const powers = x.map((value) => [0, 1, 2, 3, 4, 5].map((power) => value ** power));
    const fit = fitLinear(
      powers,
      powers.map((row) => row.reduce((sum, value) => sum + value, 0)),
    );
    for (const coefficient of fit.coefficients) expect(digits(coefficient, 1)).toBeGreaterThanOrEqual(9);
  });
});
