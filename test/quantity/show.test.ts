import { describe, expect, test } from 'vitest';
import {
  convert,
  of,
  parse,
  show,
  showAsWritten,
  showBoth,
  withUncertainty,
} from '../../src/quantity/index.js';

const shown: readonly (readonly [written: string, inch: string, metric: string])[] = [
  ['140 in-lb', '140 in-lb', '15.8 N·m'],
  ['15 ft-lb', '15 ft-lb', '20.3 N·m'],
  ['20.3 N·m', '180 in-lb', '20.3 N·m'],
  ['60 N·m', '44.3 ft-lb', '60 N·m'],
  ['1.5 N·m', '13.3 in-lb', '1.5 N·m'],
  ['.030"', '0.030 in', '0.76 mm'],
  ['0.0015 in', '0.0015 in', '0.038 mm'],
  ['2.5000 in', '2.5000 in', '63.500 mm'],
  ['0.76 mm', '0.0299 in', '0.76 mm'],
  ['60 mm', '2.362 in', '60 mm'],
  ['0.1 mm', '0.0039 in', '0.1 mm'],
  ['3/64 in', '3/64 in', '1.191 mm'],
  ['1 1/4"', '1-1/4 in', '31.75 mm'],
  ['1½ turns', '1-1/2 turns', '1-1/2 turns'],
  ['half a turn', '1/2 turn', '1/2 turn'],
  ['60 psi', '60 psi', '414 kPa'],
  ['4 inH2O', '4 inH2O', '0.996 kPa'],
  ['1 kPa', '4.01 inH2O', '1 kPa'],
  ['580 MPa', '84.1 ksi', '580 MPa'],
  ['20 fl oz', '20 fl oz', '591 mL'],
  ['600 mL', '20.3 fl oz', '600 mL'],
  ['190 cc', '11.59 cu in', '190 cc'],
  ['11.6 cu in', '11.6 cu in', '190.1 cc'],
  ['3,600 rpm', '3600 rpm', '3600 rpm'],
  ['20 °C', '68 °F', '20 °C'],
  ['68.5 °F', '68.5 °F', '20.3 °C'],
  ['46 %', '46 %', '46 %'],
  ['50:1', '50:1', '50:1'],
  ['0,76 mm', '0.0299 in', '0.76 mm'],
  ['12°', '12°', '12°'],
  ['340 g', '12.0 oz', '340 g'],
  ['6.1 m/s', '1201 ft/min', '6.1 m/s'],
  ['1 day', '1 day', '1 day'],
];

describe("a quantity shown in the reader's system", () => {
  test.each(shown)('%s is %s or %s', (written, inch, metric) => {
    expect(show(parse(written), 'inch')).toBe(inch);
    expect(show(parse(written), 'metric')).toBe(metric);
  });

  test('a computed torque goes from in-lb to ft-lb at about 200 in-lb', () => {
    expect(show(of(150, 'in-lb'), 'inch')).toBe('150 in-lb');
    expect(show(of(199, 'in-lb'), 'inch')).toBe('199 in-lb');
    expect(show(of(360, 'in-lb'), 'inch')).toBe('30.0 ft-lb');
    expect(show(of(5, 'ft-lb'), 'inch')).toBe('60 in-lb');
  });

  test('a torque somebody wrote keeps the unit of the sheet and the wrench', () => {
    expect(show(parse('360 in-lb'), 'inch')).toBe('360 in-lb');
    expect(show(parse('5 ft-lb'), 'inch')).toBe('5 ft-lb');
  });

  test("a computed length is shown to a micrometer's last digit", () => {
    expect(show(of(2.56251, 'in'))).toBe('2.5625 in');
    expect(show(of(65.0881, 'mm'))).toBe('65.088 mm');
    expect(show(of(0.0000123, 'in'))).toBe('0.000012 in');
  });

  test('a quantity computed on from a written one is not shown with the old figures', () => {
    const written = parse('0.030 in');
    expect(show({ ...written, si: written.si * 2 })).toBe('0.0600 in');
    expect(show({ ...parse('1/2 in'), si: of(0.75, 'in').si })).toBe('0.7500 in');
  });

  test('the precision written is kept through a change of unit', () => {
    expect(show(convert(parse('0.030 in'), 'mm'))).toBe('0.76 mm');
    expect(show(convert(parse('0.0300 in'), 'mm'))).toBe('0.762 mm');
    expect(show(convert(parse('0.030 in'), 'mm'), 'inch')).toBe('0.030 in');
  });

  test('a unit and a count of digits may be asked for', () => {
    expect(show(parse('180 in-lb'), 'inch', { unit: 'kgf·m' })).toBe('2.07 kgf·m');
    expect(show(parse('180 in-lb'), 'metric', { digits: 7 })).toBe('20.33727 N·m');
    expect(show(of(1234567, 'Pa'), undefined, { digits: 3 })).toBe('1230000 Pa');
  });

  test('words of doubtful meaning beside a quantity do not keep it from being shown', () => {
    expect(show({ ...of(0.005, 'in'), written: '5 mils' })).toBe('0.0050 in');
    expect(show({ ...of(0.005, 'in'), written: 'about five' })).toBe('0.0050 in');
  });
});

describe('uncertainty', () => {
  test('is shown when asked for, as k = 2, with the value to the same place', () => {
    const written = parse('0.0030 ± 0.0007 in');
    expect(show(written)).toBe('0.0030 in');
    expect(show(written, 'inch', { uncertainty: true })).toBe('0.0030 ± 0.0007 in');
    expect(show(written, 'metric', { uncertainty: true })).toBe('0.076 ± 0.018 mm');
    expect(show(withUncertainty(of(140, 'in-lb'), 2.8), 'inch', { uncertainty: true })).toBe(
      '140.0 ± 5.6 in-lb',
    );
  });

  test('has no zero point: degrees of difference', () => {
    expect(show(parse('20 ± 2 °C'), 'inch', { uncertainty: true })).toBe('68.0 ± 3.6 °F');
  });
});

describe('both systems at once', () => {
  test("where the systems differ the reader's own comes first", () => {
    expect(showBoth(parse('140 in-lb'), 'inch')).toBe('140 in-lb (15.8 N·m)');
    expect(showBoth(parse('140 in-lb'), 'metric')).toBe('15.8 N·m (140 in-lb)');
  });

  test('a shared unit stands once', () => {
    expect(showBoth(parse('3600 rpm'), 'inch')).toBe('3600 rpm');
  });
});

test('as written is word for word', () => {
  expect(showAsWritten(parse('  .030" '))).toBe('.030"');
  expect(showAsWritten(of(12, 'mm'))).toBe('12.000 mm');
});
