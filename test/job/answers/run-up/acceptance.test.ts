import { expect, test } from 'vitest';
import { type Body, fold, type RawEntry, written } from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, log } from '../../entries.js';

const said = (lines: readonly RawEntry[], id: string) =>
  door(fold(jobId, lines)).acceptance.find((row) => row.acceptance.id === id)?.said?.words;

const recording = (
  recording: string,
  temperature: 'cold' | 'hot',
  attempts: number,
  caught = true,
): Body<'recording'> => ({
  recording,
  name: `${recording}.wav`,
  phase: 'after',
  temperature,
  strokes: 4,
  cylinders: 1,
  seconds: 12,
  mean: { rpm: 3312.4, u: 4.2 },
  rivalsRpm: [],
  says: '',
  track: [],
  starts: { attempts, caught },
  segments: [],
  marks: [],
});

test('each acceptance number comes from the latest line that says it', () => {
  const { add, lines } = log();
  add('intake', { architecture: 'overhead-valve', governor: 'flyweight' });
  add('recording', recording('cold', 'cold', 2));
  expect(said(lines, 'cold-start-pulls')).toBe('2');
  expect(said(lines, 'no-load-speed')).toBe('3312 ± 9 rpm');
  add('run-up', {
    item: 'top-speed-set',
    title: 'Top speed',
    result: 'reading',
    value: written('3320 rpm', 'rotation'),
  });
  expect(said(lines, 'no-load-speed')).toBe('3320 rpm');
  add('recording', recording('hot', 'hot', 3, false));
  expect(said(lines, 'hot-start-pulls')).toBe('3, did not catch');
  expect(said(lines, 'droop')).toBeUndefined();
});

test('what a check or a measurement said before the work is no proof', () => {
  const { add, lines } = log();
  add('intake', { architecture: 'overhead-valve' });
  add('observation', { check: 'smoke', title: 'Smoke', outcomes: ['blue'] });
  add('measurement', { measure: 'compression', title: 'Compression', value: written('40 psi', 'pressure') });
  expect([said(lines, 'noise-and-smoke'), said(lines, 'compression')]).toEqual([undefined, undefined]);
  add('run-up', { item: 'first-pull', title: 'First start', result: 'ok' });
  add('observation', { check: 'smoke', title: 'Smoke', outcomes: ['none'], words: 'clear after 3 min' });
  add('measurement', {
    measure: 'compression',
    title: 'Compression',
    value: written('85 psi', 'pressure'),
    phase: 'after',
  });
  expect(said(lines, 'noise-and-smoke')).toBe('none, clear after 3 min');
  expect(said(lines, 'compression')).toBe('85 psi');
});

test('each of them says how it is known', () => {
  const { add, lines } = log();
  add('intake', { architecture: 'overhead-valve' });
  add('recording', recording('cold', 'cold', 2));
  add('measurement', {
    measure: 'compression',
    title: 'Compression',
    value: written('85 psi', 'pressure'),
    instrument: 'compression-gauge',
    phase: 'after',
  });
  const known = (id: string) =>
    door(fold(jobId, lines)).acceptance.find((row) => row.acceptance.id === id)?.said?.from;
  expect(known('cold-start-pulls')).toBe('heard in cold.wav');
  expect(known('compression')).toBe('measured, compression gauge');
});
