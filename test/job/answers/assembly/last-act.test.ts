import { expect, test } from 'vitest';
import { door } from '../../door.js';
import { torque } from '../../entries.js';
import { bench } from '../../plan-job.js';

test('the back key takes back the piece that went on last with the new parts that were said in the same touch', () => {
  const at = bench('overhead-valve');
  const last = () => door(at.job()).lastAct;
  expect(last()).toBeUndefined();
  const part = at.add('part', { part: 'gasket', name: 'Head gasket', count: 1, state: 'fitted' });
  const piece = at.add('step', {
    step: 'cylinder-head-back',
    stage: 'assembly',
    title: 'Cylinder head: back on',
    state: 'done',
    putsBack: 'cylinder-head',
  });
  expect(last()).toEqual({ what: 'piece', words: 'Cylinder head', entries: [piece.id] });
  Object.assign(part, { at: piece.at });
  expect(last()?.entries).toEqual([piece.id, part.id]);
});

test('a bolt leads to its joint, a note is taken back alone, and what was struck is no act', () => {
  const at = bench('overhead-valve');
  const last = () => door(at.job()).lastAct;
  at.putBack('fuel-hose');
  at.add('torque', { joint: 'head', hole: 1, pass: 1, set: torque('95 in-lb'), result: 'clicked' });
  expect(last()).toMatchObject({ what: 'bolt', joint: 'head' });
  const note = at.add('spoken-note', {
    stage: 'assembly',
    about: 'Fuel hose back on',
    sound: { sha256: 'a'.repeat(64), mime: 'audio/wav', bytes: 9, seconds: 1 },
  });
  expect(last()).toEqual({ what: 'note', words: 'Fuel hose back on', entries: [note.id] });
  at.add('strike', { entry: note.id, reason: 'slip' });
  expect(last()?.what).toBe('bolt');
});
