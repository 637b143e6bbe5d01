import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contentLines, textValue } from '../../src/record/icalendar.js';
import { calendar, RecordError, undated } from '../../src/record/index.js';
import { campaign } from '../support/campaign.js';
import { jobId, Log } from './log.js';
import { ordinaryJob } from './ordinary-job.js';

const { job } = await ordinaryJob();
const now = '2025-11-05T16:20:00-05:00';
const unfold = (text: string) => text.replaceAll('\r\n ', '');

test('what names a day is in the calendar; what is due after hours is said not to be', () => {
  const text = unfold(calendar(job, { now }));
  expect(text.match(/BEGIN:VEVENT/g)).toHaveLength(2);
  expect(text).toContain('DTSTART;VALUE=DATE:20260515\r\nSUMMARY:Oil change and valve check (tag 17)\r\n');
  expect(text).toContain('DTSTART;VALUE=DATE:20251201\r\nSUMMARY:Part due: Recoil spring (tag 17)\r\n');
  expect(text).toContain('DTSTAMP:20251105T212000Z');
  expect(text).toContain('Invented\\, for demonstration.');
  expect(undated(job)).toEqual(['First oil change: after 5 hours']);
});

test('importing again moves an item instead of doubling it: its UID stays', () => {
  const uids = (text: string) => text.match(/^UID:.*$/gm);
  const due = (when: string) => {
    const log = new Log();
    log.add('open', { tag: 1, title: 'Saw' });
    log.add('hand-over', {
      receivedBy: 'A',
      declined: [],
      nextDue: [
        { what: 'Oil & plug', when },
        { what: 'Oil & plug', when: '2027-01-01' },
      ],
    });
    return unfold(calendar(log.fold(), { now }));
  };
  expect(uids(due('2026-01-01'))).toEqual(uids(due('2026-02-01')));
  expect(uids(due('2026-01-01'))).toEqual([
    `UID:${jobId}-due-oil-plug@wristpin`,
    `UID:${jobId}-due-oil-plug-2@wristpin`,
  ]);
});

test('a day that does not exist is no day, and a time that is none is refused', () => {
  const log = new Log();
  log.add('open', { tag: 1, title: 'Saw' });
  log.add('hand-over', { receivedBy: 'A', declined: [], nextDue: [{ what: 'Oil', when: '2026-02-30' }] });
  const text = calendar(log.fold(), { now });
  expect(text).not.toContain('VEVENT');
  expect(undated(log.fold())).toEqual(['Oil: 2026-02-30']);
  expect(() => calendar(log.fold(), { now: 'soon' })).toThrow(RecordError);
});

test('every line ends in CRLF, is at most 75 octets long, and unfolds to what was written', () => {
  fc.assert(
    fc.property(
      fc.array(fc.string({ unit: 'binary', maxLength: 200 }), { minLength: 1, maxLength: 4 }),
      (texts) => {
        const lines = texts.map((text) => ({ name: 'SUMMARY', value: textValue(text) }));
        const out = contentLines(lines);
        const octets = out.split('\r\n').map((line) => Buffer.byteLength(line));
        expect(Math.max(...octets)).toBeLessThanOrEqual(75);
        expect(out.endsWith('\r\n')).toBe(true);
        expect(unfold(out)).toBe(lines.map(({ name, value }) => `${name}:${value}\r\n`).join(''));
      },
    ),
    { seed: 11, numRuns: campaign(100, 500) },
  );
});

test('a text value read back is the text', () => {
  const readBack = (value: string) =>
    value.replaceAll(/\\([nN\\;,])/g, (_, sign: string) => (/n/i.test(sign) ? '\n' : sign));
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      const plain = text.replaceAll(/\r\n?/g, '\n').replaceAll(/(?![\t\n])\p{Cc}/gu, '');
      expect(readBack(textValue(text))).toBe(plain);
      expect(textValue(text)).not.toMatch(/[\r\n]/);
    }),
    { seed: 12, numRuns: campaign(100, 500) },
  );
});
