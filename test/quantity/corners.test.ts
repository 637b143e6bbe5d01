import { describe, expect, test } from 'vitest';
import { writtenNumber } from '../../src/quantity/digits.js';
import {
  of,
  parse,
  parseRange,
  parseThread,
  requirePlausible,
  show,
  showBoth,
  to,
  withUncertainty,
} from '../../src/quantity/index.js';
import { expectRefusal, refusal } from './refusal.js';

/** Edges of what is read, shown and refused; each is a promise of its docstring. */

describe('numbers', () => {
  test('groups that can only be groups are not taken for a decimal comma', () => {
    expect(parse('1,234,567 Pa').si).toBe(1_234_567);
    expect(to(parse('1,234,567 mm'), 'mm')).toBeCloseTo(1_234_567, 6);
    expect(to(parse('1,234.5 mm'), 'mm')).toBeCloseTo(1234.5, 9);
    expectRefusal(() => parse('1,234 mm'), 'ambiguous');
  });

  test('blanks round the bar of a fraction and within ± mean nothing', () => {
    for (const text of ['1-1/4 in', '1-1 / 4 in', '1 and 1 /4 in', '1 1/ 4 in', '1¼ in'])
      expect(to(parse(text), 'in'), text).toBeCloseTo(1.25, 12);
    for (const text of ['3 ± 0.5 mm', '3 +/- 0.5 mm', '3 + / - 0.5 mm', '3+-0.5 mm'])
      expect(parse(text).u, text).toBeCloseTo(0.25e-3, 12);
  });

  test('two numbers are no proportion without the colon', () => {
    expect(parse('50:1', 'ratio').si).toBe(50);
    expect(refusal(() => parse('50 1', 'ratio')).message).toContain('50 1');
    expect(refusal(() => parse('50 1')).code).not.toBe('no-unit');
  });

  test('a text of two hundred characters is still read, one more is none', () => {
    const padded = (length: number) => `${'5'.padStart(length - 3, '0')} mm`;
    expect(parse(padded(200)).si).toBeCloseTo(0.005, 12);
    expectRefusal(() => parse(padded(201)), 'not-a-number', '201 characters');
  });
});

describe('what a value carries', () => {
  test('its origin from the beginning', () => {
    const origin = { from: 'standard', detail: 'invented' } as const;
    expect(of(180, 'in-lb', origin).origin).toEqual(origin);
    expect(of(180, 'in-lb')).not.toHaveProperty('origin');
  });

  test('an uncertainty of nothing can be stated, less than nothing cannot', () => {
    expect(withUncertainty(of(1, 'in'), 0).u).toBe(0);
    for (const u of [-0.001, Number.NaN, Number.POSITIVE_INFINITY])
      expectRefusal(() => withUncertainty(of(1, 'in'), u), 'out-of-range', `${u} in`, '0 or more');
  });
});

describe('a refusal says what was written, what was wanted and how to write it', () => {
  test('no number at all', () => {
    const error = expectRefusal(() => parse('tight', 'torque'), 'not-a-number');
    expect(error).toMatchObject({ text: 'tight', wanted: 'torque' });
    expect(error.hint).toContain('in-lb');
  });

  test('a ratio that may be percent or times', () => {
    const error = expectRefusal(() => parse('46', 'ratio'), 'ambiguous', '46 %', '46:1');
    expect(error.text).toBe('46');
    expect(error.hint).toBeTruthy();
  });

  test('a limit without a number is refused like any other text', () => {
    expectRefusal(() => parseRange('hot min', 'temperature'), 'not-a-number');
    expectRefusal(() => parseRange('hot to cold', 'temperature'), 'not-a-number');
  });

  test('letter case that would have to tell two units apart', () => {
    const error = expectRefusal(() => parse('5 MohM'), 'ambiguous');
    expect(error).toMatchObject({ text: 'MohM' });
    expect(error.hint).toMatch(/^write \S+ or \S+$/);
  });
});

describe('bounds of what is plausible', () => {
  const upTo = (most: number, ...likelyUnits: string[]) => ({
    low: of(10, 'N·m'),
    high: of(most, 'N·m'),
    because: 'an invented bolt',
    likelyUnits,
  });

  test('both stand in the refusal, in the unit that was written', () => {
    expect(refusal(() => requirePlausible(parse('5 N·m'), upTo(16))).wanted).toBe('10 to 16 N·m');
  });

  test('half of the least is far below it, and a bare ratio is said without a unit', () => {
    const said = (text: string) => refusal(() => requirePlausible(parse(text), upTo(16))).message;
    expect(said('4 N·m')).toBe('4 N·m is far below what an invented bolt takes (at least 10 N·m)');
    expect(said('6 N·m')).toBe('6 N·m is below what an invented bolt takes (at least 10 N·m)');
    const ratio = { low: of(5, '1'), high: of(12, '1'), likelyUnits: [] };
    expect(refusal(() => requirePlausible(of(13, '1'), ratio)).message).toMatch(
      /^13(\.0+)? is above what can be meant here \(at most 12\)$/,
    );
  });

  test('a reading on the bound is offered, one beyond either bound is not', () => {
    const offered = (text: string, most: number) =>
      refusal(() => requirePlausible(parse(text), upTo(most, 'in-lb', 'N·m'))).hint;
    expect(offered('15 ft-lb', 15)).toBe('15 N·m would be plausible');
    expect(offered('15 ft-lb', 16)).toBe('15 N·m would be plausible');
    expect(offered('15 ft-lb', 14.9)).toBeUndefined();
  });
});

describe('shown', () => {
  test('a fraction as it is written on a drill, however it was typed', () => {
    for (const [text, shown] of [
      ['1 and 1/4 in', '1-1/4 in'],
      ['1 - 1/4 in', '1-1/4 in'],
      ['1 1/4 in', '1-1/4 in'],
      ['3 / 64 in', '3/64 in'],
      ['3⁄64 in', '3/64 in'],
    ] as const)
      expect(show(parse(text), 'inch'), text).toBe(shown);
  });

  // NIST SP 811, appendix B.8: 1 lbf·in = 0.112 984 8 N·m, 1 mi = 1.609 344 km, 1 ft = 0.3048 m
  test('both systems, whichever is the reader’s', () => {
    expect(showBoth(parse('180 in-lb'), 'inch')).toBe('180 in-lb (20.3 N·m)');
    expect(showBoth(parse('20.3 N·m'), 'metric')).toMatch(/^20\.3 N·m \(18\d(\.\d)? in-lb\)$/);
    expect(showBoth(parse('3600 rpm'), 'metric')).toBe('3600 rpm');
  });

  test('the ground covered in the unit that goes with it, long or short', () => {
    expect(show(of(0.005, 'km'), 'inch')).toMatch(/^16\.4\d* ft$/);
    expect(show(of(5, 'yd'), 'metric')).toMatch(/^4\.57\d* m$/);
    expect(show(of(30, 'mph'), 'metric')).toMatch(/^48(\.\d+)? km\/h$/);
    expect(show(of(48.28, 'km/h'), 'inch')).toMatch(/^30(\.0+)? mph$/);
  });
});

describe('threads', () => {
  test('a size that has no such series leaves the pitch open', () => {
    for (const text of ['7/64 UNC', '7/64 UNF']) expectRefusal(() => parseThread(text), 'ambiguous', 'pitch');
  });

  test('a left-hand thread in every way it is marked', () => {
    for (const text of [
      '5/16-18 LH',
      '5/16-18LH',
      '5/16-18-LH',
      '5/16-18 left hand',
      'M8×1.25 LH',
      'M8 left-handed',
    ])
      expect(parseThread(text).leftHand, text).toBe(true);
    expect(parseThread('5/16-18 LH').name).toBe('5/16-18');
  });

  test('a pipe thread is refused in every way it is marked, with what to do instead', () => {
    for (const text of ['1/8 NPT', '1/8-27 NPTF', '1/8 NPS', '1/8 NPSM', '1/8 BSP', 'G 1/8', 'Rp 1/8']) {
      const error = expectRefusal(() => parseThread(text), 'ambiguous', 'pipe thread');
      expect(error.text).toBe(text);
      expect(error.hint).toContain('measure it across');
    }
  });

  test('what only contains a marking is none', () => {
    for (const text of ['XM8×1.25', 'M8×1.25 or so']) expectRefusal(() => parseThread(text), 'unknown-unit');
  });

  test('a bolt’s length is suspected only where a metric one stands for the pitch', () => {
    const hint = (text: string) => refusal(() => parseThread(text)).hint ?? '';
    expect(hint('M8×25')).toContain('a length is left out');
    expect(hint('M8×0.1')).not.toContain('length');
    expect(hint('1/4-3')).not.toContain('length');
  });

  test('the pitch of three tenths of the diameter is the last that is taken', () => {
    expect(parseThread('M10×3').pitchMm).toBe(3);
    expectRefusal(() => parseThread('M10×3.1'), 'out-of-range', 'too coarse');
    expectRefusal(() => parseThread('M10×0.1'), 'out-of-range', 'too fine');
  });
});

describe('what stands between, round and behind', () => {
  test('“+ / -” with blanks within it ends the unit of a written number, whatever unit it is carried in', () => {
    for (const text of ['65.03 mm + / - 0.01', '65.03 mm +/ -0.01 mm', '65.03 mm + - 0.01'])
      expect(writtenNumber({ ...parse(text), unit: 'in' }), text).toMatchObject({
        unit: 'mm',
        number: { value: 65.03 },
      });
  });

  test('words between two numbers that are no unit make no range, and the refusal says so', () => {
    for (const text of ['3 foo to 5 mm', '3 mm foo 5 mm', '3 blorks - 5 mm'])
      expect(refusal(() => parseRange(text)).message, text).toContain('is one value, not a range');
  });

  test('a proportion is shown as one only where it is all that was written', () => {
    const oil = parse('50:1', 'ratio');
    expect(show(oil)).toBe('50:1');
    expect(show({ ...oil, written: '50:1 mix' })).toBe('50');
    expect(show({ ...oil, written: 'mix 50:1' })).not.toBe('50:1');
  });

  test('a class of fit is set off by a blank or a hyphen and by nothing else', () => {
    for (const text of ['M8×1.25-6g', 'M8×1.25 6g', 'M8×1.25 - 6g6h'])
      expect(parseThread(text).name, text).toBe('M8×1.25');
    for (const text of ['M8×1.25_6g', 'M8×1.25/6g', 'M8×1.256g'])
      expectRefusal(() => parseThread(text), 'unknown-unit');
  });
});
