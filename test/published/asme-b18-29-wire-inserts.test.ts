import { describe, expect, test } from 'vitest';
import { mmPerInch } from '../../src/fasten/thread-form.js';
import { threads } from '../../src/fasten/threads.js';
import {
  insertDrill,
  insertHoleDepthMm,
  insertThreadMm,
  insertThroughMm,
} from '../../src/fasten/wire-insert.js';

const named = (name: string) => threads.find((each) => each.name === name)!;

describe('ASME B18.29.1 and B18.29.2M: helical wire inserts', () => {
  test('M8×1.25 × 12 free running: insert thread 23.5 mm deep (seen)', () => {
    expect(insertHoleDepthMm(named('M8×1.25'), 12, 'plug')).toBeCloseTo(23.5, 9);
  });

  test('a bottoming tap saves two pitches and its point (rule seen)', () => {
    expect(insertHoleDepthMm(named('M8×1.25'), 12, 'bottoming')).toBeCloseTo(12 + 4 * 1.25, 9);
    expect(insertHoleDepthMm(named('M10×1.5'), 15, 'plug')).toBeCloseTo(15 + 6 * 1.5, 9);
  });

  test('1/4-20 × 1.5 d: insert thread at least 0.430 in deep, the length and one pitch rounded up (seen)', () => {
    const deepIn = insertThroughMm(named('1/4-20'), 1.5 * 6.35) / mmPerInch;
    expect(Math.abs(deepIn - 0.43)).toBeLessThan(0.0055);
  });

  test.each([
    ['M6×1', 6.217, 7.299],
    ['M8×1.25', 8.271, 9.624],
    ['M10×1.5', 10.325, 11.949],
  ] as const)('%s insert thread: minor %f, major %f mm (from memory)', (name, minor, major) => {
    const found = insertThreadMm(named(name));
    expect(Math.abs(found.minorMm - minor)).toBeLessThan(0.0006);
    expect(Math.abs(found.majorMm - major)).toBeLessThan(0.0006);
  });

  test.each([
    ['1/4-20', '17/64 in'],
    ['5/16-18', '21/64 in'],
    ['3/8-16', '25/64 in'],
    ['M5×0.8', '5.2 mm'],
    ['M6×1', '6.3 mm'],
    ['M8×1.25', '8.3 mm'],
    ['M10×1.5', '10.4 mm'],
  ] as const)('%s insert drill %s (from memory: insert kit tables)', (name, drill) => {
    expect(insertDrill(named(name))?.name).toBe(drill);
  });
});
