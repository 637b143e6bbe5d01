import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intoAluminum, neededEngagementMm } from '../../src/fasten/aluminum.js';
import { conditions, factorsFor, nutFactors } from '../../src/fasten/friction.js';
import { strengthOf } from '../../src/fasten/grades.js';
import { longFormClamp, longFormTorque, torqueParts } from '../../src/fasten/long-form.js';
import { correctForLubricant } from '../../src/fasten/lubricant.js';
import { proofShares, torqueForBolt } from '../../src/fasten/preload.js';
import { threads } from '../../src/fasten/threads.js';
import { clampForTorque, clampRange, torqueForClamp } from '../../src/fasten/torque.js';
import { parseThread } from '../../src/quantity/index.js';

const seed = { seed: 20_240_602 };
const thread = fc.constantFrom(...threads);
const newton = fc.double({ min: 1, max: 1e6, noNaN: true });
const nutFactor = fc.double({ min: 0.05, max: 0.5, noNaN: true });
const coefficient = fc.double({ min: 0, max: 0.6, noNaN: true });

describe('torque and clamp load by K', () => {
  test('the clamp load of a torque takes that torque', () => {
    fc.assert(
      fc.property(thread, newton, nutFactor, ({ majorMm }, clampN, k) => {
        const torqueNm = torqueForClamp({ clampN, nutFactor: k, majorMm });
        expect(clampForTorque({ torqueNm, nutFactor: k, majorMm }) / clampN).toBeCloseTo(1, 10);
      }),
      seed,
    );
  });

  test('the range lies evenly round the clamp load', () => {
    const [least, most] = clampRange(800);
    expect((least + most) / 2).toBe(800);
    expect(clampRange(800, 0.5)).toEqual([400, 1200]);
  });

  test.each([
    ['clamp', { clampN: 0, nutFactor: 0.2, majorMm: 8 }],
    ['clamp', { clampN: Number.NaN, nutFactor: 0.2, majorMm: 8 }],
    ['k', { clampN: 1, nutFactor: 2, majorMm: 8 }],
    ['thread', { clampN: 1, nutFactor: 0.2, majorMm: -8 }],
  ] as const)('a senseless %s is refused by name', (field, given) => {
    expect(() => torqueForClamp(given)).toThrow(expect.objectContaining({ field }));
  });
});

describe('the long form', () => {
  test('both ways are one relation', () => {
    fc.assert(
      fc.property(thread, newton, coefficient, coefficient, (form, clampN, f, fc_) => {
        const friction = { thread: f, collar: fc_ };
        const torqueNm = longFormTorque(form, clampN, friction);
        expect(longFormClamp(form, torqueNm, friction) / clampN).toBeCloseTo(1, 10);
      }),
      seed,
    );
  });

  test('more friction anywhere takes more torque', () => {
    fc.assert(
      fc.property(
        thread,
        coefficient,
        coefficient,
        fc.double({ min: 1e-4, max: 0.1, noNaN: true }),
        (form, f, g, more) => {
          fc.pre(f + more <= 0.6 && g + more <= 0.6);
          const base = longFormTorque(form, 1000, { thread: f, collar: g });
          expect(longFormTorque(form, 1000, { thread: f + more, collar: g })).toBeGreaterThan(base);
          expect(longFormTorque(form, 1000, { thread: f, collar: g + more })).toBeGreaterThan(base);
        },
      ),
      seed,
    );
  });

  test('with f = fc = 0.15 the short form’s K of 0.20 is met within 10 % for every listed thread', () => {
    for (const form of threads) {
      const k = longFormTorque(form, 1000, { thread: 0.15, collar: 0.15 }) / form.majorMm;
      expect(k, form.name).toBeGreaterThan(0.18);
      expect(k, form.name).toBeLessThan(0.22);
    }
  });

  test('about a tenth of the torque stretches the bolt', () => {
    const { stretchNm, threadNm, collarNm } = torqueParts(parseThread('5/16-18'), 10_000, {
      thread: 0.15,
      collar: 0.15,
    });
    const total = stretchNm + threadNm + collarNm;
    expect(stretchNm / total).toBeGreaterThan(0.08);
    expect(stretchNm / total).toBeLessThan(0.16);
    expect(collarNm / total).toBeGreaterThan(0.4);
  });

  test('a friction coefficient outside 0 to 0.6 is refused by name', () => {
    const form = parseThread('M8');
    expect(() => longFormTorque(form, 1000, { thread: -0.1, collar: 0.1 })).toThrow(
      expect.objectContaining({ field: 'f' }),
    );
    expect(() => longFormTorque(form, 1000, { thread: 0.1, collar: 0.7 })).toThrow(
      expect.objectContaining({ field: 'fc' }),
    );
    expect(() => longFormTorque(form, 1000, { thread: 0.1, collar: 0.1 }, 0)).toThrow(
      expect.objectContaining({ field: 'dc' }),
    );
  });
});

describe('nut factors', () => {
  test('every row carries a source, and every condition a figure that one of its rows prints', () => {
    for (const condition of Object.keys(conditions)) {
      const { taken, low, high, rows } = factorsFor(condition);
      expect(rows).toContain(taken);
      expect(taken.k).toBeGreaterThanOrEqual(low);
      expect(taken.k).toBeLessThanOrEqual(high);
    }
    expect(nutFactors.every(({ source }) => source.length > 10)).toBe(true);
  });

  test('of three sources the middle one is taken, of two the lower', () => {
    expect(factorsFor('zinc-dry').taken.k).toBe(0.2);
    expect(factorsFor('bare-dry').taken.k).toBe(0.2);
    expect(factorsFor('cadmium').taken.k).toBe(0.16);
  });

  test('an unknown condition is refused with the ones there are', () => {
    expect(() => factorsFor('greasy')).toThrow(/bare-dry, zinc-dry/);
  });
});

describe('preload', () => {
  const form = parseThread('5/16-18');
  const strength = strengthOf('SAE 5', form);

  test('a joint that comes apart takes five sixths of one that stays', () => {
    const at = (share: number) => torqueForBolt({ form, strength, nutFactor: 0.2, share }).torqueNm;
    expect(at(proofShares.reusable) / at(proofShares.permanent)).toBeCloseTo(5 / 6, 12);
  });

  test('with the scatter a reusable joint stays under proof and a permanent one may pass it', () => {
    const worst = (share: number) =>
      torqueForBolt({ form, strength, nutFactor: 0.2, share }).worstShareOfProof;
    expect(worst(proofShares.reusable)).toBeCloseTo(0.9375, 12);
    expect(worst(proofShares.permanent)).toBeCloseTo(1.125, 12);
  });

  test('a share outside 0.01 to 1 is refused by name', () => {
    expect(() => torqueForBolt({ form, strength, nutFactor: 0.2, share: 1.2 })).toThrow(
      expect.objectContaining({ field: 'share' }),
    );
  });
});

describe('lubricant', () => {
  test('corrected torque gives the clamp load that was meant', () => {
    fc.assert(
      fc.property(
        nutFactor,
        nutFactor,
        fc.double({ min: 0.5, max: 300, noNaN: true }),
        (given, now, torqueNm) => {
          const { setNm } = correctForLubricant({ torqueNm, factorGiven: given, factorNow: now });
          const meant = clampForTorque({ torqueNm, nutFactor: given, majorMm: 8 });
          expect(clampForTorque({ torqueNm: setNm, nutFactor: now, majorMm: 8 }) / meant).toBeCloseTo(1, 10);
        },
      ),
      seed,
    );
  });

  test('not corrected, the clamp load is off by the inverse of the correction', () => {
    const { setNm, clampIfNotCorrected } = correctForLubricant({
      torqueNm: 100,
      factorGiven: 0.2,
      factorNow: 0.12,
    });
    expect(setNm).toBeCloseTo(60, 12);
    expect(clampIfNotCorrected).toBeCloseTo(100 / 60, 12);
  });

  test('a factor outside 0.01 to 1 is refused by name', () => {
    expect(() => correctForLubricant({ torqueNm: 1, factorGiven: 0, factorNow: 0.1 })).toThrow(
      expect.objectContaining({ field: 'given' }),
    );
    expect(() => correctForLubricant({ torqueNm: 1, factorGiven: 0.1, factorNow: 5 })).toThrow(
      expect.objectContaining({ field: 'now' }),
    );
  });
});

describe('into aluminum', () => {
  test('exactly two diameters are enough, a hair less is not', () => {
    const at = (engagementMm: number) =>
      intoAluminum({ steelTorqueNm: 10, majorMm: 8, engagementMm }).engagedEnough;
    expect(at(16)).toBe(true);
    expect(at(15.99)).toBe(false);
    expect(intoAluminum({ steelTorqueNm: 10, majorMm: 8 }).engagedEnough).toBeUndefined();
  });

  test('aluminum needs more thread than iron', () => {
    expect(neededEngagementMm(8, 'aluminum')).toBe(16);
    expect(neededEngagementMm(8, 'iron')).toBe(10);
  });

  test('an engagement that is no length is refused by name', () => {
    expect(() => intoAluminum({ steelTorqueNm: 10, majorMm: 8, engagementMm: 0 })).toThrow(
      expect.objectContaining({ field: 'engagement' }),
    );
  });
});
