import { listed, monthNames } from '../../phrase/index.js';
import type { PlateScheme } from '../catalog.js';

type DateRule = NonNullable<PlateScheme['parts'][number]['date']>;

export interface DateReading {
  readonly known: boolean;
  /** "made 14 March 1987 or 14 March 1997", or why it is no date */
  readonly words: string;
}

interface Day {
  readonly year: number;
  readonly month?: number | undefined;
  readonly day?: number | undefined;
  readonly week?: number | undefined;
}

/** Every day that a date code can mean under a rule, in the order of its forms and years. */
export function readDateCode(code: string, rule: DateRule): DateReading {
  const figures = code.replace(/[ /.-]/g, '');
  const forms = rule.forms.filter((form) => form.length === figures.length);
  if (forms.length === 0)
    return { known: false, words: `unknown: this scheme has no date of ${figures.length} figures` };
  const days = forms.flatMap((form) => daysOf(figures, form, rule)).filter(exists);
  const printed = [...new Set(days.map(print))];
  if (printed.length === 0)
    return { known: false, words: `no date: no ${forms.join(' or ')} reads “${code}”` };
  return { known: true, words: `made ${joined(days, printed)}` };
}

function joined(days: readonly Day[], printed: readonly string[]): string {
  const withoutYear = new Set(printed.map((text) => text.replace(/ \d{4}$/, '')));
  if (printed.length <= 3 || withoutYear.size > 1) return printed.join(' or ');
  const years = days.map(({ year }) => year);
  return `${[...withoutYear][0]} in ${listed(years.map(String), 'or')}`;
}

function daysOf(figures: string, form: string, rule: DateRule): Day[] {
  const fields = cut(figures, form);
  if (!fields) return [];
  const number = (token: string) => (fields.has(token) ? Number(fields.get(token)) : undefined);
  const dayOfYear = number('DDD');
  return yearsOf(fields, rule).map((year) => ({
    year,
    month: number('MM'),
    day: number('DD'),
    week: number('WW'),
    ...(dayOfYear !== undefined && fromDayOfYear(year, dayOfYear)),
  }));
}

/** The figures under each token of the form; undefined when a letter stands for a figure or the other way round. */
function cut(figures: string, form: string): ReadonlyMap<string, string> | undefined {
  const fields = new Map<string, string>();
  let at = 0;
  for (const [token] of form.matchAll(/YYYY|YY|Y|L|MM|DDD|DD|WW/g)) {
    const piece = figures.slice(at, at + token.length);
    if (!(token === 'L' ? /^[A-Z]$/ : /^\d+$/).test(piece)) return undefined;
    fields.set(token, piece);
    at += token.length;
  }
  return fields;
}

function yearsOf(fields: ReadonlyMap<string, string>, { years, letters = '' }: DateRule): number[] {
  const all = Array.from({ length: years.to - years.from + 1 }, (_, index) => years.from + index);
  const [short] = ['YYYY', 'YY', 'Y'].flatMap((token) => fields.get(token) ?? []);
  if (short !== undefined) return all.filter((year) => String(year).endsWith(short));
  const letter = letters.indexOf(fields.get('L') ?? ' ');
  return letter < 0 ? [] : all.filter((_, index) => index % letters.length === letter);
}

const isLeap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
const lengthOf = (year: number, month: number) =>
  month === 2 ? (isLeap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;

function fromDayOfYear(year: number, dayOfYear: number): { month: number; day: number } {
  let left = dayOfYear;
  for (let month = 1; month <= 12; month++) {
    if (left <= lengthOf(year, month)) return { month, day: left };
    left -= lengthOf(year, month);
  }
  return { month: 13, day: left };
}

function exists({ year, month = 1, day = 1, week = 1 }: Day): boolean {
  return month >= 1 && month <= 12 && day >= 1 && day <= lengthOf(year, month) && week >= 1 && week <= 53;
}

function print({ year, month, day, week }: Day): string {
  if (week !== undefined) return `in week ${week} of ${year}`;
  if (month === undefined) return `in ${year}`;
  return day === undefined
    ? `in ${monthNames[month - 1]} ${year}`
    : `${day} ${monthNames[month - 1]} ${year}`;
}
