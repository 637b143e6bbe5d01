import { contentLines, dateValue, textValue, utcValue } from '../../src/record/icalendar.js';
import { published, same } from '../support/published.js';

const rfc5545 = published('RFC 5545, iCalendar');

rfc5545('its printed values', 'from memory', () => [
  same(
    '3.3.11: the escaped text of the meeting',
    textValue('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.'),
    'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
  ),
  same('3.3.11: backslash, semicolon and comma, not the colon', textValue('a\\b;c,d:e'), 'a\\\\b\\;c\\,d:e'),
  same('3.3.4: July 14, 1997', dateValue('1997-07-14'), '19970714'),
  same(
    '3.3.5, form 2: January 19, 1998, at 0700 UTC',
    utcValue(new Date('1998-01-19T07:00:00Z')),
    '19980119T070000Z',
  ),
]);

rfc5545(
  '3.1: a line longer than 75 octets is split by CRLF and one space, and read back without them',
  'from memory',
  () => {
    const value = 'This is a long description that exists on a long line. '.repeat(4).trim();
    const text = contentLines([{ name: 'DESCRIPTION', value }]);
    const rows = text.split('\r\n').slice(0, -1);
    return [
      same('octets of the first row', rows[0]!.length, 75),
      same(
        'rows that go on',
        rows.slice(1).filter((row) => !row.startsWith(' ')),
        [],
      ),
      same('read back', text.replaceAll(/\r\n[ \t]/g, ''), `DESCRIPTION:${value}\r\n`),
    ];
  },
);
