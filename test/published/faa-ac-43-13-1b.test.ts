import { describe, expect, it } from 'vitest';
import { faaOrificeMm, faaSupplyPa, leakPercent } from '../../src/engine/leak-down.js';

describe('FAA AC 43.13-1B, 8-14 (change 1, 2001), read', () => {
  it('0.040 in for a bore under 5.00 in, 0.060 in from there on', () => {
    expect(faaOrificeMm.under5In / 25.4).toBeCloseTo(0.04, 12);
    expect(faaOrificeMm.from5In / 25.4).toBeCloseTo(0.06, 12);
  });
  it('80 psi supply', () => expect(faaSupplyPa / 6894.757293168361).toBeCloseTo(80, 9));
});

describe('customary floor of aviation, from memory', () => {
  it('60 of 80 psi is 25 % lost', () =>
    expect(leakPercent({ supplyPa: faaSupplyPa }, 0.75 * faaSupplyPa)).toBeCloseTo(25, 9));
});
