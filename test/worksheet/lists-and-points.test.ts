import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { QuantityError } from '../../src/quantity/index.js';
import { ask, run, WorksheetError } from '../../src/worksheet/index.js';
import { readPoints } from '../../src/worksheet/read-points.js';
import { sheet } from './sheet.js';

function list(text: string, of?: 'rotation' | 'length' | 'ratio'): readonly number[] {
  let seen: readonly number[] = [];
  const numbers = sheet({ list: ask.numbers('List', 'For the test.') }, (given) => {
    seen = given.list;
    return [];
  });
  const quantities = sheet({ list: ask.list(of ?? 'ratio', 'List', 'For the test.') }, (given) => {
    seen = given.list.map(({ si }) => si);
    return [];
  });
  run(of ? quantities : numbers, { list: text });
  return seen;
}

describe('lists', () => {
  test.each([
    ['60, 62, 61', [60, 62, 61]],
    ['60,62,61', [60, 62, 61]],
    ['60; 62; 61', [60, 62, 61]],
    ['60;62;61;', [60, 62, 61]],
    ['60\n62\n61\n', [60, 62, 61]],
    ['.003,.004', [0.003, 0.004]],
    ['0.003,0.004,0.005', [0.003, 0.004, 0.005]],
    ['0,76; 0,78', [0.76, 0.78]],
    ['1-1/4, 1/2', [1.25, 0.5]],
    ['7', [7]],
    ['-1, -2', [-1, -2]],
  ])('%j', (text, expected) => {
    expect(list(text)).toEqual(expected);
  });

  test.each(['3,600', '0,76', '60,62', '1,234,567', '1,234.5'])(
    '%s may be one figure or several and is refused',
    (text) => {
      expect(() => list(text)).toThrow(/may be one figure with a comma or several/);
    },
  );

  test('figures in thousands keep their commas where a space or a semicolon parts the readings', () => {
    const rpm = (value: number) => (value * 2 * Math.PI) / 60;
    for (const text of ['3,600, 3,610 rpm', '3,600 rpm; 3,610 rpm', '3,600; 3,610 rpm']) {
      const [first = 0, second = 0, ...more] = list(text, 'rotation');
      expect(first).toBeCloseTo(rpm(3600), 9);
      expect(second).toBeCloseTo(rpm(3610), 9);
      expect(more).toEqual([]);
    }
    expect(() => list('3,600 rpm', 'rotation')).toThrow(WorksheetError);
  });

  test('each reading may have its own unit', () => {
    const [inches = 0, millimeters = 0] = list('0.5 in, 12.7 mm', 'length');
    expect(inches).toBeCloseTo(millimeters, 15);
  });

  test('no reading is lost or added', () => {
    const readings = fc.array(fc.integer({ min: 0, max: 9999 }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(readings, fc.constantFrom(', ', '; ', ';', '\n'), (values, mark) => {
        expect(list(values.join(mark))).toEqual(values);
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  test.each(['1,,2,3', '1; ;2', ', 1', ';'])('%s has an empty place', (text) => {
    expect(() => list(text)).toThrow(/empty place/);
  });
});

test('a pasted page is refused by its length, not read', () => {
  expect(() => list('1, '.repeat(10_000))).toThrow(/29999 characters; at most 20000/);
});

describe('places in a plane', () => {
  const square = [
    { xMm: 0, yMm: 0 },
    { xMm: 60, yMm: 0 },
    { xMm: 60, yMm: 40 },
    { xMm: 0, yMm: 40 },
  ];

  test.each([
    '0,0 60,0 60,40 0,40',
    '0,0 60,0 60,40 0,40 mm',
    '(0,0) (60,0) (60,40) (0,40)',
    '( 0, 0 ), (60 , 0), (60, 40) (0, 40)'.replaceAll('),', ')'),
    '0,0; 60,0; 60,40; 0,40',
    '0,0\n60,0\n60,40\n0,40',
    '0,0 6,0 6,4 0,4 cm',
  ])('%j is a square of holes', (text) => {
    const points = readPoints(text);
    expect(points).toHaveLength(4);
    points.forEach((point, at) => {
      expect(point.xMm).toBeCloseTo(square[at]!.xMm, 12);
      expect(point.yMm).toBeCloseTo(square[at]!.yMm, 12);
    });
  });

  test('inches are turned into millimeters', () => {
    expect(readPoints('0,0 2.4,-1.5 in')[1]).toEqual({ xMm: 2.4 * 25.4, yMm: -1.5 * 25.4 });
    expect(readPoints('0,0 2.4,0"')[1]?.xMm).toBeCloseTo(60.96, 12);
  });

  test('places written and read are the same places', () => {
    const figure = fc.integer({ min: -99_999, max: 99_999 }).map((each) => each / 100);
    const places = fc.array(fc.record({ xMm: figure, yMm: figure }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(places, (points) => {
        expect(readPoints(points.map(({ xMm, yMm }) => `${xMm},${yMm}`).join(' '))).toEqual(
          points.map(({ xMm, yMm }) => ({ xMm: xMm + 0, yMm: yMm + 0 })),
        );
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  test.each(['', ' ', '60', '0,0 60', '0,0,0', 'a,b 0,0', '0,0 60,40 psi', ',0 1,1'])(
    '%j is refused',
    (text) => {
      expect(() => readPoints(text)).toThrow(WorksheetError);
    },
  );

  test('an unknown unit is refused as such', () => {
    expect(() => readPoints('0,0 60,40 quux')).toThrow(QuantityError);
  });
});
