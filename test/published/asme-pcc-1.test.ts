import { describe, expect, test } from 'vitest';
import { passSchemes } from '../../src/fasten/passes.js';
import { tighteningOrder } from '../../src/fasten/pattern.js';
import { crossByRule } from '../../src/fasten/round-pattern.js';

const flange = (n: number) =>
  Array.from({ length: n }, (_, i) => ({
    xMm: 80 * Math.cos((2 * Math.PI * i) / n),
    yMm: -80 * Math.sin((2 * Math.PI * i) / n),
  }));

const printed: Readonly<Record<number, readonly number[]>> = {
  4: [1, 3, 2, 4],
  8: [1, 5, 3, 7, 2, 6, 4, 8],
  12: [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
  16: [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16],
  20: [1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19],
};

describe('ASME PCC-1, legacy cross pattern, bolts numbered clockwise', () => {
  test.each([4, 8, 12, 16, 20])('%i bolts (from memory; 12 and 16 compatible with diagrams seen)', (n) => {
    expect(tighteningOrder(flange(n))).toMatchObject({ order: printed[n], rule: 'round cross pattern' });
  });

  test.each([4, 8, 12])(
    'its rule, opposite then halve the angle, gives the table again for %i bolts (rule seen)',
    (n) => {
      const angles = Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n);
      expect(crossByRule(angles).map((place) => place + 1)).toEqual(printed[n]);
    },
  );

  test.each([6, 10, 14, 18, 24])(
    'the rule for %i bolts: every second bolt is opposite the one before (rule seen)',
    (n) => {
      const { order } = tighteningOrder(flange(n));
      for (let i = 0; i < n; i += 2) expect(Math.abs(order[i]! - order[i + 1]!)).toBe(n / 2);
    },
  );
});

describe('ASME PCC-1, Table 2: passes', () => {
  test('20–30, 50–70 and 100 %, then in circle (percentages from memory)', () => {
    const { parts, finalRound } = passSchemes.find(({ id }) => id === 'thirds')!;
    expect(parts[0]).toBeGreaterThanOrEqual(0.2);
    expect(parts[0]).toBeLessThanOrEqual(0.3);
    expect(parts[1]).toBeGreaterThanOrEqual(0.5);
    expect(parts[1]).toBeLessThanOrEqual(0.7);
    expect(parts[2]).toBe(1);
    expect(finalRound).toBe(true);
  });

  test('published variants: 30/60/100 with a round, 25/50/100, 70/100 (seen)', () => {
    const byId = Object.fromEntries(
      passSchemes.map(({ id, parts, finalRound }) => [id, [...parts, finalRound]]),
    );
    expect(byId['30-60-100']).toEqual([0.3, 0.6, 1, true]);
    expect(byId['25-50-100']).toEqual([0.25, 0.5, 1, false]);
    expect(byId['70-100']).toEqual([0.7, 1, false]);
  });
});
