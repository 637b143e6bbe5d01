import { describe, expect, test } from 'vitest';
import { csv } from '../../src/record/csv.js';

// Examples as printed in RFC 4180, section 2 (October 2005), from memory.
describe('RFC 4180, comma-separated values: its printed examples', () => {
  test('1 and 3: records with a header line, each ended by CRLF', () => {
    expect(
      csv(
        ['field_name', 'field_name', 'field_name'],
        [
          ['aaa', 'bbb', 'ccc'],
          ['zzz', 'yyy', 'xxx'],
        ],
      ),
    ).toBe('field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n');
  });

  test('6: a field with a line break stands in quotes', () => {
    expect(csv(['aaa', 'b\r\nbb', 'ccc'], [['zzz', 'yyy', 'xxx']])).toBe(
      'aaa,"b\r\nbb",ccc\r\nzzz,yyy,xxx\r\n',
    );
  });

  test('7: a quote inside a field is doubled', () => {
    expect(csv(['aaa', 'b"bb', 'ccc'], [])).toBe('aaa,"b""bb",ccc\r\n');
  });
});
