import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { dueDay } from '../../src/job/index.js';

describe('the day of a next service', () => {
  test.each([
    ['2027-05-01', '2027-05-01', undefined],
    ['on 2027-05-01, or 25 h', '2027-05-01', undefined],
    ['yearly', '2027-03-15', 12],
    ['yearly, or every 25 to 50 h', '2027-03-15', 12],
    ['after 25 h, then every 100 h or yearly', '2027-03-15', 12],
    ['each season, or every 25 h', '2027-03-15', 12],
    ['every 200 h or 2 years', '2028-03-15', 24],
    ['every two years', '2028-03-15', 24],
    ['3 years', '2029-03-15', undefined],
    ['in 6 months', '2026-09-15', undefined],
    ['every 3 months', '2026-06-15', 3],
    ['monthly', '2026-04-15', 1],
    ['twice a year', '2026-09-15', 6],
    ['after 3 months, then yearly', '2026-06-15', undefined],
  ])('“%s”, handed over on March 15, 2026: %s, again after %s months', (when, day, everyMonths) => {
    expect(dueDay(when, '2026-03-15T10:00:00-05:00')).toEqual({ day, ...(everyMonths && { everyMonths }) });
  });

  test.each([
    '25 h',
    'every few tanks',
    'before every work',
    'before winter',
    '2026-02-30',
    'after 5 hours',
    '',
  ])('is not guessed from “%s”', (when) => {
    expect(dueDay(when, '2026-03-15')).toBeUndefined();
  });

  test('exists in its month, whatever the day of the hand-over', () => {
    const days = fc.date({ min: new Date('2020-01-01'), max: new Date('2039-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(days, fc.integer({ min: 1, max: 60 }), (from, months) => {
        const { day } = dueDay(`${months} months`, from.toISOString())!;
        const [year, month, date] = day.split('-').map(Number);
        const apart = (year! - from.getUTCFullYear()) * 12 + month! - 1 - from.getUTCMonth();
        expect([apart, date]).toEqual([months, Math.min(28, from.getUTCDate())]);
      }),
      { seed: 31 },
    );
  });
});

test('the words of the catalog say as many months as its own figure; winter alone names no day', () => {
  const said = builtInCatalog().nextDue.map(({ due, months }) => ({
    due,
    months,
    read: dueDay(due, '2026-03-15')?.day,
  }));
  const after = (months: number) => new Date(Date.UTC(2026, 2 + months, 15)).toISOString().slice(0, 10);
  for (const { due, months, read } of said)
    if (!/winter/.test(due))
      expect([due, read]).toEqual([due, months === undefined ? undefined : after(months)]);
  expect(said.filter(({ read }) => read).length).toBeGreaterThan(15);
});
