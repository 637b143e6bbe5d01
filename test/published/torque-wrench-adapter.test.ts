import { describe, expect, test } from 'vitest';
import { adapterResult, adapterSetting } from '../../src/fasten/wrench.js';

describe('torque wrench adapter formula: public worked examples', () => {
  test.each([
    // wanted, L, E, setting; one length unit and one torque unit a row
    [70, 12, 2, 60, 0.005],
    [135, 10, 1.5, 117.39, 0.006],
    [135, 10, -1.5, 158.82, 0.006],
    [50, 16, 2, 44.44, 0.006],
    [130, 500, 150, 100, 0.005],
  ] as const)(
    '%f wanted with L %f and E %f: set %f (seen)',
    (wantedNm, wrenchMm, adapterMm, setting, tolerance) => {
      expect(Math.abs(adapterSetting({ wantedNm, wrenchMm, adapterMm }) - setting)).toBeLessThan(tolerance);
    },
  );

  test('L 500, drawn out to 650 mm: 100 set gives 130 N·m (seen)', () => {
    expect(adapterResult({ settingNm: 100, wrenchMm: 500, adapterMm: 150 })).toBeCloseTo(130, 9);
  });

  test('an angled adapter lengthens the wrench by E·cos θ; square to the side it changes nothing (seen)', () => {
    const base = { wantedNm: 100, wrenchMm: 400, adapterMm: 100 };
    expect(adapterSetting({ ...base, angleDeg: 60 })).toBeCloseTo((100 * 400) / 450, 9);
    expect(adapterSetting({ ...base, angleDeg: 90 })).toBeCloseTo(100, 9);
    expect(adapterSetting({ ...base, angleDeg: 180 })).toBeCloseTo((100 * 400) / 300, 9);
  });
});
