import { describe, expect, test } from 'vitest';
import { decimalsFor, decimalsOfSignificant, writtenNumber } from '../../src/quantity/digits.js';
import { of, parse, parseRange, show } from '../../src/quantity/index.js';
import { expectRefusal } from './refusal.js';

describe('how many decimals are shown', () => {
  test.each([
    [0, 3, 0],
    [Number.POSITIVE_INFINITY, 3, 0],
    [Number.NaN, 3, 0],
    [1, 3, 2],
    [0.004_56, 2, 4],
    [123_456, 3, 0],
    [-12.3, 3, 1],
    [1e-200, 3, 100],
  ] as const)('%d with %i significant digits: %i', (value, digits, decimals) => {
    expect(decimalsOfSignificant(value, digits)).toBe(decimals);
  });

  test('torque in in-lb is whole from 20 up, and has a tenth below', () => {
    expect(decimalsFor(of(20, 'in-lb'), 'in-lb')).toBe(0);
    expect(decimalsFor(of(19.9, 'in-lb'), 'in-lb')).toBe(1);
    expect(decimalsFor(of(-20, 'in-lb'), 'in-lb')).toBe(0);
  });

  test('a length that nobody wrote has a micrometer’s last digit, only where it is a length in in or mm', () => {
    expect(decimalsFor(of(2.5, 'in'), 'in')).toBe(4);
    expect(decimalsFor(of(2.5, 'in'), 'mm')).toBe(3);
    expect(decimalsFor(of(2.5, 'm'), 'm')).toBe(2);
    // a pressure shown in an inch of water is no length
    expect(decimalsFor(of(4, 'inH2O'), 'inH2O')).toBe(2);
    expect(decimalsFor(of(25.4, '°C'), '°C')).toBe(1);
  });

  test('a decimal place is never finer than what was written needs: 0.01 mm is 0.0001 in, 1 mm 0.001 in', () => {
    expect(decimalsFor(parse('25.40 mm'), 'in')).toBe(4);
    expect(decimalsFor(parse('1.00 m'), 'mm')).toBe(1);
    expect(decimalsFor(parse('0.100 m'), 'mm')).toBe(1);
    expect(decimalsFor(parse('0.0010 m'), 'mm')).toBe(1);
    expect(decimalsFor(parse('0.00100 m'), 'mm')).toBe(2);
    expect(decimalsFor(parse('1 mm'), 'in')).toBe(3);
  });

  test('a written fraction is shown as a fraction in its own unit, and elsewhere as the exact size that it names', () => {
    expect(show(parse('3/8 in'), 'inch')).toBe('3/8 in');
    // two decimals made 9.52 of it
    expect(show(parse('3/8 in'), 'metric')).toBe('9.525 mm');
    expect(show(parse('1/2 in'), 'metric')).toBe('12.7 mm');
    expect(decimalsFor(parse('3/8 in'), 'in')).toBe(3);
  });
});

describe('the number as it was written', () => {
  test.each([
    ['65.03 ± 0.01 mm', 'mm'],
    ['65.03 mm ± 0.01 mm', 'mm'],
    ['65.03 mm± 0.01', 'mm'],
    ['65.03 mm +/- 0.01', 'mm'],
    ['65.03 mm + - 0.01', 'mm'],
    ['65.03 mm +/ -0.01', 'mm'],
    ['65.03 mm +-0.01 mm', 'mm'],
  ])('of "%s" is 65.03 in mm', (text, unit) => {
    expect(writtenNumber(parse(text, 'length', { unit: 'mm' }))).toMatchObject({
      unit,
      number: { value: 65.03, decimals: 2 },
    });
  });

  test('is none once the value is another, on either side and by little', () => {
    const bore = parse('2.6802 in');
    expect(writtenNumber(bore)?.number.value).toBe(2.6802);
    expect(writtenNumber({ ...bore, si: bore.si * (1 + 2e-9) })).toBeUndefined();
    expect(writtenNumber({ ...bore, si: bore.si * (1 - 2e-9) })).toBeUndefined();
    expect(writtenNumber({ ...bore, si: bore.si * (1 + 5e-10) })).toBeDefined();
    const far = parse('120 km');
    expect(writtenNumber({ ...far, si: far.si * (1 + 5e-10) })).toBeDefined();
    expect(writtenNumber({ ...far, si: far.si + 1 })).toBeUndefined();
  });

  test('is none where its words have a unit of doubtful meaning, and showing it does not fail', () => {
    const odd = { ...parse('5 mm'), written: '5 M' };
    expect(() => show(odd)).not.toThrow();
  });
});

describe('ends of a range', () => {
  test('may be the same, and reversed ones are refused with the way out', () => {
    expect(parseRange('5 to 5 mm').low?.si).toBe(0.005);
    const reversed = expectRefusal(() => parseRange('6 to 5 mm', 'length'), 'out-of-range', '6 to 5 mm');
    expect(reversed).toMatchObject({
      text: '6 to 5 mm',
      wanted: 'length',
      hint: 'write the smaller one first',
    });
  });

  test('keep their own words, each with its unit and without spaces round them', () => {
    const { low, high } = parseRange('140 in-lb  -  160 in-lb');
    expect([low?.written, high?.written]).toEqual(['140 in-lb', '160 in-lb']);
    const bare = parseRange('  140   to   160  ', 'torque', { unit: 'in-lb' });
    expect([bare.low?.written, bare.high?.written]).toEqual(['140', '160']);
    const once = parseRange('between   0.003   and   0.005 in');
    expect([once.low?.written, once.high?.written]).toEqual(['0.003 in', '0.005 in']);
  });

  test('a trailing "min" is minutes where a time is wanted or nothing says otherwise, else the least', () => {
    expect(parseRange('5 to 10 min', 'time').high?.si).toBe(600);
    expect(parseRange('60 min', 'pressure', { unit: 'psi' })).toMatchObject({ low: { unit: 'psi' } });
    expect(parseRange('60 min', 'pressure', { unit: 'psi' }).high).toBeUndefined();
    expectRefusal(() => parseRange('60 min', 'time', { unit: 's' }), 'ambiguous');
    expectRefusal(() => parseRange('60 min'), 'ambiguous');
  });
});
