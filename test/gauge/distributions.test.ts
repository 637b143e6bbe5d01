import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { incompleteBeta, logGamma } from '../../src/gauge/incomplete-beta.js';
import {
  GaugeError,
  normalBelow,
  normalQuantile,
  studentBelow,
  studentQuantile,
} from '../../src/gauge/index.js';
import { meanNoiseRange, noiseRangeBelow } from '../../src/gauge/noise-range.js';
import { times } from './seeded.js';

const { jStat } = jstat;
const from = (low: number, high: number, n: number) => times(n + 1, (i) => low + ((high - low) * i) / n);

describe('the normal distribution', () => {
  it('agrees with an independent library from −8 to 8 within 1e-14', () => {
    for (const z of from(-8, 8, 321))
      expect(Math.abs(normalBelow(z) - jStat.normal.cdf(z, 0, 1))).toBeLessThan(1e-14);
  });

  // thirty-digit arithmetic, rounded to double precision
  const exact: [number, number][] = [
    [-0.5, 0.3085375387259869],
    [-2.999999999, 0.0013498980360619433],
    [-3, 0.0013498980316300946],
    [-10, 7.619853024160525e-24],
    [-37, 5.72557122252457e-300],
  ];
  for (const [z, p] of exact)
    it(`keeps 12 digits in the tail at z = ${z}`, () =>
      expect(Math.abs(normalBelow(z) / p - 1)).toBeLessThan(1e-12));

  it('is one less its mirror image', () => {
    for (const z of from(0, 8, 80)) expect(normalBelow(z) + normalBelow(-z)).toBe(1);
  });

  it('rises all the way, also over the seam of the two methods', () => {
    const values = from(-3.0005, -2.9995, 1000).map(normalBelow);
    for (const [i, value] of values.entries()) if (i > 0) expect(value).toBeGreaterThan(values[i - 1]!);
  });

  it('and its quantile undo each other', () => {
    for (const p of [1e-12, 0.001, 0.05, 0.3, 0.5, 0.9, 0.975, 0.9999])
      expect(Math.abs(normalBelow(normalQuantile(p)) - p)).toBeLessThan(1e-14);
  });

  it('has its ends at 0 and 1 and refuses what is no number', () => {
    expect([normalBelow(Number.NEGATIVE_INFINITY), normalBelow(Number.POSITIVE_INFINITY)]).toEqual([0, 1]);
    expect(() => normalBelow(Number.NaN)).toThrow(GaugeError);
    expect(() => normalQuantile(0)).toThrow('between 0 and 1');
    expect(() => normalQuantile(1)).toThrow('between 0 and 1');
  });
});

describe('the incomplete beta function and Student’s t', () => {
  it('agree with an independent library within that library’s 1e-7', () => {
    for (const a of [0.5, 1, 2.5, 8, 40])
      for (const b of [0.5, 1, 3, 25])
        for (const x of from(0.02, 0.98, 24))
          expect(Math.abs(incompleteBeta(x, a, b) - jStat.ibeta(x, a, b))).toBeLessThan(3e-7);
    for (const nu of [1, 2, 5, 16.7, 50])
      for (const t of from(-6, 6, 48))
        expect(Math.abs(studentBelow(t, nu) - jStat.studentt.cdf(t, nu))).toBeLessThan(3e-7);
  });

  // thirty-digit arithmetic, rounded: t, degrees of freedom, probability, absolute bound
  const exact: [number, number, number, number][] = [
    [-1, 1, 0.25, 1e-14],
    [-2.5, 3.7, 0.03591101145591338, 1e-14],
    [-10, 16.7, 9.171198561099906e-9, 1e-20],
    [-0.001, 5, 0.4996203933860988, 1e-12],
    [-50, 2, 0.00019988007994404028, 1e-15],
    [-1.5, 1e4, 0.06682298591180981, 1e-12],
    [-1.5, 1e6, 0.06680735911839639, 2e-10],
  ];
  for (const [t, nu, p, bound] of exact)
    it(`gives ${p} at t = ${t}, ν = ${nu}, as stated to ${bound}`, () =>
      expect(Math.abs(studentBelow(t, nu) - p)).toBeLessThan(bound));

  it('one degree of freedom is the Cauchy distribution', () => {
    for (const t of from(-9, 9, 36)) expect(studentBelow(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 13);
  });

  it('quantile and distribution undo each other', () => {
    for (const nu of [1, 2.5, 7, 100])
      for (const p of [0.005, 0.1, 0.5, 0.95, 0.9995])
        expect(Math.abs(studentBelow(studentQuantile(p, nu), nu) - p)).toBeLessThan(1e-13);
  });

  it('logarithm of gamma: Γ(½) = √π, Γ(11) = 10!', () => {
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 14);
    expect(Math.exp(logGamma(11))).toBeCloseTo(3_628_800, 6);
  });

  it('refuse degrees of freedom and arguments that cannot be', () => {
    expect(() => studentBelow(1, 0)).toThrow('above 0');
    expect(() => studentQuantile(1.2, 3)).toThrow('between 0 and 1');
    expect(() => incompleteBeta(1.5, 1, 1)).toThrow('from 0 to 1');
    expect(() => incompleteBeta(0.5, 0, 1)).toThrow('above 0');
    expect(() => logGamma(0)).toThrow('above 0');
  });
});

describe('the range of n errors', () => {
  it('agrees with the studentized range of an independent library at many degrees of freedom', () => {
    for (const n of [2, 3, 9]) {
      // the library's own error there is about 5e-5
      for (const q of [1, 2.5, 4])
        expect(Math.abs(noiseRangeBelow(q, n) - jStat.tukey.cdf(q, n, 1e6))).toBeLessThan(2e-4);
    }
  });

  it('for two errors is the closed form 2Φ(q/√2) − 1', () => {
    for (const q of from(0.1, 7, 30))
      expect(noiseRangeBelow(q, 2)).toBeCloseTo(2 * normalBelow(q / Math.SQRT2) - 1, 10);
  });

  it('averages 2/√π for two and 3/√π for three', () => {
    expect(meanNoiseRange(2)).toBeCloseTo(2 / Math.sqrt(Math.PI), 9);
    expect(meanNoiseRange(3)).toBeCloseTo(3 / Math.sqrt(Math.PI), 9);
  });

  it('grows with the number of readings', () => {
    const within = [2, 3, 5, 9, 20, 200].map((n) => noiseRangeBelow(4, n));
    expect(within).toEqual([...within].sort((a, b) => b - a));
  });

  it('refuses a count that is none', () => expect(() => noiseRangeBelow(1, 2.5)).toThrow('whole number'));
});
