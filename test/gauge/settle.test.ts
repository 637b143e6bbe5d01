import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, noNumberOfRepeats, settle } from '../../src/gauge/index.js';

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('what would settle it', () => {
  it('at one limit is distance/1.645', () => {
    const { neededU, becomes } = settle({ value: 9, u: 1, limit: { max: 10 } });
    expect(neededU).toBeCloseTo(1 / 1.6448536269514722, 9);
    expect(becomes).toBe('pass');
  });

  it('the uncertainty named decides, and a thousandth more does not', () => {
    fc.assert(
      fc.property(finite(-3, 3), finite(0.5, 4), (value, half) => {
        const limit = { min: -half, max: half };
        fc.pre(Math.abs(Math.abs(value) - half) > 1e-3);
        const { neededU, becomes } = settle({ value, u: 2, limit });
        expect(decide({ value, u: neededU, limit }).verdict).toBe(becomes);
        expect(becomes).toBe(Math.abs(value) < half ? 'pass' : 'fail');
        expect(decide({ value, u: neededU * 1.001, limit }).verdict).toBe('cannot-decide');
      }),
      { seed: 4711, numRuns: 300 },
    );
  });

  it('names the tools fine enough, the coarsest first', () => {
    const tools = [
      { name: 'micrometer', u: 0.1 },
      { name: 'caliper', u: 0.7 },
      { name: 'bore gauge', u: 0.5 },
    ];
    expect(settle({ value: 9, u: 1, limit: { max: 10 }, tools }).tools).toEqual(['bore gauge', 'micrometer']);
  });

  it('so many repeats settle it that one fewer would not', () => {
    const repeats = settle({ value: 9, u: 1, limit: { max: 10 }, scatter: 1, systematic: 0.2 })
      .repeats as number;
    const uOf = (n: number) => Math.hypot(1 / Math.sqrt(n), 0.2);
    expect(repeats).toBe(4);
    expect(decide({ value: 9, u: uOf(repeats - 1), limit: { max: 10 } }).verdict).toBe('cannot-decide');
    expect(decide({ value: 9, u: uOf(repeats), limit: { max: 10 } }).verdict).toBe('pass');
  });

  it('no number of repeats helps against a systematic part that is too large', () => {
    const found = settle({ value: 9, u: 1.2, limit: { max: 10 }, scatter: 1, systematic: 0.7 });
    expect(found.repeats).toBe(noNumberOfRepeats);
    expect(found.words).toContain('systematic part alone');
  });

  it('nothing settles a value on the limit itself', () => {
    const found = settle({
      value: 10,
      u: 1,
      limit: { max: 10 },
      scatter: 1,
      tools: [{ name: 'any', u: 1e-9 }],
    });
    expect(found).toMatchObject({ neededU: 0, tools: [], repeats: noNumberOfRepeats });
    expect(found.words).toContain('on the limit itself');
  });

  it('says when it is decided already', () => {
    expect(settle({ value: 1, u: 1, limit: { max: 10 } }).words).toBe('Already decided: pass.');
  });

  it('without a scatter says nothing about repeats', () => {
    expect(settle({ value: 9, u: 1, limit: { max: 10 } })).not.toHaveProperty('repeats');
  });

  it('refuses a tool with an impossible uncertainty, by name', () => {
    expect(() =>
      settle({ value: 9, u: 1, limit: { max: 10 }, tools: [{ name: 'odd gauge', u: -1 }] }),
    ).toThrow('odd gauge');
  });
});
