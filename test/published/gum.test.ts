import { describe, expect, it } from 'vitest';
import { type BudgetLine, budget, coverageFactor } from '../../src/gauge/index.js';

/** JCGM 100:2008, H.1: an end gauge of nominally 50 mm compared with a standard. Inputs and results read in the Guide. */
describe('Guide to the Expression of Uncertainty in Measurement (JCGM 100:2008), H.1, read', () => {
  const standardNm = 50_000_623;
  const differenceNm = 215;
  const alpha = 11.5e-6;
  const theta = -0.1;

  const difference: BudgetLine[] = [
    { name: 'repeats', from: { type: 'scatter', sd: 13, count: 5, degreesOfFreedom: 24 } },
    { name: 'random effects of the comparator', from: { type: 'standard', u: 3.9, degreesOfFreedom: 5 } },
    {
      name: 'systematic effects of the comparator',
      from: { type: 'expanded', U: 20, k: 3, degreesOfFreedom: 8 },
    },
  ];
  const d = budget(difference);

  it('the difference: components 5.8, 3.9 and 6.7 nm, together 9.7 nm with 25.6 degrees of freedom', () => {
    expect(d.shares.map(({ u }) => Number(u.toFixed(1)))).toEqual([5.8, 3.9, 6.7]);
    expect(d.u).toBeCloseTo(9.7, 1);
    expect(Math.abs(d.effectiveDegreesOfFreedom - 25.6)).toBeLessThan(0.1);
  });

  const whole = budget(
    [
      { name: 'standard', from: { type: 'expanded', U: 75, k: 3, degreesOfFreedom: 18 } },
      {
        name: 'difference',
        from: { type: 'standard', u: d.u, degreesOfFreedom: d.effectiveDegreesOfFreedom },
      },
      { name: 'expansion of the standard', from: { type: 'rectangular', half: 2e-6 }, sensitivity: 0 },
      { name: 'temperature of the bench', from: { type: 'standard', u: 0.41 }, sensitivity: 0 },
      {
        name: 'difference of expansion',
        from: { type: 'rectangular', half: 1e-6, doubt: 0.1 },
        sensitivity: -standardNm * theta,
      },
      {
        name: 'difference of temperature',
        from: { type: 'rectangular', half: 0.05, doubt: 0.5 },
        sensitivity: -standardNm * alpha,
      },
    ],
    0.99,
  );

  it('standard uncertainties of the inputs: 25 nm, 1.2e-6, 0.58e-6, 0.029 K with 18, ∞, 50, 2 degrees of freedom', () => {
    const [standard, , expansion, , differenceOfExpansion, differenceOfTemperature] = whole.shares;
    expect(standard).toMatchObject({ u: 25, degreesOfFreedom: 18 });
    expect(expansion!.u).toBeCloseTo(1.2e-6, 7);
    expect(differenceOfExpansion!.u).toBeCloseTo(0.58e-6, 8);
    expect(differenceOfExpansion!.degreesOfFreedom).toBeCloseTo(50, 9);
    expect(differenceOfTemperature!.u).toBeCloseTo(0.029, 3);
    expect(differenceOfTemperature!.degreesOfFreedom).toBeCloseTo(2, 9);
  });

  it('the cycling of the bench, ±0.5 °C, is an arcsine of 0.35 °C, and 0.41 °C with the 0.2 °C of its mean', () => {
    const { u, shares } = budget([
      { name: 'cycle', from: { type: 'arcsine', half: 0.5 } },
      { name: 'mean', from: { type: 'standard', u: 0.2 } },
    ]);
    expect(shares[0]!.u).toBeCloseTo(0.35, 2);
    expect(u).toBeCloseTo(0.41, 2);
  });

  it('contributions 25, 9.7, 0, 0, 2.9 and 16.6 nm', () => {
    const printed = [25, 9.7, 0, 0, 2.9, 16.6];
    for (const [i, { contribution }] of whole.shares.entries())
      expect(Math.abs(contribution - printed[i]!)).toBeLessThanOrEqual(0.05);
  });

  it('length 50 000 838 nm, standard uncertainty 32 nm, 16 degrees of freedom', () => {
    expect(standardNm + differenceNm).toBe(50_000_838);
    expect(whole.u.toFixed(0)).toBe('32');
    expect(Math.floor(whole.effectiveDegreesOfFreedom)).toBe(16);
    expect(whole.effectiveDegreesOfFreedom).toBeCloseTo(16.7, 0);
  });

  it('coverage factor 2.92 and, from the rounded 32 nm as the Guide does, expanded uncertainty 93 nm at 99 %', () => {
    expect(whole.k.toFixed(2)).toBe('2.92');
    expect((whole.k * Number(whole.u.toFixed(0))).toFixed(0)).toBe('93');
    // not rounded in between it is 92.5 nm
    expect(whole.expanded).toBeCloseTo(92.5, 1);
  });
});

describe('Guide to the Expression of Uncertainty in Measurement, H.1.7, from memory', () => {
  it('with the terms of second order 34 nm instead of 32: where an estimate is zero its product still doubts', () => {
    const lengthNm = 50_000_838;
    const [uDifferenceOfExpansion, uTheta, uAlpha, uDifferenceOfTemperature] = [0.58e-6, 0.41, 1.2e-6, 0.029];
    const { u } = budget([
      { name: 'first order', from: { type: 'standard', u: 31.71 } },
      {
        name: 'difference of expansion by temperature',
        from: { type: 'standard', u: uTheta },
        sensitivity: lengthNm * uDifferenceOfExpansion,
      },
      {
        name: 'expansion by difference of temperature',
        from: { type: 'standard', u: uAlpha },
        sensitivity: lengthNm * uDifferenceOfTemperature,
      },
    ]);
    expect(u.toFixed(0)).toBe('34');
  });
});

describe('Guide to the Expression of Uncertainty in Measurement, 4.3.7, 4.3.9 and 4.4.6, from memory', () => {
  it('a rectangle of half-width a: a/√3; a triangle: a/√6; an arcsine: a/√2', () => {
    const u = (type: 'rectangular' | 'triangular' | 'arcsine') =>
      budget([{ name: type, from: { type, half: 1 } }]).u;
    expect(u('rectangular')).toBeCloseTo(0.57735, 5);
    expect(u('triangular')).toBeCloseTo(0.40825, 5);
    expect(u('arcsine')).toBeCloseTo(1 / Math.SQRT2, 9);
  });
});

describe('Guide to the Expression of Uncertainty in Measurement, table G.2, from memory', () => {
  const rows: [degrees: number, p95: number, p99: number][] = [
    [1, 12.71, 63.66],
    [2, 4.3, 9.92],
    [3, 3.18, 5.84],
    [5, 2.57, 4.03],
    [8, 2.31, 3.36],
    [10, 2.23, 3.17],
    [16, 2.12, 2.92],
    [20, 2.09, 2.85],
    [50, 2.01, 2.68],
    [100, 1.984, 2.626],
  ];
  for (const [degrees, p95, p99] of rows)
    it(`${degrees} degrees of freedom: ${p95} at 95 %, ${p99} at 99 %`, () => {
      const half = degrees === 100 ? 5e-4 : 5e-3;
      expect(Math.abs(coverageFactor(0.95, degrees) - p95)).toBeLessThanOrEqual(half);
      expect(Math.abs(coverageFactor(0.99, degrees) - p99)).toBeLessThanOrEqual(half);
    });

  it('an infinite number: 1.960 and 2.576; a broken one goes down to the whole number below', () => {
    expect(coverageFactor(0.95, Number.POSITIVE_INFINITY)).toBeCloseTo(1.96, 3);
    expect(coverageFactor(0.99, Number.POSITIVE_INFINITY)).toBeCloseTo(2.576, 3);
    expect(coverageFactor(0.95, 16.99)).toBe(coverageFactor(0.95, 16));
  });
});
