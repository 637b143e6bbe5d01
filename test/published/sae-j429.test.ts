import { describe, expect, test } from 'vitest';
import { strengthOf } from '../../src/fasten/grades.js';
import { mmPerInch } from '../../src/fasten/thread-form.js';

const psiPerMpa = 1e6 / 6894.757293168361;
const bolt = (majorIn: number, perInch: number) =>
  ({ system: 'inch', majorMm: majorIn * mmPerInch, pitchMm: mmPerInch / perInch }) as const;

describe('SAE J429: inch grades', () => {
  test.each([
    ['SAE 1', 0.25, 20, 33, 36, 60],
    ['SAE 1', 1.5, 6, 33, 36, 60],
    ['SAE 2', 0.25, 20, 55, 57, 74],
    ['SAE 2', 0.75, 10, 55, 57, 74],
    ['SAE 2', 0.875, 9, 33, 36, 60],
    ['SAE 4', 0.375, 16, 65, 100, 115],
    ['SAE 5', 0.3125, 18, 85, 92, 120],
    ['SAE 5', 1, 8, 85, 92, 120],
    ['SAE 5', 1.125, 7, 74, 81, 105],
    ['SAE 8', 0.5, 13, 120, 130, 150],
  ] as const)(
    '%s at %f in: proof, yield and tensile in ksi (seen)',
    (grade, size, perInch, proof, yields, tensile) => {
      const { proofMpa, yieldMpa, tensileMpa } = strengthOf(grade, bolt(size, perInch));
      const found = [proofMpa, yieldMpa, tensileMpa].map((mpa) => (mpa * psiPerMpa) / 1000);
      [proof, yields, tensile].forEach((ksi, i) => {
        expect(found[i]).toBeCloseTo(ksi, 9);
      });
    },
  );

  test('Grade 2 stands for bolts up to 6 in long, and says so (seen)', () => {
    expect(strengthOf('SAE 2', bolt(0.375, 16)).note).toMatch(/6 in/);
  });

  test('the grades begin at 1/4 in: a numbered screw has none (seen)', () => {
    expect(() => strengthOf('SAE 5', bolt(0.19, 24))).toThrow(/0\.25 to 1 in/);
  });
});
