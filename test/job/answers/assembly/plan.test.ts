import { describe, expect, test } from 'vitest';
import { door } from '../../door.js';
import { torque } from '../../entries.js';
import { bench } from '../../plan-job.js';

/** A two-stroke taken down to its metering diaphragm and head gasket, in the order of the plan. */
function apart() {
  const at = bench('two-stroke', {
    fuelSystem: 'diaphragm',
    starter: 'rope',
    variants: { 'detachable-head': true },
  });
  at.want('cylinder-head');
  at.want('metering-diaphragm');
  const { steps } = at.plan();
  for (const step of steps) {
    at.takeOff(step, {
      ...(step.id === 'cylinder-head' && {
        fasteners: [{ what: 'bolt', size: 'M6', length: '25 mm', count: 4 }],
      }),
      plugged: step.plugs.map((p) => p.name),
      ...(step.bag && { bag: step.bag }),
    });
  }
  const plan = () => door(at.job()).assembly;
  const step = (id: string) => plan().steps.find((s) => s.off.step === id)!;
  return { ...at, plan, step };
}

describe('a step put back', () => {
  const at = apart();

  test('asks for what came out, in its sizes, and for the plugs that went in', () => {
    expect(at.step('cylinder-head').fasteners).toEqual([
      { what: 'bolt', size: 'M6', length: '25 mm', count: 4 },
    ]);
    expect(at.step('carburetor').unplug).toEqual(['Intake port']);
    expect(at.step('fuel-hose').unplug).toEqual(['Fuel inlet']);
  });

  test('has its torque from this engine’s sheet once that is confirmed, and a class figure till then', () => {
    expect(at.step('cylinder-head').torques).toEqual([
      {
        component: 'cylinder-head',
        name: 'Cylinder head',
        usual: {
          name: 'Head bolts and larger rods',
          range: '140 to 250 in-lb',
          origin: 'trade judgement, no source',
        },
      },
    ]);
    at.add('spec', {
      spec: 'head-bolt-torque',
      label: 'Head bolts, torque',
      line: 'head bolts 80 in-lb',
      value: torque('80 in-lb'),
      origin: { from: "maker's sheet", detail: 'page 4' },
    });
    expect(at.step('cylinder-head').torques[0]).toMatchObject({ spec: { value: { written: '80 in-lb' } } });
    expect(at.step('cylinder-head').torques[0]?.usual).toBeUndefined();
  });

  test('brings oil, sealant, way round, look-alikes, checks and the parts to renew', () => {
    const stack = at.step('metering-diaphragm');
    expect(stack.wayRound[0]?.words).toContain('gasket first, then diaphragm');
    expect(stack.lookAlikes.map((l) => l.pair)).toEqual([['diaphragm', 'its gasket']]);
    expect(stack.checks.map((c) => c.words)).toContain('vent of the cover open');
    expect(stack.renew.map((r) => [r.name, r.state])).toEqual([
      ['metering diaphragm', 'not listed'],
      ['metering gasket', 'not listed'],
    ]);
    expect(at.step('cylinder-head').lubricants[0]?.words).toContain('clean and dry');
  });
});

describe('a late part', () => {
  const at = apart();
  const part = { part: 'diaphragm', name: 'Metering diaphragm', count: 1, component: 'metering-diaphragm' };
  at.add('part', {
    part: 'gasket',
    name: 'Head gasket',
    count: 1,
    state: 'arrived',
    component: 'cylinder-head',
  });
  at.add('part', { ...part, state: 'ordered', due: '2026-03-12' });
  at.add('part', { part: 'other', name: 'Seal', count: 1, state: 'wanted', component: 'output-seal' });

  test('holds up its component and what goes on over it, and nothing else', () => {
    const waiting = at
      .plan()
      .steps.filter((s) => s.state === 'waits')
      .map((s) => s.off.step);
    expect(waiting).toEqual(
      expect.arrayContaining(['metering-diaphragm', 'carburetor', 'air-cleaner-base', 'air-cleaner-element']),
    );
    expect(waiting).not.toContain('cylinder-head');
    expect(at.plan().late.map((w) => w.component)).toEqual(['metering-diaphragm']);
    expect(at.plan().next?.waitsFor).toEqual([]);
    expect(at.plan().soFar).toMatch(
      /^\d+ pieces can go back now; \d+ must wait for Metering diaphragm, due 2026-03-12\.$/,
    );
  });

  test('stands in words where it names no component', () => {
    const nameless = apart();
    const { component: _, ...rest } = part;
    nameless.add('part', { ...rest, state: 'ordered' });
    expect(nameless.step('carburetor').state).toBe('waits');
  });

  test('that sits inside a piece that did not come apart holds up that piece', () => {
    const whole = bench('two-stroke', { fuelSystem: 'diaphragm' });
    whole.want('carburetor');
    for (const step of whole.plan().steps) whole.takeOff(step);
    whole.add('part', { ...part, state: 'ordered' });
    const carburetor = door(whole.job()).assembly.steps.find((s) => s.off.step === 'carburetor')!;
    expect(carburetor).toMatchObject({ state: 'waits', waitsFor: [{ component: 'metering-diaphragm' }] });
  });

  test('lets go once the old part is put back for now; that stays open till the new one is fitted', () => {
    at.add('decision', {
      about: 'part',
      which: 'diaphragm',
      title: 'Old metering diaphragm',
      choice: 'provisional',
      reason: 'soft, no hole',
    });
    expect(at.plan().soFar).toBeUndefined();
    expect(at.step('metering-diaphragm').renew[0]?.state).toBe('old one for now');
    expect(at.plan().provisional).toMatchObject([
      {
        state: 'waiting',
        comesBack: 'when Metering diaphragm is here, due 2026-03-12, at the latest with the next service',
      },
    ]);
    expect(door(at.job()).dueFromProvisionals).toEqual([
      {
        what: 'Fit Metering diaphragm, the old one is in for now',
        when: 'when Metering diaphragm is here, due 2026-03-12, at the latest with the next service',
      },
    ]);
    at.add('part', { ...part, state: 'arrived' });
    expect(door(at.job()).provisionals).toMatchObject([
      { state: 'here', comesBack: 'now: Metering diaphragm is here' },
    ]);
    at.add('part', { ...part, state: 'fitted' });
    expect(door(at.job()).provisionals).toEqual([]);
  });
});

describe('a gate', () => {
  const at = apart();
  const head = () => door(at.job()).assemblyGates.find((g) => g.gate.id === 'head-on')!;

  test('is asked once its pieces are back, and asked again when they came off again', () => {
    expect(head().state).toBe('not yet');
    at.putBack('cylinder-head');
    expect(head().state).toBe('asked');
    const answer = {
      step: 'gate-head-on',
      stage: 'assembly' as const,
      title: 'Head on',
      checked: ['squeeze felt'],
    };
    at.add('step', { ...answer, state: 'planned' });
    expect(head().state).toBe('asked');
    at.add('step', { ...answer, state: 'done' });
    expect(head().state).toBe('passed');
    at.add('step', {
      step: 'cylinder-head-2',
      stage: 'teardown',
      title: 'Cylinder head',
      state: 'done',
      components: ['cylinder-head'],
    });
    expect(head().state).toBe('not yet');
    at.putBack('cylinder-head-2');
    expect(head().state).toBe('asked');
  });
});

test('what came off without a plan goes back in the order it was logged, last first', () => {
  const at = bench('side-valve', {});
  at.add('intake', { architecture: 'unknown' });
  for (const step of ['cover', 'spring', 'plate'])
    at.add('step', { step, stage: 'teardown', title: step, state: 'done' });
  expect(door(at.job()).assembly.steps.map((s) => [s.off.step, s.state])).toEqual([
    ['plate', 'next'],
    ['spring', 'can'],
    ['cover', 'can'],
  ]);
});

test('a step mended later keeps its place in the order', () => {
  const at = bench('side-valve', {});
  at.add('intake', { architecture: 'unknown' });
  for (const step of ['cover', 'spring'])
    at.add('step', { step, stage: 'teardown', title: step, state: 'done' });
  at.add('step', { step: 'cover', stage: 'teardown', title: 'cover', state: 'done', bag: '1' });
  expect(door(at.job()).assembly.steps.map((s) => s.off.step)).toEqual(['spring', 'cover']);
});
