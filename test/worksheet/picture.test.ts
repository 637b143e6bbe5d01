import { describe, expect, test } from 'vitest';
import {
  type Answer,
  curve,
  type Picture,
  picture,
  printJson,
  printText,
  spaced,
  WorksheetError,
} from '../../src/worksheet/index.js';

const drawn: Picture = {
  title: 'Twice as much',
  says: 'It rises.',
  x: { label: 'Given', unit: 'mm' },
  y: { label: 'Answer', unit: 'psi' },
  curves: [curve('twice', spaced(0, 4, 5), (x) => 2 * x)],
  marks: [{ x: 1, y: 2, label: 'here' }],
  bands: [{ axis: 'y', from: 3, label: 'too much' }],
};
const answer: Answer = {
  id: 'twice',
  label: 'Twice',
  value: { type: 'number', number: 2 },
  origin: { from: 'computed', detail: 'twice' },
};

test('a picture goes over the wire with its answer, unchanged, and not into the printed lines', () => {
  const printed = printJson([{ ...answer, picture: drawn }]);
  expect(JSON.parse(JSON.stringify(printed))[0].picture).toEqual(drawn);
  expect(printText([{ ...answer, picture: drawn }])).toEqual(printText([answer]));
  expect(printJson([answer])[0]).not.toHaveProperty('picture');
});

test('a sound picture is handed back as it is', () => {
  expect(picture(drawn)).toBe(drawn);
  expect(drawn.curves[0]!.points).toEqual([
    [0, 0],
    [1, 2],
    [2, 4],
    [3, 6],
    [4, 8],
  ]);
});

test('figures spaced by ratio keep their ratio and reach both ends', () => {
  const xs = spaced(1, 100, 5, true);
  expect(xs[0]).toBe(1);
  expect(xs[4]).toBeCloseTo(100, 9);
  expect(xs[2]! / xs[1]!).toBeCloseTo(Math.sqrt(10), 9);
});

describe('a picture is refused when a drawing would leave something out', () => {
  const cases: [string, Partial<Picture>, RegExp][] = [
    ['no curve', { curves: [] }, /has no curve/],
    ['one point', { curves: [{ label: 'a', points: [[1, 1]] }] }, /1 points; at least 2/],
    ['a hole', { curves: [curve('a', [0, 1], (x) => 1 / x)] }, /Infinity on the axis Answer/],
    ['a way back', { curves: [curve('a', [1, 0], (x) => x)] }, /runs backward/],
    ['a mark nowhere', { marks: [{ x: Number.NaN, y: 0, label: 'm' }] }, /NaN on the axis Given/],
    ['a band without an end', { bands: [{ axis: 'x', label: 'b' }] }, /no end/],
    ['zero by logarithm', { x: { label: 'Given', unit: 'mm', logarithmic: true } }, /logarithmic: above 0/],
  ];
  test.each(cases)('%s', (_, changed, words) => {
    expect(() => picture({ ...drawn, ...changed })).toThrow(WorksheetError);
    expect(() => picture({ ...drawn, ...changed })).toThrow(words);
  });
});
