import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import type { RunUp } from '../../../../src/job/answers/run-up/run-up.js';
import {
  type Body,
  droopBetween,
  fold,
  type RawEntry,
  topSpeedSaid,
  written,
} from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, log } from '../../entries.js';

const _catalog = builtInCatalog();
const rpm = (text: string) => written(text, 'rotation');

function mower(most?: string) {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  add('intake', { machine: 'mower', use: 'mower', architecture: 'side-valve', governor: 'air-vane' });
  if (most)
    add('spec', {
      spec: 'governed-top-speed',
      label: 'Top speed, no load',
      line: most,
      value: rpm(most),
      origin: { from: "maker's sheet", detail: 'page 4' },
    });
  return { add, lines };
}

const runUp = (lines: readonly RawEntry[]): RunUp => door(fold(jobId, lines)).runUp;
const state = (lines: readonly RawEntry[], id: string) =>
  runUp(lines).items.find(({ step }) => step.id === id)?.state;
const barred = (lines: readonly RawEntry[]) => {
  const job = fold(jobId, lines);
  return door(job).gates.find((g) => g.stage === 'hand-over')!.blocks;
};

const heard = (
  mean: { rpm: number; u: number },
  more: Partial<Body<'recording'>> = {},
): Body<'recording'> => ({
  recording: 'after-1',
  name: 'after.wav',
  phase: 'after',
  temperature: 'hot',
  strokes: 4,
  cylinders: 1,
  seconds: 20,
  mean,
  rivalsRpm: [],
  says: '',
  track: [],
  segments: [],
  marks: [],
  ...more,
});

test('a top speed above the engine’s own sheet stops the run, whatever was said about it', () => {
  const { add, lines } = mower('3300 rpm');
  add('run-up', { item: 'top-speed-set', title: 'Top speed', result: 'ok', value: rpm('3350 rpm') });
  expect(state(lines, 'top-speed-set')).toBe('outside');
  expect(runUp(lines).stops).toEqual(['Top speed set, last: 3350 rpm is outside the limit']);
  expect(barred(lines)).toContain('Top speed set, last: 3350 rpm is outside the limit');
  add('run-up', { item: 'top-speed-set', title: 'Top speed', result: 'reading', value: rpm('3280 rpm') });
  expect(state(lines, 'top-speed-set')).toBe('ok');
  expect(runUp(lines).stops).toEqual([]);
});

test('without a sheet a reading alone proves no top speed; saying that it is in order does', () => {
  const { add, lines } = mower();
  add('run-up', { item: 'top-speed-set', title: 'Top speed', result: 'reading', value: rpm('3280 rpm') });
  expect(state(lines, 'top-speed-set')).toBe('read');
  expect(barred(lines)).toContain('not shown to be safe: Top speed set, last');
  add('run-up', { item: 'top-speed-set', title: 'Top speed', result: 'ok', value: rpm('3280 rpm') });
  expect(barred(lines)).not.toContain('not shown to be safe: Top speed set, last');
});

test('a blade that needs more than the rule’s 3.0 s bars the hand-over on every mower (16 CFR 1205.5)', () => {
  const { add, lines } = mower();
  const stopIn = (text: string) =>
    add('run-up', {
      item: 'blade-stop-time',
      title: 'Blade stops',
      result: 'reading',
      value: written(text, 'time'),
    });
  stopIn('3.0 s');
  expect(state(lines, 'blade-stop-time')).toBe('ok');
  stopIn('3.2 s');
  expect(state(lines, 'blade-stop-time')).toBe('outside');
  expect(barred(lines).join()).toContain('3.2 s is outside the limit');
});

test('an overspeed heard in the recording stops the run until a later reading shows otherwise', () => {
  const { add, lines } = mower('3300 rpm');
  add('recording', heard({ rpm: 3400, u: 10 }));
  expect(runUp(lines).stops).toEqual(['Overspeed: after.wav turns 3380 rpm, 3300 rpm is the most']);
  expect(barred(lines)).toContain('Overspeed: after.wav turns 3380 rpm, 3300 rpm is the most');
  add('run-up', { item: 'top-speed-set', title: 'Top speed', result: 'reading', value: rpm('3290 rpm') });
  expect(runUp(lines).stops).toEqual([]);
});

test.each([
  ['within the tool’s own doubt', heard({ rpm: 3310, u: 10 })],
  ['left ambiguous by the sound', heard({ rpm: 3400, u: 5 }, { rivalsRpm: [1700] })],
  ['before the work', heard({ rpm: 3400, u: 5 }, { phase: 'before' })],
])('a speed %s stops no engine', (_, recording) => {
  const { add, lines } = mower('3300 rpm');
  add('recording', recording);
  expect(runUp(lines).stops).toEqual([]);
});

test('a missing guard, a fuel leak and a stop control that fails each stop the run in words', () => {
  for (const item of ['guards-on', 'no-fuel-leak', 'stop-each-position']) {
    const { add, lines } = mower();
    add('run-up', { item, title: item, result: 'not-ok' });
    expect(runUp(lines).stops).toHaveLength(1);
    expect(runUp(lines).stops[0]).toMatch(/: not in order$/);
  }
});

describe('what a run-up asks for', () => {
  const chipper = () => {
    const { add, lines } = log();
    add('open', { tag: 4, title: '' });
    add('intake', {
      machine: 'chipper',
      use: 'chipper',
      architecture: 'overhead-valve',
      governor: 'flyweight',
    });
    add('decision', { about: 'machine', title: 'To be repaired', choice: 'repair', reason: '' });
    return { add, lines };
  };
  const askedFor = (lines: readonly RawEntry[], why: string | undefined) =>
    runUp(lines)
      .items.filter(({ asked }) => asked === why)
      .map(({ step }) => step.id);

  test('is each safety point by itself, whatever the job was', () => {
    const { lines } = chipper();
    const bars = runUp(lines).items.filter(({ step }) => step.barsHandOver);
    expect(bars.length).toBeGreaterThan(5);
    expect(askedFor(lines, 'safety')).toEqual(bars.map(({ step }) => step.id));
    expect(askedFor(lines, 'touched')).toEqual([]);
  });

  test('is what belongs to a piece that was off or was repaired; the rest may stay not looked at', () => {
    const { add, lines } = chipper();
    add('step', { step: 'l', stage: 'teardown', title: 'Lever', component: 'governor-lever', state: 'done' });
    add('decision', {
      ...{ about: 'fault', which: 'chipper-knives-dull', title: 'Knives', choice: 'repaired', reason: '' },
    });
    expect(askedFor(lines, 'touched')).toEqual(['static-governor-set', 'load-chipper']);
    expect(askedFor(lines, undefined)).toContain('look-after-a-night');
    const gate = door(fold(jobId, lines)).gates.find((g) => g.stage === 'run-up')!;
    const titles = (ids: readonly string[]) =>
      ids.map((id) => `still to do: ${runUp(lines).items.find(({ step }) => step.id === id)!.step.title}`);
    expect(gate.missing).toEqual(expect.arrayContaining(titles(['static-governor-set', 'load-chipper'])));
    expect(gate.missing).not.toEqual(expect.arrayContaining(titles(['look-after-a-night'])));
  });
});

test('a speed under load is the droop, once the top speed was said: 3400 falling to 3150 rpm is 7.4 %', () => {
  const { add, lines } = mower();
  const at = () => door(fold(jobId, lines));
  expect(topSpeedSaid(at())).toBeUndefined();
  add('run-up', { item: 'top-speed-set', title: 'Top speed', result: 'reading', value: rpm('3400 rpm') });
  const droop = droopBetween(topSpeedSaid(at())!, rpm('3150 rpm'))!;
  expect(droop.value!.si).toBeCloseTo(250 / 3400, 3);
  expect(droop.words).toBe('3150 rpm under load, 3400 rpm without');
  expect(droopBetween(rpm('3400 rpm'), written('7 %', 'ratio'))).toBeUndefined();
});
