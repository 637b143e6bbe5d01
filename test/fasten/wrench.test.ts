import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adapterSetting, appliedInterval } from '../../src/fasten/wrench.js';
import { fitWrench, type Wrench } from '../../src/fasten/wrench-fit.js';

const seed = { seed: 20_240_603 };
const wrench = (name: string, minNm: number, maxNm: number, accuracyPercent = 4): Wrench => ({
  tool: name,
  name,
  minNm,
  maxNm,
  accuracyPercent,
});

describe('adapters', () => {
  test('a setting worked out for a torque gives that torque', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 100, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (wantedNm, wrenchMm, adapterMm, angleDeg) => {
          const settingNm = adapterSetting({ wantedNm, wrenchMm, adapterMm, angleDeg });
          const lever = wrenchMm + adapterMm * Math.cos((angleDeg * Math.PI) / 180);
          expect((settingNm * lever) / wrenchMm / wantedNm).toBeCloseTo(1, 10);
        },
      ),
      seed,
    );
  });

  test('an adapter outward lowers the setting, inward raises it, square to the side leaves it', () => {
    const at = (angleDeg: number) => adapterSetting({ wantedNm: 10, wrenchMm: 300, adapterMm: 50, angleDeg });
    expect(at(0)).toBeLessThan(10);
    expect(at(180)).toBeGreaterThan(10);
    expect(at(90)).toBeCloseTo(10, 12);
    expect(at(45)).toBeCloseTo(at(-45), 12);
  });

  test('a bolt under the grip leaves no lever and is refused by name', () => {
    expect(() => adapterSetting({ wantedNm: 10, wrenchMm: 100, adapterMm: -100 })).toThrow(
      expect.objectContaining({ field: 'adapter' }),
    );
    expect(() => adapterSetting({ wantedNm: 10, wrenchMm: 100, adapterMm: 10, angleDeg: 200 })).toThrow(
      expect.objectContaining({ field: 'angle' }),
    );
    expect(() => adapterSetting({ wantedNm: 10, wrenchMm: 0, adapterMm: 10 })).toThrow(
      expect.objectContaining({ field: 'wrench' }),
    );
  });
});

describe('which wrench is fit', () => {
  const [small, middle, large] = [wrench('1/4', 2, 22), wrench('3/8', 10, 110), wrench('1/2', 28, 210)];

  test('under 20 % of its range, under its lowest mark and above its range a wrench is refused in words', () => {
    const why = (torqueNm: number, each: Wrench) => fitWrench(torqueNm, [each])[0]!;
    expect(why(15.8, middle)).toMatchObject({ fit: false });
    expect(why(15.8, middle).why).toMatch(
      /^140 in-lb \(15\.8 N·m\) is under 20 % of its greatest torque; its accuracy is promised from/,
    );
    expect(why(9, middle).why).toMatch(/below its lowest mark/);
    expect(why(120, middle).why).toMatch(/above its greatest torque/);
  });

  test('the fit ones come first, the more exact before the handier', () => {
    const exact = wrench('exact', 5, 60, 2);
    const found = fitWrench(15.8, [large, middle, small, exact]);
    expect(found.map((each) => each.wrench.name)).toEqual(['exact', '1/4', '3/8', '1/2']);
    expect(found.map(({ fit }) => fit)).toEqual([true, true, false, false]);
  });

  test('of equally exact wrenches the one nearer to 60 % of its range comes first', () => {
    expect(fitWrench(20, [wrench('a', 2, 21), wrench('b', 2, 33)])[0]!.wrench.name).toBe('b');
  });

  test('a wrench whose accuracy leaves the wanted range is refused with both ranges', () => {
    const [found] = fitWrench(12.4, [small], [12, 12.8]);
    expect(found).toMatchObject({ fit: false });
    expect(found!.why).toMatch(/±4 % gives .* outside the wanted/);
    expect(fitWrench(12.4, [wrench('fine', 2, 22, 3)], [12, 12.8])[0]!.fit).toBe(true);
  });

  test('the applied interval is where the torque really lies', () => {
    const [least, most] = appliedInterval(100, 4);
    expect([least, most]).toEqual([96, 104]);
    expect(fitWrench(100, [middle])[0]!.appliedNm).toEqual([96, 104]);
    expect(() => appliedInterval(100, 60)).toThrow(expect.objectContaining({ field: 'accuracy' }));
  });

  test('no wrench, no answer; a wrench with its range upside down is refused by name', () => {
    expect(fitWrench(10, [])).toEqual([]);
    expect(() => fitWrench(10, [wrench('odd', 20, 10)])).toThrow(expect.objectContaining({ field: 'max' }));
  });

  test('every wrench given is judged once, whatever the torque', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 400, noNaN: true }), (torqueNm) => {
        const found = fitWrench(torqueNm, [small, middle, large]);
        expect(found.map((each) => each.wrench.name).sort()).toEqual(['1/2', '1/4', '3/8']);
        for (const { fit, wrench: each } of found) {
          expect(fit).toBe(torqueNm <= each.maxNm && torqueNm >= Math.max(each.minNm, 0.2 * each.maxNm));
        }
      }),
      seed,
    );
  });
});
