import { expect, test } from 'vitest';
import { rollOf } from '../../../src/web/parts/print-labels.js';

test.each([
  ['62', '40', { width: 62, length: 40 }],
  ['62 mm', '4 cm', { width: 62, length: 40 }],
  // the inch is 25.4 mm exactly
  ['2-1/4 in', '1 1/4"', { width: 57.15, length: 31.75 }],
  ['2.25 in', '.8 in', { width: 57.15, length: 20.32 }],
])('a roll of %s by %s', (width, length, roll) => {
  expect(rollOf({ width, length })).toEqual(roll);
});

test('what no printer takes, or what is no length, is none', () => {
  expect(rollOf({ width: '2.25', length: '300' })).toEqual({ width: undefined, length: undefined });
  expect(rollOf({ width: 'wide', length: '' })).toEqual({ width: undefined, length: undefined });
  expect(rollOf({ width: '5 in', length: '62 kg' })).toEqual({ width: undefined, length: undefined });
});
