import { describe, expect, test } from 'vitest';
import { of, parse, parseRange, parseThread, readUnit, to } from '../../src/quantity/index.js';
import { expectRefusal } from './refusal.js';

describe('refuse, never guess', () => {
  test('a torque in length units is refused with what was wanted and what was given', () => {
    const error = expectRefusal(
      () => parse('0.030 in', 'torque'),
      'kind-mismatch',
      'torque wanted, length given (0.030 in)',
    );
    expect(error).toMatchObject({ wanted: 'torque', given: 'length', text: '0.030 in' });
    expect(error.hint).toContain('140 in-lb');
  });

  test('pounds where a torque is wanted are asked for their arm', () => {
    expectRefusal(
      () => parse('15 lb', 'torque'),
      'kind-mismatch',
      'torque wanted, mass given (15 lb)',
      'in-lb and ft-lb differ 12 times',
    );
  });

  test('bare inches where a pressure is wanted are asked for their fluid', () => {
    const words = 'inches of what? water and mercury differ 13.6 times';
    expectRefusal(() => parse('4 in', 'pressure'), 'ambiguous', words, 'inH2O or inHg');
    expectRefusal(() => parse('4"', 'pressure'), 'ambiguous', words);
    expectRefusal(() => parse('100 mm', 'pressure'), 'ambiguous', 'millimeters of what?', 'mmH2O or mmHg');
  });

  test.each(['', '   ', '\n\t'])('nothing written (%j) is refused', (text) => {
    expectRefusal(() => parse(text, 'torque'), 'empty', 'torque', '140 in-lb');
  });

  test.each([
    'NaN',
    'Infinity',
    'abc',
    'in-lb',
    '-',
    '.',
    '/ in',
    '1.2.3 in',
    '1,234,5 in',
    '5/0 in',
    '1/2/3 in',
    '1.5/2 in',
    '± 3 in',
    '12,34,56 mm',
  ])('%s is no number', (text) => {
    expectRefusal(() => parse(text), 'not-a-number', `"${text}"`);
  });

  test('a bare number is refused, unless its unit is agreed beforehand', () => {
    expectRefusal(() => parse('140', 'torque'), 'no-unit', '"140" has no unit', '140 in-lb');
    expectRefusal(() => parse('140'), 'no-unit');
    expect(parse('140', 'torque', { unit: 'in-lb' })).toMatchObject({
      unit: 'in-lb',
      si: of(140, 'in-lb').si,
      written: '140',
    });
    expect(parse('15 ft-lb', 'torque', { unit: 'in-lb' }).unit).toBe('ft-lb');
    expectRefusal(
      () => parse('140', 'length', { unit: 'in-lb' }),
      'kind-mismatch',
      'length wanted, torque given',
    );
  });

  test('an unknown unit is refused with how that kind is written', () => {
    const error = expectRefusal(() => parse('140 quux', 'torque'), 'unknown-unit', '"quux"', '15 ft-lb');
    expect(error.wanted).toBe('torque');
    expectRefusal(() => parse('140 lb/quux'), 'unknown-unit', '0.030 in');
  });

  test.each([
    '140 150 in-lb',
    '.003-.005 in',
    '10 200 in-lb',
    '5\' 6"',
    '3 h 20 min',
    '5/16-18',
    '140 in-lb 15 ft-lb',
    '1 2 3 mm',
    '2 x 4 in',
  ])('%s holds more than one number', (text) => {
    expectRefusal(() => parse(text), 'ambiguous', 'more than one number', text);
  });

  test('a thread written for a quantity is named as one', () => {
    expectRefusal(() => parse('5/16-18', 'length'), 'ambiguous', 'looks like a thread');
  });

  test('a comma that may set off thousands or decimals is refused where both would make sense', () => {
    expectRefusal(() => parse('1,250 mm'), 'ambiguous', '1250', '1.25');
    expectRefusal(() => parse('1,250 bar'), 'ambiguous');
    expectRefusal(() => parse('-1,250 in'), 'ambiguous', '-1250', '-1.25');
    expect(to(parse('0,250 mm'), 'mm')).toBeCloseTo(0.25, 15);
    expect(to(parse('1,25 mm'), 'mm')).toBeCloseTo(1.25, 15);
    expect(to(parse('1,250 psi'), 'psi')).toBeCloseTo(1250, 10);
  });

  test('a temperature below absolute zero and a number beyond all measure are refused', () => {
    expectRefusal(() => parse('-300 °C'), 'out-of-range', 'absolute zero');
    expectRefusal(() => parse('-460 °F'), 'out-of-range');
    expectRefusal(() => parse('1e400 in'), 'out-of-range');
    expectRefusal(() => of(Number.POSITIVE_INFINITY, 'in'), 'out-of-range');
    expectRefusal(() => of(Number.NaN, 'in'), 'not-a-number');
  });
});

test('a page pasted where a quantity belongs is refused at once', () => {
  const page = `140${' '.repeat(1_000_000)}in-lb`;
  for (const read of [parse, parseRange, parseThread]) {
    expectRefusal(() => read(page), 'not-a-number', '1000008 characters');
  }
  expectRefusal(() => readUnit('x'.repeat(1_000_000)), 'unknown-unit');
});

describe('ratios', () => {
  test("50:1 and 1:50 are each other's inverse", () => {
    expect(parse('50:1', 'ratio').si).toBe(50);
    expect(parse('1:50', 'ratio').si).toBe(0.02);
    expect(parse('8.5 : 1', 'ratio').si).toBe(8.5);
  });

  test('a bare ratio is itself up to one, and above may be per cent', () => {
    expect(parse('0.20', 'ratio').si).toBe(0.2);
    expectRefusal(() => parse('46', 'ratio'), 'ambiguous', '46 % or 46:1');
  });

  test('a proportion by nothing is refused', () => {
    expectRefusal(() => parse('50:0', 'ratio'), 'ambiguous');
    expectRefusal(() => parse('50:', 'ratio'), 'unknown-unit');
  });
});

describe('± is an expanded uncertainty with k = 2', () => {
  test.each([
    '0.0030 ± 0.0007 in',
    '0.0030 in ± 0.0007 in',
    '.0030±.0007"',
    '0.0030 +/- 0.0007 in',
    '0.0030 +- 0.0007 in',
    '0.0030 in ± 0.7 thou',
  ])('%s has a standard uncertainty of 0.00035 in', (text) => {
    const quantity = parse(text, 'length');
    expect(to(quantity, 'in')).toBeCloseTo(0.003, 15);
    expect(quantity.u).toBeCloseTo(0.00035 * 0.0254, 15);
  });

  test('a per cent after ± is a share of the value', () => {
    expect(parse('140 in-lb ± 4 %').u).toBeCloseTo((0.04 * of(140, 'in-lb').si) / 2, 12);
    expect(parse('140 ± 4 %', 'torque', { unit: 'in-lb' }).u).toBeCloseTo(
      (0.04 * of(140, 'in-lb').si) / 2,
      12,
    );
  });

  test('per cents with per cents are points, not shares', () => {
    expect(parse('46 % ± 4 %', 'ratio').u).toBeCloseTo(0.02, 15);
    expect(parse('46 ± 4 %', 'ratio', { unit: '%' }).u).toBeCloseTo(0.02, 15);
  });

  test('the uncertainty of a temperature is a difference: no zero point is added', () => {
    expect(parse('20 ± 2 °C').u).toBeCloseTo(1, 15);
    expect(parse('68 ± 3.6 °F').u).toBeCloseTo(1, 15);
    expect(parse('20 °C ± 3.6 °F').u).toBeCloseTo(1, 15);
  });

  test('an uncertainty of nothing, of another kind or twice over is refused', () => {
    expectRefusal(() => parse('5 ± 0 mm'), 'out-of-range');
    expectRefusal(() => parse('5 mm ± 2 psi'), 'kind-mismatch', 'length wanted, pressure given');
    expectRefusal(() => parse('5 ± 1 ± 2 mm'), 'ambiguous');
  });
});

test('an origin given along is kept', () => {
  expect(parse('140 in-lb', 'torque', { origin: { from: 'plate' } }).origin).toEqual({ from: 'plate' });
});
