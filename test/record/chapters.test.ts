import fc from 'fast-check';
import { expect, test } from 'vitest';
import { filmSeconds } from '../../src/job/index.js';
import { chapters, chaptersOfLog } from '../../src/record/index.js';
import { Log } from './log.js';

type Clip = readonly [file: string, from: string, to: string, caption: string];

function filmed(...clips: readonly Clip[]) {
  const log = new Log();
  log.add('open', { tag: 17, title: 'Pump' });
  for (const [file, from, to, caption] of clips) {
    log.add('photograph', { clip: { file, from, to }, caption, stage: 'teardown', when: 'during' });
  }
  return chapters(log.fold());
}

test('a film’s clips become its chapters, in the order of their times', () => {
  const [file] = filmed(
    ['a.mp4', '12:30', '13:05', 'Governor link off'],
    ['a.mp4', '0:05', '1:02:03.25', 'Shroud & screws'],
  );
  expect(file).toEqual({
    film: 'a.mp4',
    notPlaced: [],
    text: [
      'WEBVTT',
      '',
      'NOTE a.mp4, tag 17',
      '',
      '1',
      '00:00:05.000 --> 01:02:03.250',
      'Shroud &amp; screws',
      '',
      '2',
      '00:12:30.000 --> 00:13:05.000',
      'Governor link off',
      '',
    ].join('\n'),
  });
});

test('each film has its own file, because times count from its start', () => {
  expect(filmed(['a.mp4', '0:01', '0:02', 'x'], ['b.mp4', '0:01', '0:02', 'y']).map((f) => f.film)).toEqual([
    'a.mp4',
    'b.mp4',
  ]);
  expect(filmed()).toEqual([]);
});

test('a clip whose times cannot be read, or that ends before it starts, is reported and not placed', () => {
  const [file] = filmed(
    ['a.mp4', 'later', '0:10', 'x'],
    ['a.mp4', '0:20', '0:10', 'y --> z'],
    ['a.mp4', '0:75', '2:00', 'w'],
  );
  expect(file?.notPlaced).toHaveLength(3);
  expect(file?.text).toContain('NOTE not placed: “later” to “0:10”, x');
  expect(file?.text).not.toMatch(/^\d+\n/m);
  expect(file?.text.match(/-->/g)).toBeNull();
});

test('no caption can break out of its cue', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 80 }), (caption) => {
      const [file] = filmed(['a.mp4', '0:01', '0:02', caption]);
      expect(file?.text.match(/-->/g)).toHaveLength(1);
      expect(file?.text.split('\n\n')).toHaveLength(3);
      expect(file?.text).not.toContain('<');
    }),
    { seed: 5 },
  );
});

test('times are read as people write them, and slips are not times', () => {
  expect(['83', '1:23', '0:01:23', '1:23,5', '01:02:03.004'].map(filmSeconds)).toEqual([
    83, 83, 83, 83.5, 3723.004,
  ]);
  expect(['', '1:60', '1:60:00', '-3', '1:2:3:4', 'ten'].map(filmSeconds)).toEqual(Array(6).fill(undefined));
});

/** Lines four minutes apart from 08:04 on, the third one struck. */
function logged() {
  const log = new Log();
  log.add('open', { tag: 17, title: 'Pump' });
  log.add('note', { words: 'Shroud off' });
  const wrong = log.add('note', { words: 'Wrong machine' });
  log.add('note', { words: 'Key sheared <half>' });
  log.add('strike', { entry: wrong, reason: 'slip' });
  log.add('note', { words: 'Flywheel off' });
  return log.fold();
}

test('a film that ran along has the lines of the log as chapters, from its own beginning to its end', () => {
  // 08:06 by the clock of the log's own offset, said in another one: the same instant
  const text = chaptersOfLog(logged(), { from: '2025-11-03T13:06:00Z', to: '2025-11-03T08:23:00-05:00' });
  expect(text).toBe(
    [
      'WEBVTT',
      '',
      'NOTE tag 17, a film that began 2025-11-03T13:06:00Z',
      '',
      '1',
      '00:02:00.000 --> 00:10:00.000',
      'Shroud off',
      '',
      '2',
      '00:10:00.000 --> 00:17:00.000',
      'Key sheared &lt;half&gt;',
      '',
    ].join('\n'),
  );
});

test('a film whose end is not said goes on a minute behind its last line', () => {
  const text = chaptersOfLog(logged(), { from: '2025-11-03T08:24:00-05:00' });
  expect(text).toContain('00:00:00.000 --> 00:01:00.000\nFlywheel off');
});

test.each([
  [{ from: 'noon' }, 'no time'],
  [{ from: '2025-11-03T09:00:00-05:00', to: '2025-11-03T08:00:00-05:00' }, 'ends before it begins'],
  [{ from: '2025-11-04T08:00:00-05:00' }, 'No line of the log'],
])('a film at %j is refused', (times, words) => {
  expect(() => chaptersOfLog(logged(), times)).toThrow(words);
});
