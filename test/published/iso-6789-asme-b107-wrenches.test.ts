import { describe, expect, test } from 'vitest';
import { fitWrench } from '../../src/fasten/wrench-fit.js';

describe('ISO 6789-1:2017 and ASME B107.300: accuracy of hand torque wrenches', () => {
  test('both promise the accuracy from 20 to 100 % of the range (from memory)', () => {
    const wrench = { tool: 'w', name: 'w', minNm: 5, maxNm: 100, accuracyPercent: 4 };
    expect(fitWrench(19.9, [wrench])[0]?.fit).toBe(false);
    expect(fitWrench(20, [wrench])[0]?.fit).toBe(true);
    expect(fitWrench(100, [wrench])[0]?.fit).toBe(true);
    expect(fitWrench(100.1, [wrench])[0]?.fit).toBe(false);
  });
});
