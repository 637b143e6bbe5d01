import { expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import { fold } from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, log } from '../../entries.js';

const _catalog = builtInCatalog();
type Add = ReturnType<typeof log>['add'];

function jobWith(more: (add: Add) => void = () => undefined) {
  const { add, lines } = log();
  add('open', { tag: 4, title: 'Mower' });
  add('intake', {
    architecture: 'side-valve',
    use: 'mower',
    complaints: ['cranks-never-fires'],
    fuelSystem: 'float-bowl',
  });
  more(add);
  return fold(jobId, lines);
}

const answered = (more?: (add: Add) => void) => {
  const said = door(jobWith(more)).findings;
  if (said.state !== 'answered') throw new Error(said.words);
  return said;
};
const probability = (said: ReturnType<typeof answered>, id: string) =>
  said.findings.faults.find((f) => f.id === id)!.posterior;

const look = (add: Add, check: string, ...outcomes: string[]) =>
  add('observation', { check, title: check, outcomes });
const decide = (add: Add, which: string, choice: string) =>
  add('decision', { about: 'fault', which, title: which, choice, reason: 'seen' });

test('what is logged at the bench, in the catalog’s words, is what the findings rest on', () => {
  const said = answered((add) => {
    look(add, 'spark-across-gap', 'none');
    look(add, 'spark-stop-wire-off', 'spark returns');
  });
  expect(said.findings.faults[0]!.id).toBe('stop-wire-grounded');
  expect(said.findings.faults[0]!.evidence.map((e) => e.check)).toContain('spark-stop-wire-off');
  expect(said.next!.best.map((c) => c.id)).not.toContain('spark-across-gap');
});

test('a decision that a fault is not there excludes it, and a struck reading no longer counts', () => {
  const before = answered();
  const said = answered((add) => {
    decide(add, 'coil-dead', 'no-fault');
    const wrong = look(add, 'spark-across-gap', 'none');
    add('strike', { entry: wrong.id, reason: 'other engine' });
  });
  expect(probability(said, 'coil-dead')).toBe(0);
  expect(probability(said, 'stop-wire-grounded')).toBeCloseTo(probability(before, 'stop-wire-grounded'), 2);
});

test('a repaired fault is gone, and its check is advised anew when it earns its minutes', () => {
  const said = answered((add) => {
    look(add, 'air-cleaner-look', 'blocked');
    decide(add, 'air-cleaner-choked', 'repaired');
  });
  const fault = said.findings.faults.find((f) => f.id === 'air-cleaner-choked')!;
  expect(fault.repaired).toBe(true);
  expect(fault.posterior).toBeLessThan(0.1);
});

test('what a component that is off opens costs less', () => {
  const minutes = (more?: (add: Add) => void) => {
    const said = door(jobWith(more)).findings;
    if (said.state !== 'answered') throw new Error(said.words);
    return said.next!.best.find((c) => c.id === 'coil-gap')!.minutes;
  };
  const off = (add: Add) =>
    add('step', {
      step: 'shroud-off',
      stage: 'teardown',
      title: 'Shroud off',
      component: 'blower-housing',
      state: 'done',
    });
  expect(minutes(off)).toBeLessThan(minutes());
});

test('with every line the same the answer is the same', () => {
  const look2 = (add: Add) => look(add, 'plug-tip', 'wet with fuel');
  expect(JSON.stringify(answered(look2))).toBe(JSON.stringify(answered(look2)));
});

test('the answer is plain data: it survives JSON', () => {
  const said = answered((add) => look(add, 'fuel-flow', 'drips'));
  expect(JSON.parse(JSON.stringify(said))).toEqual(said);
});
