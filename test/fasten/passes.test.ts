import { describe, expect, test } from 'vitest';
import {
  looseningOrder,
  looseningSteps,
  passes,
  passSchemes,
  tighteningSteps,
} from '../../src/fasten/passes.js';

const nmPerInLb = 0.1129848290276167;

describe('passes', () => {
  test("eight-bolt head to 140 in-lb, 70 then 140 in the maker's own sequence (common practice)", () => {
    const makers = [4, 5, 3, 6, 2, 7, 1, 8];
    const steps = tighteningSteps(makers, passes(140 * nmPerInLb, [0.5, 1], false));
    expect(steps).toHaveLength(16);
    expect(steps.map(({ hole }) => hole)).toEqual([...makers, ...makers]);
    expect(steps.map(({ torqueNm }) => Math.round(torqueNm / nmPerInLb))).toEqual([
      ...Array(8).fill(70),
      ...Array(8).fill(140),
    ]);
    expect(steps.every(({ isRound }) => !isRound)).toBe(true);
  });

  test('a final round is a pass of its own at full torque, in turn round the holes if that is given', () => {
    const goes = passes(20, [0.3, 0.7, 1], true);
    expect(goes.map(({ pass, torqueNm, isRound }) => [pass, torqueNm, isRound])).toEqual([
      [1, 6, false],
      [2, 14, false],
      [3, 20, false],
      [4, 20, true],
    ]);
    const steps = tighteningSteps([1, 3, 2, 4], goes, [1, 2, 3, 4]);
    expect(steps.filter(({ isRound }) => isRound).map(({ hole }) => hole)).toEqual([1, 2, 3, 4]);
    expect(steps.filter(({ pass }) => pass === 3).map(({ hole }) => hole)).toEqual([1, 3, 2, 4]);
    expect(tighteningSteps([1, 3, 2, 4], goes).at(-1)).toMatchObject({ hole: 4, pass: 4, isRound: true });
  });

  test('every scheme can be carried out and never slackens from one pass to the next', () => {
    for (const { parts, finalRound } of passSchemes) {
      const torques = passes(30, parts, finalRound).map(({ torqueNm }) => torqueNm);
      expect([...torques].sort((a, b) => a - b)).toEqual(torques);
      expect(torques.at(-1)).toBe(30);
    }
  });

  test.each([
    [[], /at least one part/],
    [[0.5, 0.9], /last part must be 1/],
    [[0.7, 0.3, 1], /must rise/],
    [[0.5, 0.5, 1], /must rise/],
    [[0, 1], /above 0 and up to 1/],
    [[0.5, 1.2], /above 0 and up to 1/],
    [[Number.NaN, 1], /above 0 and up to 1/],
  ] as const)('parts %j are refused', (parts, words) => {
    expect(() => passes(20, parts, false)).toThrow(words);
    expect(() => passes(20, parts, false)).toThrow(expect.objectContaining({ field: 'parts' }));
  });

  test('a torque that is none is refused by name', () => {
    expect(() => passes(0, [1], false)).toThrow(expect.objectContaining({ field: 'torque' }));
  });
});

describe('slackening', () => {
  test('is tightening backward, and backward twice is the order again', () => {
    const order = [1, 5, 3, 7, 2, 6, 4, 8];
    expect(looseningOrder(order)).toEqual([8, 4, 6, 2, 7, 3, 5, 1]);
    expect(looseningOrder(looseningOrder(order))).toEqual(order);
  });

  test('goes over all bolts before any is turned further', () => {
    const steps = looseningSteps([1, 3, 2, 4]);
    expect(steps).toHaveLength(12);
    expect(steps.map(({ go }) => go)).toEqual([1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3]);
    expect(steps.slice(0, 4).map(({ hole }) => hole)).toEqual([4, 2, 3, 1]);
    expect(steps[0]!.act).toBe('a quarter turn');
  });
});
