import { describe, expect, test } from 'vitest';
import { permittedDeviationPercent } from '../../src/fasten/wrench.js';
import { fitWrench, leastUsableNm } from '../../src/fasten/wrench-fit.js';

describe('ISO 6789-1:2017 and ASME B107.300: accuracy of hand torque wrenches', () => {
  test('ISO: ±4 % above 10 N·m, ±6 % at or below (seen in a wrench manual quoting ISO 6789)', () => {
    expect(permittedDeviationPercent('ISO 6789-1', { maxNm: 10.5 })).toBe(4);
    expect(permittedDeviationPercent('ISO 6789-1', { maxNm: 10 })).toBe(6);
  });

  test('ASME: ±4 % clockwise, ±6 % counterclockwise (from memory)', () => {
    expect(permittedDeviationPercent('ASME B107.300', { maxNm: 100 })).toBe(4);
    expect(permittedDeviationPercent('ASME B107.300', { maxNm: 100, counterclockwise: true })).toBe(6);
  });

  test('both promise it from 20 to 100 % of the range (from memory)', () => {
    const wrench = { tool: 'w', name: 'w', minNm: 5, maxNm: 100, accuracyPercent: 4 };
    expect(leastUsableNm(wrench)).toBe(20);
    expect(fitWrench(19.9, [wrench])[0]?.fit).toBe(false);
    expect(fitWrench(20, [wrench])[0]?.fit).toBe(true);
    expect(fitWrench(100, [wrench])[0]?.fit).toBe(true);
    expect(fitWrench(100.1, [wrench])[0]?.fit).toBe(false);
  });
});
