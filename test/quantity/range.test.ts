import { describe, expect, test } from 'vitest';
import { parse, parseRange, type QuantityRange, show } from '../../src/quantity/index.js';
import { expectRefusal } from './refusal.js';

function ends({ low, high }: QuantityRange): readonly (string | undefined)[] {
  return [low && show(low), high && show(high)];
}

const read: readonly (readonly [text: string, low: string | undefined, high: string | undefined])[] = [
  ['.003-.005 in', '0.003 in', '0.005 in'],
  ['.003"-.005"', '0.003 in', '0.005 in'],
  ['0.003 to 0.005 in', '0.003 in', '0.005 in'],
  ['0.003 in to 0.005', '0.003 in', '0.005 in'],
  ['0.10–0.15 mm', '0.10 mm', '0.15 mm'],
  ['0,10 – 0,15 mm', '0.10 mm', '0.15 mm'],
  ['140 to 160 in-lb', '140 in-lb', '160 in-lb'],
  ['140 in-lb - 160 in-lb', '140 in-lb', '160 in-lb'],
  ['140-160in-lb', '140 in-lb', '160 in-lb'],
  ['from 140 to 160 in-lb', '140 in-lb', '160 in-lb'],
  ['between 140 and 160 in-lb', '140 in-lb', '160 in-lb'],
  ['1/8-1/4 in', '1/8 in', '1/4 in'],
  ['3/64–1/16 in', '3/64 in', '1/16 in'],
  ['1 1/4-1 1/2 in', '1-1/4 in', '1-1/2 in'],
  ['½–¾ in', '1/2 in', '3/4 in'],
  ['1-1/4 to 1-1/2 turns', '1-1/4 turns', '1-1/2 turns'],
  ['3/4 in to 20 mm', '3/4 in', '20 mm'],
  ['-5 to 10 °C', '-5 °C', '10 °C'],
  ['-10 - -5 °C', '-10 °C', '-5 °C'],
  ['3,000-3,600 rpm', '3000 rpm', '3600 rpm'],
  ['4…10 inH2O', '4 inH2O', '10 inH2O'],
  ['5-10 min', '5 min', '10 min'],
  ['2.5 kΩ–15 kΩ', '2.5 kΩ', '15 kΩ'],
  ['0.007" max', undefined, '0.007 in'],
  ['0.007 in max.', undefined, '0.007 in'],
  ['0.007 in (max)', undefined, '0.007 in'],
  ['max 0.007 in', undefined, '0.007 in'],
  ['up to 0.007 in', undefined, '0.007 in'],
  ['≤ 0.007 in', undefined, '0.007 in'],
  ['< 0.007 in', undefined, '0.007 in'],
  ['not over 0.007 in', undefined, '0.007 in'],
  ['0.007 in or less', undefined, '0.007 in'],
  ['at least 60 psi', '60 psi', undefined],
  ['min. 60 psi', '60 psi', undefined],
  ['60 psi min', '60 psi', undefined],
  ['60 psi minimum', '60 psi', undefined],
  ['60 psi or more', '60 psi', undefined],
  ['> 60 psi', '60 psi', undefined],
  ['≥60 psi', '60 psi', undefined],
  ['not less than 60 psi', '60 psi', undefined],
  ['6 ± 2 thou', '4.0 thou', '8.0 thou'],
  ['140 in-lb ± 10 %', '126 in-lb', '154 in-lb'],
];

describe('limits are read as written at the bench', () => {
  test.each(read)('%s', (text, low, high) => {
    const range = parseRange(text);
    expect(ends(range)).toEqual([low, high]);
    expect(range.written).toBe(text);
  });
});

test('each written end carries words that read as that end alone', () => {
  const { low, high } = parseRange('.003-.005 in');
  expect(low?.written).toBe('.003 in');
  expect(high?.written).toBe('.005 in');
  expect(parse(low?.written ?? '')).toEqual(low);
});

test('"min" is a minimum after a unit and minutes after a number', () => {
  expect(ends(parseRange('0.007 in min'))).toEqual(['0.007 in', undefined]);
  expect(ends(parseRange('7 min', 'length', { unit: 'thou' }))).toEqual(['7 thou', undefined]);
  expectRefusal(() => parseRange('5 min'), 'ambiguous', 'one value');
});

test('a bare range takes the agreed unit', () => {
  expect(ends(parseRange('3-5', 'length', { unit: 'thou' }))).toEqual(['3 thou', '5 thou']);
  expectRefusal(() => parseRange('3-5', 'length'), 'no-unit');
});

test('one value is no range, a mixed fraction included', () => {
  expectRefusal(() => parseRange('0.030 in'), 'ambiguous', 'one value, not a range', 'max or min');
  expectRefusal(() => parseRange('1-1/4 in'), 'ambiguous', 'one value');
});

test('ends the wrong way round are refused', () => {
  expectRefusal(() => parseRange('.005-.003 in'), 'out-of-range', 'lower end');
});

test('a range of another kind, of two kinds, of nothing or of no number is refused', () => {
  expectRefusal(() => parseRange('.003-.005 in', 'torque'), 'kind-mismatch', 'torque wanted, length given');
  expectRefusal(() => parseRange('3 psi to 5 mm'), 'kind-mismatch');
  expectRefusal(() => parseRange(' ', 'length'), 'empty');
  expectRefusal(() => parseRange('some to many in'), 'not-a-number');
  expectRefusal(() => parseRange('3-5 in', 'pressure'), 'ambiguous', 'inches of what?');
});
