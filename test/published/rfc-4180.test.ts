import { csv } from '../../src/record/csv.js';
import { published, same } from '../support/published.js';

published('RFC 4180, section 2, comma-separated values')('its printed examples', 'from memory', () => {
  const second = ['zzz', 'yyy', 'xxx'];
  const names = ['field_name', 'field_name', 'field_name'];
  return [
    same(
      '1 and 3: records with a header line, each ended by CRLF',
      csv(names, [['aaa', 'bbb', 'ccc'], second]),
      'field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
    ),
    same(
      '6: a field with a line break stands in quotes',
      csv(['aaa', 'b\r\nbb', 'ccc'], [second]),
      'aaa,"b\r\nbb",ccc\r\nzzz,yyy,xxx\r\n',
    ),
    same('7: a quote inside a field is doubled', csv(['aaa', 'b"bb', 'ccc'], []), 'aaa,"b""bb",ccc\r\n'),
  ];
});
