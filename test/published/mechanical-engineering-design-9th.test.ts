import { describe, expect, test } from 'vitest';
import { type Condition, conditions, factorsFor, nutFactors } from '../../src/fasten/friction.js';
import { strengthOf } from '../../src/fasten/grades.js';
import { longFormTorque } from '../../src/fasten/long-form.js';
import { boltStressMpa, jointConstant, proofShares, torqueForBolt } from '../../src/fasten/preload.js';
import { minorExternalMm, mmPerInch, stressAreaMm2 } from '../../src/fasten/thread-form.js';
import { threads } from '../../src/fasten/threads.js';
import { clampRange, torqueForClamp } from '../../src/fasten/torque.js';

const newtonPerLbf = 4.4482216152605;
const nmPerLbfIn = newtonPerLbf * 0.0254;
const mpaPerKsi = 6.894757293168361;
const threeQuarter16 = { system: 'inch', majorMm: 0.75 * mmPerInch, pitchMm: mmPerInch / 16 } as const;
const preloadN = 25_000 * newtonPerLbf;
const named = (name: string) => threads.find((each) => each.name === name)!;

describe('Mechanical Engineering Design, 9th ed., Table 8-15', () => {
  test.each([
    ['bare-dry', 0.3],
    ['zinc-dry', 0.2],
    ['oiled', 0.18],
    ['cadmium', 0.16],
    ['anti-seize', 0.12],
    ['locknut', 0.09],
  ] as const)('%s: K %f (seen)', (condition, k) => {
    const own = nutFactors.find((row) => row.condition === condition && row.source.includes('Table 8-15'));
    expect(own?.k).toBe(k);
  });

  test('every condition has a figure of this table beside those of other sources (seen)', () => {
    for (const condition of Object.keys(conditions) as Condition[]) {
      expect(factorsFor(condition).rows.some(({ source }) => source.includes('Table 8-15'))).toBe(true);
    }
  });
});

describe('Mechanical Engineering Design, 9th ed., Example 8-3: 3/4-16 grade 5, 25 kip', () => {
  test('tensile stress area 0.373 in² (seen)', () => {
    expect(stressAreaMm2(threeQuarter16) / mmPerInch ** 2).toBeCloseTo(0.373, 3);
  });

  test('root diameter by d − 1.299038·P is 0.6688 in (calculated)', () => {
    expect(minorExternalMm(threeQuarter16, 'sharp-root') / mmPerInch).toBeCloseTo(0.6688, 4);
  });

  test('preload stress 67.02 ksi, on the printed area (seen)', () => {
    const stress = boltStressMpa({ preloadN, outerN: 0, constant: 0, areaMm2: 0.373 * mmPerInch ** 2 });
    expect(stress / mpaPerKsi).toBeCloseTo(67.02, 2);
  });

  test('joint constant 6.5/(6.5 + 13.8) = 0.320 (seen)', () => {
    expect(jointConstant(6.5, 13.8)).toBeCloseTo(0.32, 3);
  });

  test('bolt stress 72.17 ksi under 6 kip, on the printed constant and area (seen)', () => {
    const stress = boltStressMpa({
      preloadN,
      outerN: 6000 * newtonPerLbf,
      constant: 0.32,
      areaMm2: 0.373 * mmPerInch ** 2,
    });
    expect(stress / mpaPerKsi).toBeCloseTo(72.17, 2);
  });

  test('(b) T = 0.20·25 000·0.75 = 3750 lbf·in (inputs seen, answer from memory, recomputed)', () => {
    const torqueNm = torqueForClamp({ clampN: preloadN, nutFactor: 0.2, majorMm: threeQuarter16.majorMm });
    expect(torqueNm / nmPerLbfIn).toBeCloseTo(3750, 6);
  });

  test('(c) long form with f = fc = 0.15: 3551 lbf·in (inputs seen, answer from memory, recomputed)', () => {
    const torqueNm = longFormTorque(threeQuarter16, preloadN, { thread: 0.15, collar: 0.15 });
    expect(Math.abs(torqueNm / nmPerLbfIn - 3551)).toBeLessThan(0.6);
  });
});

describe('Mechanical Engineering Design, 9th ed., Table 8-14: ten lubricated bolts at 90 N·m', () => {
  /** kN, M12×1.25 (rows from memory; their mean and spread seen) */
  const found = [30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5];
  const mean = found.reduce((a, b) => a + b) / found.length;
  const sd = Math.sqrt(found.reduce((s, x) => s + (x - mean) ** 2, 0) / (found.length - 1));

  test('mean 34.18 kN, standard deviation 2.88 kN (seen)', () => {
    expect(mean).toBeCloseTo(34.18, 2);
    expect(sd).toBeCloseTo(2.88, 2);
  });

  test('all ten lie within the ±25 % that a torque wrench is given round their mean (seen)', () => {
    const [least, most] = clampRange(mean);
    expect(found.every((each) => each > least && each < most)).toBe(true);
  });

  test('the published K 0.18 for lubricated threads is within their scatter: two standard deviations of 90/(F·d) (seen)', () => {
    const factors = found.map((kilonewton) => 90 / (kilonewton * 1000 * 0.012));
    expect(Math.min(...factors)).toBeLessThan(0.1856);
    expect(0.18).toBeGreaterThan(90 / ((mean + 3 * sd) * 1000 * 0.012));
  });
});

describe('solutions manual to Mechanical Engineering Design, 9th ed., ch. 8', () => {
  test('3/8-24 grade 5, K 0.18, three quarters of proof: 378 lbf·in (seen)', () => {
    const form = named('3/8-24');
    const { torqueNm } = torqueForBolt({
      form,
      strength: strengthOf('SAE 5', form),
      nutFactor: factorsFor('oiled').taken.k,
      share: proofShares.reusable,
    });
    expect(Math.abs(torqueNm / nmPerLbfIn - 378)).toBeLessThan(0.6);
  });
});

describe('Eq. 8-27 with 8-31: three quarters of proof, K 0.20', () => {
  test.each([
    ['1/4-20', 2027, 101.4],
    ['5/16-18', 3340, 208.8],
    ['3/8-16', 4941, 370.5],
    ['7/16-14', 6777, 593],
    ['1/2-13', 9046, 904.6],
  ] as const)('%s SAE 5: %i lbf and %f lbf·in (calculated on rounded areas)', (name, lbf, lbfIn) => {
    const form = named(name);
    const found = torqueForBolt({ form, strength: strengthOf('SAE 5', form), nutFactor: 0.2, share: 0.75 });
    expect(Math.abs(found.clampN / newtonPerLbf / lbf - 1)).toBeLessThan(0.001);
    expect(Math.abs(found.torqueNm / nmPerLbfIn / lbfIn - 1)).toBeLessThan(0.001);
  });

  test.each([
    ['M5×0.8', 6177, 6.18],
    ['M6×1', 8744, 10.49],
    ['M8×1.25', 15_921, 25.5],
    ['M10×1.5', 25_230, 50.5],
    ['M12×1.75', 36_670, 88],
  ] as const)('%s class 8.8: %i N and %f N·m (calculated on rounded areas)', (name, newton, newtonMeter) => {
    const form = named(name);
    const found = torqueForBolt({ form, strength: strengthOf('8.8', form), nutFactor: 0.2, share: 0.75 });
    expect(Math.abs(found.clampN / newton - 1)).toBeLessThan(0.002);
    expect(Math.abs(found.torqueNm / newtonMeter - 1)).toBeLessThan(0.002);
  });
});
