import { describe, expect, test } from 'vitest';
import { boltLoads, gradeNames, strengthOf, strengths, unknownGrade } from '../../src/fasten/grades.js';
import { parseThread } from '../../src/quantity/index.js';

describe('grades', () => {
  test('proof lies under yield and yield under tensile in every row', () => {
    for (const row of strengths) {
      expect(row.proofMpa).toBeLessThan(row.yieldMpa);
      expect(row.yieldMpa).toBeLessThan(row.tensileMpa);
    }
  });

  test('no size of a grade has two rows', () => {
    for (const grade of gradeNames.filter((name) => name !== unknownGrade)) {
      const rows = strengths.filter((row) => row.grade === grade);
      for (const majorMm of [6.35, 8, 16, 16.5, 19.05, 22, 25.4, 26, 36]) {
        expect(
          rows.filter(({ overMm, upToMm }) => majorMm > overMm && majorMm <= upToMm).length,
        ).toBeLessThanOrEqual(1);
      }
    }
  });

  test('a metric class says outright what share of tensile it yields at', () => {
    for (const { grade, tensileMpa, yieldMpa } of strengths.filter(({ system }) => system === 'metric')) {
      const [hundreds, tenths] = grade.split('.').map(Number);
      expect(tensileMpa).toBeGreaterThanOrEqual(hundreds! * 100);
      expect(Math.abs(yieldMpa / tensileMpa - tenths! / 10)).toBeLessThan(0.015);
    }
  });

  test('an unknown bolt is taken as the lowest of its system, and the answer says so', () => {
    expect(strengthOf(unknownGrade, parseThread('5/16-18'))).toMatchObject({
      grade: 'SAE 1',
      note: 'unknown bolt, taken as SAE 1, the lowest of its system',
    });
    expect(strengthOf(unknownGrade, parseThread('M6'))).toMatchObject({ grade: '4.6' });
    for (const { system, proofMpa } of strengths) {
      const thread = parseThread(system === 'inch' ? '5/16-18' : 'M8');
      expect(strengthOf(unknownGrade, thread).proofMpa).toBeLessThanOrEqual(proofMpa);
    }
  });

  test('an unknown numbered screw is taken the same, and the answer says that no standard reaches it', () => {
    expect(strengthOf(unknownGrade, parseThread('#10-24')).note).toMatch(/does not reach down to this size/);
  });

  test('a grade of the other system is refused by name', () => {
    expect(() => strengthOf('8.8', parseThread('5/16-18'))).toThrow(/metric bolts.*inch/);
    expect(() => strengthOf('SAE 5', parseThread('M8'))).toThrow(/inch bolts.*metric/);
  });

  test('a grade outside its sizes, or no grade at all, is refused, naming the field', () => {
    expect(() => strengthOf('9.8', parseThread('M20'))).toThrow(/M1\.6 to M16/);
    expect(() => strengthOf('SAE 9', parseThread('5/16-18'))).toThrow(
      expect.objectContaining({ field: 'grade' }),
    );
    expect(() => strengthOf('SAE 8', parseThread('2-4.5'))).toThrow(/0\.25 to 1\.5 in/);
    expect(() => strengthOf(unknownGrade, parseThread('2-4.5'))).toThrow(/no grade is listed/);
  });

  test('loads rise with the stresses', () => {
    const form = parseThread('M8');
    const { proofN, yieldN, tensileN } = boltLoads(form, strengthOf('8.8', form));
    expect(proofN / yieldN).toBeCloseTo(580 / 640, 12);
    expect(tensileN / yieldN).toBeCloseTo(800 / 640, 12);
  });
});
