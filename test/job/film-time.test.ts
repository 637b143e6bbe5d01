import fc from 'fast-check';
import { expect, test } from 'vitest';
import { filmMinutesLeft } from '../../src/job/index.js';

test('what fits on a card is its free space: minutes times rate gives the gigabytes back', () => {
  const size = fc.double({ min: 0.01, max: 2000, noNaN: true });
  fc.assert(
    fc.property(size, size, (gb, rate) => {
      const bits = filmMinutesLeft(gb, rate)! * 60 * rate * 1e6;
      expect(bits / 8e9 / gb).toBeCloseTo(1, 9);
    }),
    { seed: 21 },
  );
});

test('a card without room or a rate of nothing has no answer', () => {
  for (const [gb, rate] of [
    [0, 17],
    [-1, 17],
    [16, 0],
    [16, Number.NaN],
    [Number.POSITIVE_INFINITY, 17],
  ] as const)
    expect(filmMinutesLeft(gb, rate)).toBeUndefined();
});
