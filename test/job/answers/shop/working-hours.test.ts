import { describe, expect, test } from 'vitest';
import { wallMinute } from '../../../../src/job/answers/shop/working-hours.js';
import { hoursText, readHours, usualHours, wallTime } from '../../../../src/job/index.js';

describe('working hours', () => {
  test.each(['Mon-Fri 08:00-17:00', 'Tue,Thu,Sat 09:00-14:00', 'Mon-Sat 07:30-12:00', 'Sun 10:00-24:00'])(
    '%s written and read back is the same',
    (text) => {
      expect(hoursText(readHours(text)!)).toBe(text);
    },
  );

  test('without days they are Monday to Friday', () => {
    expect(readHours('08:00-17:00')).toEqual(usualHours);
  });

  test('days run over the end of the week', () => {
    expect([...readHours('Fri-Mon 8:00-12:00')!.days].sort()).toEqual([0, 1, 5, 6]);
  });

  test.each([
    '',
    'always',
    '17:00-08:00',
    '08:00-25:00',
    '08:75-17:00',
    'Mon-Wed-Fri 08:00-17:00',
    'Xyz 08:00-17:00',
  ])('“%s” is not read as hours', (text) => {
    expect(readHours(text)).toBeUndefined();
  });

  test('the wall clock converted and back is the same minute', () => {
    expect(wallTime(wallMinute('2026-11-25T09:43:12.000+01:00'))).toBe('2026-11-25T09:43');
  });
});
