import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, GaugeError, type Limit, normalQuantile } from '../../src/gauge/index.js';
import { normals } from './seeded.js';

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const seed = { seed: 20_250_611, numRuns: 500 };

describe('a decision', () => {
  it('needs a guard band of 1.645 u at a one-sided limit', () => {
    const at = (distance: number) => decide({ value: 10 - distance, u: 1, limit: { max: 10 } }).verdict;
    expect([at(1.646), at(1.644), at(-1.644), at(-1.646)]).toEqual([
      'pass',
      'cannot-decide',
      'cannot-decide',
      'fail',
    ]);
  });

  it('turns around with its signs: a maximum is a minimum seen in a mirror', () => {
    fc.assert(
      fc.property(finite(-10, 10), finite(0.01, 5), finite(-10, 10), (value, u, max) => {
        const plain = decide({ value, u, limit: { max } });
        const mirrored = decide({ value: -value, u, limit: { min: -max } });
        expect(mirrored.verdict).toBe(plain.verdict);
        expect(mirrored.probabilityOfConformity).toBe(plain.probabilityOfConformity);
      }),
      seed,
    );
  });

  it('does not depend on the unit', () => {
    fc.assert(
      fc.property(finite(-10, 10), finite(0.01, 5), finite(-5, 0), finite(0.1, 5), (value, u, min, max) => {
        const inch = decide({ value, u, limit: { min, max } });
        const metric = decide({
          value: value * 25.4,
          u: u * 25.4,
          limit: { min: min * 25.4, max: max * 25.4 },
        });
        expect(metric.probabilityOfConformity).toBeCloseTo(inch.probabilityOfConformity, 12);
      }),
      seed,
    );
  });

  it('two limits are never met more surely than one of them', () => {
    fc.assert(
      fc.property(finite(-10, 10), finite(0.01, 5), finite(-5, 0), finite(0.1, 5), (value, u, min, max) => {
        const both = decide({ value, u, limit: { min, max } }).probabilityOfConformity;
        expect(both).toBeLessThanOrEqual(
          decide({ value, u, limit: { min } }).probabilityOfConformity + 1e-15,
        );
        expect(both).toBeLessThanOrEqual(
          decide({ value, u, limit: { max } }).probabilityOfConformity + 1e-15,
        );
      }),
      seed,
    );
  });

  it('without uncertainty compares exactly, counts the limit as met, and says so', () => {
    const on = decide({ value: 2.564 - 2.558, u: 0, limit: { max: 0.006 } });
    expect(on.verdict).toBe('pass');
    expect(on.words).toContain('exact comparison');
    expect(decide({ value: 0.0061, u: 0, limit: { max: 0.006 } })).toMatchObject({
      verdict: 'fail',
      probabilityOfConformity: 0,
    });
    expect(decide({ value: 5, u: 0, limit: { min: 5, max: 5 } }).verdict).toBe('pass');
  });

  it('a hopeless tool never fails a part in the middle of its limits, and says that it can never pass one', () => {
    const decision = decide({ value: 0, u: 100, limit: { min: -1, max: 1 } });
    expect(decision).toMatchObject({ verdict: 'cannot-decide', canEverPass: false });
    expect(decision.words).toContain('too coarse');
  });

  it('with few degrees of freedom asks for more distance', () => {
    const at = (degreesOfFreedom?: number) =>
      decide({ value: 8, u: 1, limit: { max: 10 }, degreesOfFreedom }).probabilityOfConformity;
    expect(at(2)).toBeCloseTo(0.9082, 4);
    expect(at()).toBeCloseTo(0.97725, 5);
    expect(at(2)).toBeLessThan(at(20));
  });

  it('gives its reason in words with the unit', () => {
    expect(decide({ value: 0.0055, u: 0.0003, limit: { max: 0.005 }, unit: 'in' }).words).toBe(
      'Fail: 0.0055 in lies 0.0005 in outside the limit (at most 0.005 in). With u = 0.0003 in, the chance that it conforms is 4.8 %.',
    );
  });

  const refused: [string, Parameters<typeof decide>[0]][] = [
    ['value', { value: Number.NaN, u: 1, limit: { max: 1 } }],
    ['u', { value: 1, u: -1, limit: { max: 1 } }],
    ['u', { value: 1, u: Number.POSITIVE_INFINITY, limit: { max: 1 } }],
    ['limit', { value: 1, u: 1, limit: {} }],
    ['limit', { value: 1, u: 1, limit: { min: 2, max: 1 } }],
    ['limit.max', { value: 1, u: 1, limit: { max: Number.NaN } }],
    ['confidence', { value: 1, u: 1, limit: { max: 1 }, confidence: 95 }],
    ['degreesOfFreedom', { value: 1, u: 1, limit: { max: 1 }, degreesOfFreedom: 0.5 }],
  ];
  for (const [field, measured] of refused)
    it(`refuses a wrong ${field} and names it (${JSON.stringify(measured)})`, () => {
      try {
        decide(measured);
        expect.unreachable();
      } catch (error) {
        expect(error).toBeInstanceOf(GaugeError);
        expect((error as GaugeError).field).toBe(field);
      }
    });
});

describe('the promise of 95 %, in 1e5 seeded simulations each', () => {
  /** How often a part of this true value gets this verdict. */
  const rate = (truth: number, limit: Limit, verdict: string, seedOf: number, u = 1) => {
    const draw = normals(seedOf);
    let hits = 0;
    for (let i = 0; i < 100_000; i += 1)
      if (decide({ value: truth + u * draw(), u, limit }).verdict === verdict) hits += 1;
    return hits / 100_000;
  };
  // three standard deviations of a rate of 5 % over 1e5 draws
  const slack = 3 * Math.sqrt((0.05 * 0.95) / 100_000);

  it('a part just beyond a one-sided limit is passed at most 5 % of the time, and about that often', () => {
    const falseAccept = rate(10, { max: 10 }, 'pass', 1);
    expect(falseAccept).toBeLessThanOrEqual(0.05 + slack);
    expect(falseAccept).toBeGreaterThan(0.045);
  });

  it('a part just beyond either of two limits is passed at most 5 % of the time, for narrow and wide limits', () => {
    for (const [i, width] of [3.5, 5, 20].entries()) {
      expect(rate(width, { min: 0, max: width }, 'pass', 10 + i)).toBeLessThanOrEqual(0.05 + slack);
      expect(rate(0, { min: 0, max: width }, 'pass', 20 + i)).toBeLessThanOrEqual(0.05 + slack);
    }
  });

  it('a part on a one-sided limit is failed at most 5 % of the time', () => {
    expect(rate(10, { max: 10 }, 'fail', 3)).toBeLessThanOrEqual(0.05 + slack);
  });

  it('over a whole lot the parts passed wrongly stay under 5 % of the bad ones', () => {
    const draw = normals(5);
    let [bad, accepted] = [0, 0];
    for (let i = 0; i < 100_000; i += 1) {
      const truth = 3 * draw();
      const { verdict } = decide({ value: truth + draw(), u: 1, limit: { max: 2 } });
      if (truth <= 2) continue;
      bad += 1;
      if (verdict === 'pass') accepted += 1;
    }
    expect(bad).toBeGreaterThan(20_000);
    expect(accepted / bad).toBeLessThan(0.05);
  });

  it('holds with Student’s t when the scatter itself is only estimated from three readings', () => {
    const draw = normals(7);
    let hits = 0;
    for (let i = 0; i < 100_000; i += 1) {
      const [a, b, c] = [draw(), draw(), draw()];
      const mean = (a + b + c) / 3;
      const sd = Math.sqrt(((a - mean) ** 2 + (b - mean) ** 2 + (c - mean) ** 2) / 2);
      const decision = decide({ value: mean, u: sd / Math.sqrt(3), limit: { max: 0 }, degreesOfFreedom: 2 });
      if (decision.verdict === 'pass') hits += 1;
    }
    expect(hits / 100_000).toBeLessThanOrEqual(0.05 + slack);
    expect(hits / 100_000).toBeGreaterThan(0.045);
  });

  it('keeps another promise too: 99 %', () => {
    const draw = normals(11);
    let hits = 0;
    for (let i = 0; i < 100_000; i += 1)
      if (decide({ value: 10 + draw(), u: 1, limit: { max: 10 }, confidence: 0.99 }).verdict === 'pass')
        hits += 1;
    expect(hits / 100_000).toBeLessThanOrEqual(0.01 + 3 * Math.sqrt(0.0099 / 100_000));
    expect(normalQuantile(0.99)).toBeCloseTo(2.3263, 4);
  });
});
