import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { budget, GaugeError, repeats, type UncertaintySource } from '../../src/gauge/index.js';
import { scattersTooMuch } from '../../src/gauge/pooled.js';
import { normals, times } from './seeded.js';

describe('repeats', () => {
  it('keep their digits however far from zero they lie', () => {
    const far = repeats([1e9 + 2, 1e9 + 4, 1e9 + 6]);
    expect(far.mean).toBe(1e9 + 4);
    expect(far.sd).toBeCloseTo(2, 12);
  });

  it('a single reading has no scatter and no degrees of freedom', () =>
    expect(repeats([7])).toEqual({ count: 1, mean: 7, sd: 0, degreesOfFreedom: 0, u: 0 }));

  it('move with a shift and stretch with a unit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 2, maxLength: 20 }),
        (values) => {
          const plain = repeats(values);
          const changed = repeats(values.map((value) => 25.4 * value + 3));
          expect(changed.mean).toBeCloseTo(25.4 * plain.mean + 3, 8);
          expect(changed.sd).toBeCloseTo(25.4 * plain.sd, 8);
        },
      ),
      { seed: 99, numRuns: 200 },
    );
  });

  it('are suspicious when two differ by more than √2 of the tool’s uncertainty', () => {
    expect(scattersTooMuch([1, 1.41], 0.3)).toBe(false);
    expect(scattersTooMuch([1, 1.43], 0.3)).toBe(true);
  });

  it('refuse an empty list and NaN', () => {
    expect(() => repeats([])).toThrow('At least one reading');
    expect(() => repeats([1, Number.NaN])).toThrow(GaugeError);
  });
});

describe('an uncertainty budget', () => {
  const line = (from: UncertaintySource, sensitivity = 1) => ({ name: from.type, from, sensitivity });

  it('turns half-widths into standard uncertainties: √3, √6, √2', () => {
    const u = (type: 'rectangular' | 'triangular' | 'arcsine') => budget([line({ type, half: 6 })]).u;
    expect(u('rectangular')).toBeCloseTo(6 / Math.sqrt(3), 12);
    expect(u('triangular')).toBeCloseTo(6 / Math.sqrt(6), 12);
    expect(u('arcsine')).toBeCloseTo(6 / Math.SQRT2, 12);
  });

  it('half-widths mean the variance of their distribution, drawn 20 000 times', () => {
    const draw = times(20_000, (i) => (i + 0.5) / 20_000);
    const sd = (values: number[]) =>
      Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
    expect(sd(draw.map((p) => 2 * p - 1))).toBeCloseTo(1 / Math.sqrt(3), 4);
    expect(sd(draw.map((p) => Math.sin(Math.PI * (2 * p - 1))))).toBeCloseTo(1 / Math.SQRT2, 4);
    expect(sd(draw.map((p) => (p < 0.5 ? Math.sqrt(2 * p) - 1 : 1 - Math.sqrt(2 - 2 * p))))).toBeCloseTo(
      1 / Math.sqrt(6),
      4,
    );
  });

  it('adds squares of sensitivity times uncertainty; the shares add up to one', () => {
    const { u, shares } = budget([line({ type: 'standard', u: 3 }, 1), line({ type: 'standard', u: 2 }, -2)]);
    expect(u).toBe(5);
    expect(shares.map(({ share }) => Number(share.toFixed(12)))).toEqual([0.36, 0.64]);
  });

  it('one source alone keeps its degrees of freedom; two equal ones have twice as many', () => {
    const one = line({ type: 'standard', u: 1, degreesOfFreedom: 4 });
    expect(budget([one]).effectiveDegreesOfFreedom).toBeCloseTo(4, 12);
    expect(budget([one, one]).effectiveDegreesOfFreedom).toBeCloseTo(8, 12);
  });

  it('its 95 % interval holds the true value 95 % of the time, with three repeats and a known instrument', () => {
    const draw = normals(1234);
    let held = 0;
    for (let i = 0; i < 4000; i += 1) {
      const instrument = 0.5 * draw();
      const readings = times(3, () => instrument + draw());
      const { expanded } = budget([line({ type: 'repeats', readings }), line({ type: 'standard', u: 0.5 })]);
      if (Math.abs(repeats(readings).mean) <= expanded) held += 1;
    }
    // the approximation of Welch and Satterthwaite is good to about 2 %
    expect(held / 4000).toBeGreaterThan(0.93);
    expect(held / 4000).toBeLessThan(0.985);
  });

  it('all inputs known exactly: no uncertainty, unbounded degrees of freedom', () => {
    const none = budget([line({ type: 'standard', u: 0 })]);
    expect(none).toMatchObject({ u: 0, expanded: 0, effectiveDegreesOfFreedom: Number.POSITIVE_INFINITY });
  });

  const refused: [string, UncertaintySource][] = [
    ['two readings', { type: 'repeats', readings: [1] }],
    ['u cannot be below 0', { type: 'standard', u: -1 }],
    ['k must be above 0', { type: 'expanded', U: 1, k: 0 }],
    ['half must be a number', { type: 'rectangular', half: Number.NaN }],
    ['degrees of freedom', { type: 'standard', u: 1, degreesOfFreedom: 0 }],
  ];
  for (const [message, from] of refused)
    it(`refuses a line (${message})`, () => expect(() => budget([line(from)])).toThrow(message));
  it('refuses no lines and an impossible coverage', () => {
    expect(() => budget([])).toThrow('at least one line');
    expect(() => budget([line({ type: 'standard', u: 1 })], 95)).toThrow('coverage');
  });
});
