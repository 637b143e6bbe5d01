import { readFileSync } from 'node:fs';
import { fitLinear } from '../../src/gauge/regression.js';
import { near, published, same } from '../support/published.js';

const load = (name: string) =>
  readFileSync(new URL(`fixtures/nist-strd-${name}.csv`, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => /^-?\d/.test(line))
    .map((line) => line.split(',').map(Number));

/** Agreement to so many significant digits: the log relative error of the reference data sets. */
const digits = (what: string, got: number, certified: number, count: number) =>
  near(what, got, certified, 10 ** -count * Math.abs(certified));

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

const strd = published('NIST Statistical Reference Datasets');

strd('Norris, 36 readings, lower difficulty, to 12 digits', 'seen', () => {
  const rows = load('norris');
  const fit = fitOf(rows);
  return [
    same('readings', rows.length, 36),
    digits('B0', fit.coefficients[0]!, -0.262323073774029, 12),
    digits('B1', fit.coefficients[1]!, 1.00211681802045, 12),
    digits('deviation of B0', fit.standardErrors[0]!, 0.232818234301152, 12),
    digits('deviation of B1', fit.standardErrors[1]!, 4.29796848199937e-4, 12),
    digits('residual deviation', fit.residualSd, 0.884796396144373, 12),
    digits('R²', fit.rSquared, 0.999993745883712, 12),
    digits('F', fit.f, 5436385.54079785, 12),
  ];
});

const longley = () => fitOf(load('longley'));
strd('Longley, 16 readings, 6 regressors, higher difficulty, to 10 digits', 'seen', () => {
  const fit = longley();
  const coefficients = [
    -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
    -0.0511041056535807, 1829.15146461355,
  ];
  return [
    ...coefficients.map((value, i) => digits(`B${i}`, fit.coefficients[i]!, value, 10)),
    digits('deviation of B0', fit.standardErrors[0]!, 890420.383607373, 10),
    digits('residual deviation', fit.residualSd, 304.854073561965, 10),
    digits('R²', fit.rSquared, 0.995479004577296, 10),
  ];
});
strd('Longley, the deviations of B1 to B6 and F', 'from memory', () => {
  const fit = longley();
  const deviations = [
    84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.22607320006937,
    455.478499142212,
  ];
  return [
    ...deviations.map((value, i) => digits(`deviation of B${i + 1}`, fit.standardErrors[i + 1]!, value, 10)),
    digits('F', fit.f, 330.285339234588, 10),
  ];
});

const throughZero = (x: readonly number[], y: readonly number[]) =>
  fitLinear(
    x.map((value) => [value]),
    y,
  );

strd('NoInt1, through zero, to 12 digits', 'seen', () => {
  const x = Array.from({ length: 11 }, (_, i) => 60 + i);
  const fit = throughZero(
    x,
    x.map((value) => value + 70),
  );
  return [
    digits('slope', fit.coefficients[0]!, 2.07438016528926, 12),
    digits('its deviation', fit.standardErrors[0]!, 0.0165289256198347, 12),
    digits('residual deviation', fit.residualSd, 3.56753034006338, 12),
  ];
});

strd('NoInt2, through zero, to 12 digits', 'from memory', () => {
  const fit = throughZero([4, 5, 6], [3, 4, 4]);
  return [
    digits('slope', fit.coefficients[0]!, 0.727272727272727, 12),
    digits('its deviation', fit.standardErrors[0]!, 0.0420827318078432, 12),
    digits('residual deviation', fit.residualSd, 0.369274472937998, 12),
  ];
});

/** A polynomial of the fifth degree over x = 0 to 20 without any noise. */
function wampler(coefficients: readonly number[]) {
  const x = Array.from({ length: 21 }, (_, i) => i);
  const powers = x.map((value) => coefficients.map((_, power) => value ** power));
  const y = powers.map((row) => row.reduce((sum, value, i) => sum + coefficients[i]! * value, 0));
  return fitLinear(powers, y).coefficients;
}

strd('Wampler1, coefficients that are all 1, to 9 digits', 'seen', () => {
  const ones = [1, 1, 1, 1, 1, 1];
  return wampler(ones).map((got, i) => digits(`B${i}`, got, ones[i]!, 9));
});

strd('Wampler2, coefficients that fall by ten each, to 9 digits', 'from memory', () => {
  const falling = [1, 0.1, 0.01, 0.001, 0.0001, 0.00001];
  return wampler(falling).map((got, i) => digits(`B${i}`, got, falling[i]!, 9));
});
