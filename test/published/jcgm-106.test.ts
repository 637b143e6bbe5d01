import { describe, expect, it } from 'vitest';
import { decide, normalBelow } from '../../src/gauge/index.js';

describe('JCGM 106:2012, probability of conformity, from memory and recomputed', () => {
  const cases: [string, Parameters<typeof decide>[0], number][] = [
    [
      'one upper limit: breakdown voltage of a Zener diode, Φ(1.40)',
      { value: -5.47, u: 0.05, limit: { max: -5.4 } },
      0.92,
    ],
    [
      'one lower limit: bursting strength of a container',
      { value: 509.7, u: 8.6, limit: { min: 490 } },
      0.99,
    ],
    [
      'two limits: kinematic viscosity of an SAE 40 oil, Φ(1.5) − Φ(−0.6)',
      { value: 13.6, u: 1.8, limit: { min: 12.5, max: 16.3 } },
      0.66,
    ],
  ];
  for (const [title, measured, printed] of cases)
    it(`${title}: ${printed}`, () =>
      expect(decide(measured).probabilityOfConformity.toFixed(2)).toBe(printed.toFixed(2)));

  it('a guard band of 2u leaves a specific consumer’s risk of at most 2.28 %', () => {
    const { probabilityOfConformity } = decide({ value: 8, u: 1, limit: { max: 10 } });
    expect((100 * (1 - probabilityOfConformity)).toFixed(2)).toBe('2.28');
    expect(normalBelow(-2)).toBeCloseTo(0.0228, 4);
  });
});

describe('ISO 14253-1:2017, conformance at 95 %, from memory', () => {
  it('puts the guard band at 1.65 u of a one-sided limit', () => {
    const verdictAt = (distance: number) =>
      decide({ value: 10 - distance, u: 1, limit: { max: 10 } }).verdict;
    expect(verdictAt(1.65)).toBe('pass');
    expect(verdictAt(1.64)).toBe('cannot-decide');
    expect(verdictAt(-1.64)).toBe('cannot-decide');
    expect(verdictAt(-1.65)).toBe('fail');
  });
});
