import { expect, test } from 'vitest';
import { type Body, fold } from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, log } from '../../entries.js';

const recording = (more: Partial<Body<'recording'>>): Body<'recording'> => ({
  recording: 'one',
  name: 'one.wav',
  phase: 'before',
  temperature: 'cold',
  strokes: 4,
  cylinders: 1,
  seconds: 12,
  rivalsRpm: [],
  says: '',
  track: [],
  segments: [],
  marks: [],
  ...more,
});

test('before and after stand side by side, each thing from the latest recording that tells it', () => {
  const { add, lines } = log();
  add('recording', recording({ starts: { attempts: 9, caught: false } }));
  add(
    'recording',
    recording({
      recording: 'two',
      mean: { rpm: 3105.2, u: 6.1 },
      segments: [
        { from: 0, to: 2, rpm: 3000, u: 9 },
        { from: 2, to: 11, rpm: 3100, u: 6, huntingHz: 0.84, huntingRpm: 140, missedShare: 0.031 },
      ],
    }),
  );
  add(
    'recording',
    recording({
      recording: 'three',
      phase: 'after',
      mean: { rpm: 3321, u: 2 },
      starts: { attempts: 2, caught: true, secondsToSteady: 3.24 },
      segments: [{ from: 1, to: 11, rpm: 3321, u: 2, missedShare: 0 }],
    }),
  );
  expect(door(fold(jobId, lines)).heard).toEqual([
    { what: 'Pulls until it caught, cold', before: '9, did not catch', after: '2' },
    { what: 'From the first pull to a steady run', after: '3.2 s' },
    { what: 'Speed', before: '3105 ± 13 rpm', after: '3321 ± 4 rpm' },
    { what: 'Hunting', before: '± 140 rpm, 0.8 a second', after: 'none heard' },
    { what: 'Missed beats, at least', before: '3.1 in 100', after: 'none heard' },
  ]);
});

test('an ambiguous speed is never said as one number, and no speed is not said at all', () => {
  const { add, lines } = log();
  add('recording', recording({ mean: { rpm: 3000, u: 5 }, rivalsRpm: [1500, 6000] }));
  add('recording', recording({ recording: 'two', phase: 'after', says: 'no stable period' }));
  expect(door(fold(jobId, lines)).heard).toEqual([{ what: 'Speed', before: '3000 or 1500 or 6000 rpm' }]);
});

test('what a belt loses and the beat of a blade are said with their doubt', () => {
  const { add, lines } = log();
  add(
    'recording',
    recording({
      beat: { beats: true, share: 0.72, u: 0.04 },
      shaft: { rpm: 1240.4, ratio: 2.4, slip: 0.125, u: 0.004 },
    }),
  );
  expect(door(fold(jobId, lines)).heard).toEqual([
    { what: 'Beat once a turn while it ran down', before: '0.7 ± 0.1 times that of its two ends' },
    { what: 'Belt loses', before: '12.5 % ± 0.8 %, at 1240 rpm' },
  ]);
});
