import { describe, expect, test } from 'vitest';
import { contentLines, dateValue, textValue, utcValue } from '../../src/record/icalendar.js';

// Examples as printed in RFC 5545 (September 2009), from memory.
describe('RFC 5545, iCalendar: its printed examples', () => {
  test('3.3.11: the escaped text value of the meeting', () => {
    expect(textValue('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toBe(
      'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
    );
  });

  test('3.3.11: backslash, semicolon and comma are escaped, the colon is not', () => {
    expect(textValue('a\\b;c,d:e')).toBe('a\\\\b\\;c\\,d:e');
  });

  test('3.3.4: July 14, 1997', () => {
    expect(dateValue('1997-07-14')).toBe('19970714');
  });

  test('3.3.5, form 2: January 19, 1998, at 0700 UTC', () => {
    expect(utcValue(new Date('1998-01-19T07:00:00Z'))).toBe('19980119T070000Z');
  });

  test('3.1: a long line is split by CRLF and one space, and the reader takes both out again', () => {
    const value = 'This is a long description that exists on a long line. '.repeat(4).trim();
    const text = contentLines([{ name: 'DESCRIPTION', value }]);
    expect(
      text
        .split('\r\n')
        .slice(1, -1)
        .every((line) => line.startsWith(' ')),
    ).toBe(true);
    expect(text.replaceAll(/\r\n[ \t]/g, '')).toBe(`DESCRIPTION:${value}\r\n`);
  });
});
