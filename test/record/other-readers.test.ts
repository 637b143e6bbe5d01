import { parse as readCsv } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { WebVTTParser } from 'webvtt-parser';
import { calendar, chapters, chaptersOfLog, tables } from '../../src/record/index.js';
import { Log } from './log.js';
import { ordinaryJob } from './ordinary-job.js';

/** What we write, read by libraries that others wrote for these forms. */
const { job } = await ordinaryJob();
const now = '2025-11-05T16:20:00-05:00';

describe('calendar, read by ical.js', () => {
  const read = (text: string) =>
    new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));

  test('each event has its day, its words and an id of its own', () => {
    const events = read(calendar(job, { now }));
    expect(events.map(({ summary, startDate }) => [startDate.toString(), startDate.isDate, summary])).toEqual(
      [
        ['2026-05-15', true, 'Oil change and valve check (tag 17)'],
        ['2025-12-01', true, 'Part due: Recoil spring (tag 17)'],
      ],
    );
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
  });

  test('what comes back each year, each month or each half year does so on the day of the hand-over', () => {
    const log = new Log();
    log.add('open', { tag: 1, title: 'Saw' });
    const nextDue = [
      { what: 'Fins', when: 'yearly' },
      { what: 'Under load; half an hour', when: 'monthly' },
      { what: 'Brushes, rings', when: 'every 200 h or 2 years' },
      { what: 'Air cleaner', when: '25 h' },
    ];
    log.add('hand-over', { receivedBy: 'A', declined: [], nextDue });
    const days = read(calendar(log.fold(), { now })).map((event) => {
      const each = event.iterator();
      return [event.summary, ...[1, 2, 3].map(() => each.next().toString())];
    });
    expect(days).toEqual([
      ['Fins (tag 1)', '2026-11-03', '2027-11-03', '2028-11-03'],
      ['Under load; half an hour (tag 1)', '2025-12-03', '2026-01-03', '2026-02-03'],
      ['Brushes, rings (tag 1)', '2027-11-03', '2029-11-03', '2031-11-03'],
    ]);
  });

  test('a part that was promised twice stands once, on the day said last', () => {
    const log = new Log();
    log.add('open', { tag: 1, title: 'Saw' });
    for (const due of ['2025-12-01', '2025-12-09'])
      log.add('part', { part: 'ring', name: 'Ring', count: 1, state: 'ordered', due });
    const events = read(calendar(log.fold(), { now }));
    expect(events.map(({ summary, startDate }) => [summary, startDate.toString()])).toEqual([
      ['Part due: Ring (tag 1)', '2025-12-09'],
    ]);
  });
});

describe('tables, read by csv-parse', () => {
  test('each row has its columns, and the numbers are the log’s', () => {
    const all = tables(job);
    const rows = (name: keyof typeof all) =>
      readCsv(all[name], { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];
    expect(rows('measurements').map((row) => row['value written'])).toEqual(
      job.measurements.map(({ value }) => value.written),
    );
    expect(rows('torques').map((row) => Number(row['set SI']))).toEqual(job.torques.map(torqueAsked));
    expect(rows('parts').map((row) => row.part)).toEqual([...job.parts.keys()]);
  });

  const torqueAsked = ({ set }: (typeof job.torques)[number]) => set.si;
});

describe('chapters, read by the W3C’s WebVTT parser', () => {
  const read = (text: string) => {
    const { cues, errors } = new WebVTTParser().parse(text, 'chapters');
    return { errors, cues: cues.map(({ startTime, endTime, text }) => [startTime, endTime, text]) };
  };

  test('pieces that were named stand at their times, and nothing is wrong in the file', () => {
    const log = new Log();
    log.add('open', { tag: 17, title: 'Pump' });
    for (const [from, to, caption] of [
      ['12:30', '13:05', 'Governor link off'],
      ['0:05', '1:02:03.25', 'Shroud & <screws> --> out'],
    ] as const)
      log.add('photograph', {
        clip: { file: 'a.mp4', from, to },
        caption,
        stage: 'teardown',
        when: 'during',
      });
    const { cues, errors } = read(chapters(log.fold())[0]!.text);
    expect(errors).toEqual([]);
    expect(cues.map(([from, to]) => [from, to])).toEqual([
      [5, 3723.25],
      [750, 785],
    ]);
    expect(cues.map(([, , words]) => decoded(String(words)))).toEqual([
      'Shroud & <screws> --> out',
      'Governor link off',
    ]);
  });

  test('the log as chapters has each line at its time', () => {
    const log = new Log();
    log.add('open', { tag: 17, title: 'Pump' });
    for (const words of ['Shroud off', 'Key sheared', 'Flywheel off']) log.add('note', { words });
    // the lines stand four minutes apart, from 08:04 on
    const { cues, errors } = read(chaptersOfLog(log.fold(), { from: '2025-11-03T08:06:30-05:00' }));
    expect(errors).toEqual([]);
    expect(cues).toEqual([
      [90, 330, 'Shroud off'],
      [330, 570, 'Key sheared'],
      [570, 630, 'Flywheel off'],
    ]);
  });

  const decoded = (text: string) =>
    text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
});
