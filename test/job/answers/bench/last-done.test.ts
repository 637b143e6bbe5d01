import { expect, test } from 'vitest';
import { type Body, type EntryKind, fold, jobSummary } from '../../../../src/job/index.js';
import { jobId, log, torque } from '../../entries.js';

type Said = { [K in EntryKind]: readonly [kind: K, body: Body<K>] }[EntryKind];

function lastOf(...said: Said[]) {
  const { add, lines } = log();
  add('open', { tag: 7, title: 'tiller' });
  for (const [kind, body] of said) add(kind, body as never);
  return jobSummary(fold(jobId, lines)).last;
}

const off: Said = [
  'step',
  { step: 's1', stage: 'teardown', component: 'tank', title: 'Fuel tank', state: 'done' },
];
const on: Said = ['step', { step: 's2', stage: 'assembly', title: 'Fuel tank: back on', state: 'done' }];
const bolt: Said = [
  'torque',
  { joint: 'head', hole: 2, pass: 1, set: torque('140 in-lb'), result: 'clicked' },
];
const note: Said = ['note', { words: 'Ring   ordered\nby phone.', stage: 'parts' }];

test('the last thing done says where it goes on: the step, the bolt, or the sheet', () => {
  expect(lastOf(off)).toMatchObject({
    stage: 'teardown',
    page: 'take-apart',
    words: 'Fuel tank: off',
    by: 'bench',
  });
  expect(lastOf(off, on)).toMatchObject({ stage: 'assembly', page: 'put-together' });
  expect(lastOf(off, on, bolt)).toMatchObject({ stage: 'assembly', page: 'tighten/head' });
  expect(lastOf(off, note)).toMatchObject({ stage: 'parts', page: 'parts', words: 'Ring ordered by phone.' });
});

test('a finished sheet leads to the next one, and one that was taken up again to itself', () => {
  expect(lastOf(['stage', { stage: 'intake', state: 'finished', reason: '' }])?.page).toBe('findings');
  expect(lastOf(['stage', { stage: 'parts', state: 'not-needed', reason: 'none' }])?.page).toBe('teardown');
  expect(lastOf(['stage', { stage: 'parts', state: 'reopened', reason: '' }])?.page).toBe('parts');
  expect(lastOf(['stage', { stage: 'hand-over', state: 'finished', reason: '' }])?.page).toBe('hand-over');
});

test('a tag that was only hung is no work, and what was struck is none', () => {
  expect(lastOf()).toBeUndefined();
  const { add, lines } = log();
  add('open', { tag: 7, title: 'tiller' });
  add('intake', { machine: 'tiller' });
  const wrong = add('note', { words: 'another machine', stage: 'measure' });
  add('strike', { entry: wrong.id, reason: 'slip' });
  expect(jobSummary(fold(jobId, lines)).last).toMatchObject({ page: 'intake', at: lines[1]!.at });
});
