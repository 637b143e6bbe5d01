import { describe, expect, test } from 'vitest';
import { boltLoads, strengthOf } from '../../src/fasten/grades.js';
import {
  minorExternalMm,
  minorInternalMm,
  pitchDiameterMm,
  stressAreaMm2,
} from '../../src/fasten/thread-form.js';
import { boltDiameterLimits, nutBoreLimits } from '../../src/fasten/thread-limits.js';
import { threads } from '../../src/fasten/threads.js';

const named = (name: string) => {
  const thread = threads.find((each) => each.name === name);
  if (!thread) throw new Error(`${name} is not listed`);
  return thread;
};
const off = (a: number, b: number) => Math.abs(a - b);

describe('ISO 724: metric threads', () => {
  test.each([
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the printed d3 of M4 happens to look like π
    ['M4×0.7', 3.545, 3.242, 3.141],
    ['M5×0.8', 4.48, 4.134, 4.019],
    ['M6×1', 5.35, 4.917, 4.773],
    ['M8×1.25', 7.188, 6.647, 6.466],
    ['M8×1', 7.35, 6.917, 6.773],
    ['M10×1.5', 9.026, 8.376, 8.16],
    ['M10×1.25', 9.188, 8.647, 8.466],
    ['M12×1.75', 10.863, 10.106, 9.853],
    ['M14×1.25', 13.188, 12.647, 12.466],
  ] as const)('%s: d2 %f, D1 %f, d3 %f mm (from memory, recomputed)', (name, d2, d1, d3) => {
    const thread = named(name);
    expect(off(pitchDiameterMm(thread), d2)).toBeLessThan(0.00051);
    expect(off(minorInternalMm(thread), d1)).toBeLessThan(0.00051);
    expect(off(minorExternalMm(thread, 'iso-d3'), d3)).toBeLessThan(0.00051);
  });

  // ISO 965-1 rounds tolerances to preferred numbers, so the formula may be a hundredth off
  test('M8×1.25 6g measures 7.760 to 7.972 mm across (from memory)', () => {
    const { leastMm, mostMm } = boltDiameterLimits(named('M8×1.25'));
    expect(off(leastMm, 7.76)).toBeLessThan(0.01);
    expect(off(mostMm, 7.972)).toBeLessThan(0.001);
  });

  test.each([
    ['M6×1', 4.917, 5.153],
    ['M8×1.25', 6.647, 6.912],
  ] as const)('%s 6H has a bore of %f to %f mm (from memory)', (name, least, most) => {
    const { leastMm, mostMm } = nutBoreLimits(named(name));
    expect(off(leastMm, least)).toBeLessThan(0.001);
    expect(off(mostMm, most)).toBeLessThan(0.01);
  });
});

describe('ISO 898-1: tensile stress areas', () => {
  test.each([
    ['M3×0.5', 5.03],
    ['M3.5×0.6', 6.78],
    ['M4×0.7', 8.78],
    ['M5×0.8', 14.2],
    ['M6×1', 20.1],
    ['M7×1', 28.9],
    ['M8×1.25', 36.6],
    ['M10×1.5', 58],
    ['M12×1.75', 84.3],
    ['M14×2', 115],
  ] as const)('%s: %f mm² (seen)', (name, areaMm2) => {
    expect(Number(stressAreaMm2(named(name)).toPrecision(3))).toBe(areaMm2);
  });

  test.each([
    ['M8×1', 39.17],
    ['M10×1.25', 61.2],
    ['M12×1.25', 92.07],
    ['M14×1.5', 124.5],
  ] as const)('%s: %f mm², ASME B1.13M fine series (seen)', (name, areaMm2) => {
    expect(off(stressAreaMm2(named(name)), areaMm2)).toBeLessThan(areaMm2 > 100 ? 0.06 : 0.006);
  });

  test('M14×1.25: 129.2 mm² (calculated)', () => {
    expect(off(stressAreaMm2(named('M14×1.25')), 129.2)).toBeLessThan(0.06);
  });
});

describe('ISO 898-1: property classes', () => {
  const m10 = named('M10×1.5');

  test.each([
    ['4.6', 400, 240, 225],
    ['4.8', 420, 340, 310],
    ['5.6', 500, 300, 280],
    ['5.8', 520, 420, 380],
    ['6.8', 600, 480, 440],
    ['8.8', 800, 640, 580],
    ['9.8', 900, 720, 650],
    ['10.9', 1040, 940, 830],
    ['12.9', 1220, 1100, 970],
  ] as const)(
    'class %s at M10: tensile %i, yield %i, proof %i MPa (seen)',
    (grade, tensile, yields, proof) => {
      const { tensileMpa, yieldMpa, proofMpa } = strengthOf(grade, m10);
      expect([tensileMpa, yieldMpa, proofMpa]).toEqual([tensile, yields, proof]);
    },
  );

  test('class 8.8 above 16 mm: tensile 830, yield 660, proof 600 MPa; at 16 mm still 580 (seen)', () => {
    const m20 = { system: 'metric', majorMm: 20, pitchMm: 2.5 } as const;
    const m16 = { system: 'metric', majorMm: 16, pitchMm: 2 } as const;
    expect(strengthOf('8.8', m20)).toMatchObject({ tensileMpa: 830, yieldMpa: 660, proofMpa: 600 });
    expect(strengthOf('8.8', m16).proofMpa).toBe(580);
  });

  test.each([
    ['M6×1', 11_600],
    ['M8×1.25', 21_200],
    ['M10×1.5', 33_700],
    ['M12×1.75', 48_900],
  ] as const)('proof load of %s class 8.8 is %i N (from memory)', (name, newton) => {
    expect(off(boltLoads(named(name), strengthOf('8.8', named(name))).proofN, newton)).toBeLessThan(100);
  });

  test.each([
    ['M3×0.5', '4.6', 2010],
    ['M6×1', '8.8', 16_100],
    ['M8×1.25', '10.9', 38_100],
    ['M12×1.75', '12.9', 103_000],
  ] as const)('least breaking load of %s class %s is %i N (seen)', (name, grade, newton) => {
    const { tensileN } = boltLoads(named(name), strengthOf(grade, named(name)));
    expect(off(tensileN, newton) / newton).toBeLessThan(0.005);
  });
});
