import { expect, test } from 'vitest';
import type { RunUpState } from '../../../../src/job/answers/run-up/run-up.js';
import { type GateRules, gates } from '../../../../src/job/answers/stages/gates.js';
import { fold, type Gate, type Job, type RawEntry, type Stage } from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, length, log, torque } from '../../entries.js';

const rules: GateRules = {
  safetyFound: [],
  firstLooks: [
    { title: 'spark', checks: ['spark-across-gap'] },
    { title: 'oil as found', checks: ['oil-level', 'oil-feel'] },
  ],
  runUp: [],
  stops: [],
};
const runUpState = (job: Job, item: string) => (job.runUp.get(item)?.result ?? 'open') as RunUpState;
const at = (lines: readonly RawEntry[], stage: Stage): Gate => {
  const job = fold(jobId, lines);
  const runUp = [
    { title: 'the stop control stops it', barsHandOver: true, isAsked: true, state: runUpState(job, 'stop') },
    { title: 'top speed', barsHandOver: false, isAsked: true, state: runUpState(job, 'speed') },
  ];
  return gates(door(job), { ...rules, runUp }).find((g) => g.stage === stage)!;
};

test('an empty job says at each stage what is missing, in words', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  const all = gates(door(fold(jobId, lines)), rules);
  expect(all.map((g) => g.state)).toEqual(Array(9).fill('untouched'));
  expect(at(lines, 'intake').missing).toContain('photograph the condition it came in');
  expect(at(lines, 'findings').missing).toEqual(['first looks still open: spark and oil as found']);
});

test('either way of looking closes a first look', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  add('observation', { check: 'oil-feel', title: 'Oil', outcomes: ['black'] });
  expect(at(lines, 'findings').missing).toEqual(['first look still open: spark']);
  add('observation', { check: 'spark-across-gap', title: 'Spark', outcomes: ['strong'] });
  expect(at(lines, 'findings').state).toBe('done');
});

test('what came off must go back: fasteners, ports and pieces are counted in words', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  const bolts = [{ what: 'bolt', size: '5/16-18', length: '1-1/2 in', count: 8 }];
  add('step', {
    step: 'cylinder-head',
    stage: 'teardown',
    title: 'Cylinder head',
    state: 'done',
    fasteners: bolts,
    plugged: ['spark hole'],
    bag: '4',
  });
  expect(at(lines, 'assembly')).toMatchObject({
    state: 'under-way',
    missing: ['not back on: Cylinder head (bag 4)'],
    blocks: [],
  });
  add('step', {
    step: 'cylinder-head-back',
    stage: 'assembly',
    title: 'Head on',
    state: 'done',
    putsBack: 'cylinder-head',
    fasteners: [{ ...bolts[0]!, count: 7 }],
  });
  expect(at(lines, 'assembly')).toMatchObject({
    state: 'blocked',
    missing: [],
    blocks: [
      'left over: 1 × 5/16-18 × 1-1/2 in bolt, from Cylinder head',
      'still plugged: spark hole, and Cylinder head is back on',
    ],
  });
  expect(at(lines, 'run-up').blocks).toEqual(['do not start it: spark hole is still plugged']);
  add('step', {
    step: 'cylinder-head-back',
    stage: 'assembly',
    title: 'Head on',
    state: 'done',
    putsBack: 'cylinder-head',
    fasteners: bolts,
    unplugged: ['spark hole'],
  });
  expect(at(lines, 'assembly')).toMatchObject({ state: 'done', missing: [] });
  expect(door(fold(jobId, lines)).tally.fasteners).toEqual([
    { label: '5/16-18 × 1-1/2 in bolt', out: 8, in: 8 },
  ]);
});

test('no reason closes an assembly with a bolt left over or a plug still in', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  const fasteners = [{ what: 'bolt', size: 'M6', count: 2 }];
  const shroud = { step: 'shroud', stage: 'teardown' as const, title: 'Shroud', state: 'done' as const };
  add('step', { ...shroud, fasteners, plugged: ['fuel inlet'] });
  add('step', { ...shroud, step: 'shroud-back', stage: 'assembly', putsBack: 'shroud' });
  add('stage', { stage: 'assembly', state: 'not-needed', reason: 'in a hurry' });
  expect(at(lines, 'assembly').blocks).toEqual([
    'left over: 2 × M6 bolt, from Shroud',
    'still plugged: fuel inlet, and Shroud is back on',
  ]);
  add('step', {
    ...shroud,
    step: 'shroud-back',
    stage: 'assembly',
    putsBack: 'shroud',
    fasteners: [{ ...fasteners[0]!, count: 3 }],
    unplugged: ['fuel inlet'],
  });
  add('stage', { stage: 'assembly', state: 'reopened', reason: '' });
  expect(at(lines, 'assembly')).toMatchObject({
    blocks: [],
    missing: ['more went in than came out: 1 × M6 bolt, at Shroud'],
  });
});

test('a bolt of one piece used at another balances, and is not called left over', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  const bolt = (count: number) => [{ what: 'head bolt', count }];
  for (const [step, out, back] of [
    ['baffle', 1, 2],
    ['head', 7, 6],
  ] as const) {
    add('step', { step, stage: 'teardown', title: step, state: 'done', fasteners: bolt(out) });
    add('step', {
      step: `${step}-back`,
      stage: 'assembly',
      title: step,
      state: 'done',
      putsBack: step,
      fasteners: bolt(back),
    });
  }
  expect(at(lines, 'assembly')).toMatchObject({ state: 'done', missing: [], blocks: [] });
});

test('a part ordered and not fitted keeps assembly open until the old one is put back for now', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  const part = { part: 'diaphragm', name: 'metering diaphragm', count: 1, component: 'metering-diaphragm' };
  add('part', { ...part, state: 'ordered', due: '2026-03-12' });
  add('part', { part: 'oil', name: 'oil', count: 1, state: 'ordered', consumable: true });
  add('step', { step: 'x', stage: 'assembly', title: 'x', state: 'done' });
  expect(at(lines, 'assembly').missing).toEqual([
    'ordered and not fitted: metering diaphragm, due 2026-03-12',
  ]);
  add('decision', {
    about: 'part',
    which: 'diaphragm',
    title: 'Old diaphragm',
    choice: 'provisional',
    reason: 'still soft',
    until: 'when the new one is here',
  });
  expect(at(lines, 'assembly')).toMatchObject({ missing: [], summary: '1 in for now' });
  add('part', { ...part, state: 'arrived' });
  expect(at(lines, 'assembly').missing).toEqual([
    'here but not fitted: metering diaphragm, the old one is in for now',
  ]);
  add('part', { ...part, state: 'fitted' });
  expect(at(lines, 'assembly')).toMatchObject({ state: 'done', summary: '' });
});

test('a piece that is to come off says which view has no picture yet', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  add('step', { step: 'carburetor', stage: 'teardown', title: 'Carburetor', state: 'planned' });
  const views = new Map([['carburetor', ['gasket stack, slot visible']]]);
  const teardown = gates(door(fold(jobId, lines)), { ...rules, missingViews: views })[4]!;
  expect(teardown.missing).toEqual([
    'not taken off yet: Carburetor, no picture yet of: gasket stack, slot visible',
  ]);
});

test('a part that is here and not fitted, and a joint not finished, keep assembly open', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  add('part', { part: 'gasket', name: 'head gasket', count: 1, state: 'arrived' });
  add('joint', {
    joint: 'head',
    name: 'Cylinder head',
    holes: [
      { xMm: 0, yMm: 0 },
      { xMm: 9, yMm: 0 },
    ],
    target: torque('140 in-lb'),
    targetOrigin: { from: "maker's sheet" },
    passes: [1],
    finalRound: false,
    order: [1, 2],
    orderOrigin: { from: 'computed' },
  });
  expect(at(lines, 'assembly').missing).toEqual([
    'not fully tightened: Cylinder head',
    'here but not fitted: head gasket',
  ]);
});

test('a reading outside its limit asks for a decision, and a decision answers it', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  const limit = { max: length('0.003 in'), origin: { from: "maker's sheet" as const, detail: 'page 9' } };
  add('measurement', { measure: 'head-flatness', title: 'Head flatness', value: length('0.005 in'), limit });
  expect(at(lines, 'measure').missing).toEqual(['decide about Head flatness: 0.005 in is outside its limit']);
  add('decision', {
    about: 'measurement',
    which: 'head-flatness',
    title: 'Rubbed flat',
    choice: 'recondition',
    reason: '',
  });
  expect(at(lines, 'measure').state).toBe('done');
});

test('a stop control that was not shown to work bars the hand-over, and no reason overrides it', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  add('run-up', { item: 'speed', title: 'top speed', result: 'ok' });
  add('stage', { stage: 'hand-over', state: 'not-needed', reason: 'in a hurry' });
  expect(at(lines, 'hand-over')).toMatchObject({
    state: 'blocked',
    blocks: ['not shown to be safe: the stop control stops it'],
  });
  add('run-up', { item: 'stop', title: 'stop', result: 'not-ok' });
  expect(at(lines, 'hand-over').state).toBe('blocked');
  add('run-up', { item: 'stop', title: 'stop', result: 'ok' });
  add('hand-over', { receivedBy: 'the owner', declined: [], nextDue: [] });
  expect(at(lines, 'hand-over').state).toBe('done');
});

test('a safety fault that the evidence points to bars the hand-over from the moment it is found', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  const found = { ...rules, safetyFound: ['Wheel loose on taper'] };
  const handOver = gates(door(fold(jobId, lines)), found).find((g) => g.stage === 'hand-over');
  expect(handOver).toMatchObject({
    state: 'blocked',
    blocks: ['to be repaired or ruled out first: Wheel loose on taper'],
  });
});

test('a stage found not to be needed is closed with its reason until it is taken up again', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: '' });
  add('stage', { stage: 'teardown', state: 'not-needed', reason: 'carburetor cleaned in place' });
  expect(at(lines, 'teardown')).toMatchObject({
    state: 'not-needed',
    summary: 'carburetor cleaned in place',
    missing: [],
  });
  add('stage', { stage: 'teardown', state: 'reopened', reason: '' });
  expect(at(lines, 'teardown').state).toBe('untouched');
});
