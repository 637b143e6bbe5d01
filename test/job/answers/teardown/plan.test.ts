import { describe, expect, test } from 'vitest';
import { architectures, componentsOf } from '../../../../src/catalog/index.js';
import { coverageOf } from '../../../../src/job/answers/steps/coverage.js';
import { isGraph } from '../../../../src/job/answers/teardown/engine-graph.js';
import { lineWords, nothingTaught, shopMinutes } from '../../../../src/job/index.js';
import { drawing, times } from '../../../plan/seeded.js';
import { faultsInFollowing } from '../../../plan/teardown/follow.js';
import { campaign } from '../../../support/campaign.js';
import { door } from '../../door.js';
import { bench, catalog } from '../../plan-job.js';

const mower = {
  ignition: 'points',
  fuelSystem: 'float-bowl',
  shaft: 'vertical',
  governor: 'air-vane',
  starter: 'rope',
  use: 'mower',
} as const;

/** Jobs of every architecture, with targets, facts and differences drawn from a seed. */
const drawn = architectures.flatMap((architecture) =>
  times(campaign(4, 15), (seed) => {
    const { some, whole, chance } = drawing(seed + 4000);
    const variants = catalog.variants.filter((v) => v.architectures.includes(architecture) && chance(0.4));
    const at = bench(architecture, {
      ...(chance(0.7) && mower),
      variants: Object.fromEntries(variants.map((v) => [v.id, chance(0.5)])),
    });
    const engine = door(at.job()).graph;
    if (!isGraph(engine)) throw new Error(engine.words);
    const ids = engine.graph.pieces.map(({ id }) => id);
    for (const component of some(ids, whole(1, 4))) at.want(component);
    if (chance(0.5)) at.add('differs', { how: 'absent', component: some(ids, 1)[0]! });
    at.add('differs', { how: 'added', component: 'rain-cap', name: 'Rain cap', minutes: 2, before: [] });
    at.add('differs', { how: 'waits-for', component: 'recoil-starter', before: ['rain-cap'] });
    return at;
  }),
);

describe('the plan of a job', () => {
  test('misses no goal, and every order can be followed', () => {
    for (const at of drawn) {
      const { engine, steps, goals, optimal } = at.plan();
      expect(optimal).toBe(true);
      expect(faultsInFollowing(engine.graph, steps, [])).toEqual([]);
      const off = new Set(steps.flatMap(({ components }) => components));
      expect(goals.filter((g) => g.state === 'wanted' && !off.has(g.component))).toEqual([]);
    }
  });

  test('taken step by step it shrinks to nothing, and going back is the way it came apart, reversed', () => {
    for (const at of drawn) {
      const before = at.plan();
      let minutes = before.minutes;
      const taken: string[] = [];
      for (let step = before.steps[0]; step; step = at.plan().steps[0]) {
        at.takeOff(step);
        taken.push(step.step);
        const left = at.plan().minutes;
        expect(left).toBeCloseTo(minutes - step.minutes, 6);
        minutes = left;
      }
      expect(at.plan().goals.filter((g) => g.state === 'wanted')).toEqual([]);
      expect(door(at.job()).assembly.steps.map((s) => s.off.step)).toEqual(taken.toReversed());
      const back: string[] = [];
      for (let next = door(at.job()).assembly.next; next; next = door(at.job()).assembly.next) {
        at.putBack(next.off.step);
        back.push(next.off.step);
      }
      expect(back).toEqual(taken.toReversed());
      expect(at.plan().goals.filter((g) => g.state === 'wanted')).toEqual([]);
    }
  });

  test('without the kind of engine there is none, and it says why', () => {
    const at = bench('side-valve', {});
    at.add('intake', { architecture: 'unknown' });
    expect(door(at.job()).teardown).toMatchObject({ state: 'cannot', because: 'architecture' });
    expect(door(at.job()).goalChoices).toEqual([]);
  });

  test('without a goal nothing comes off', () => {
    const { steps, minutes, proof } = bench('side-valve', mower).plan();
    expect([steps, minutes]).toEqual([[], 0]);
    expect(proof).toContain('No cheaper set exists');
  });
});

describe('each step of it', () => {
  const at = bench('overhead-valve', { ...mower, governor: 'flyweight', shaft: 'horizontal' });
  at.want('cylinder-head');
  const plan = at.plan();
  const step = (id: string) => plan.steps.find((s) => s.id === id)!;

  test('says how many fasteners of which size, what to photograph, plug and bag, and what it is for', () => {
    expect(step('carburetor')).toMatchObject({
      step: 'carburetor',
      plugs: [{ port: 'intake-port', name: 'Intake port', plugWith: 'flagged rag or plug' }],
      goals: ['Cylinder head'],
      holds: ['Cylinder head'],
    });
    expect(step('carburetor').views.map((v) => v.view)).toContain('gasket stack, slot visible');
    expect(step('cylinder-head').fasteners).toEqual([
      { of: 'cylinder-head', what: 'bolt', count: 4, countTo: 6, size: 'M8 or M10', known: 'usual' },
    ]);
    expect(step('fuel-drained').bag).toBeUndefined();
    const bags = plan.steps.flatMap((s) => s.bag ?? []);
    expect(bags).toEqual(bags.map((_, i) => String(i + 1)));
  });

  test('names both parts of a pair that pass for one another', () => {
    const gaskets = step('carburetor').lookAlikes.find((l) => l.id === 'intake-gaskets')!;
    expect(gaskets.pair).toEqual(['gasket of the block side', 'gasket of the carburetor side']);
  });

  test('warns of what cannot be seen any more after it, until someone has looked', () => {
    expect(step('carburetor').spoils).toContain('look at the bowl contents');
    at.add('observation', { check: 'bowl-sample', title: 'Bowl sample', outcomes: ['clean'] });
    expect(at.plan().steps.find((s) => s.id === 'carburetor')?.spoils).not.toContain(
      'look at the bowl contents',
    );
  });

  test('a head that lifts complete waits for what holds its carburetor and muffler', () => {
    const whole = bench('overhead-valve', { ...mower, variants: { 'head-lifts-complete': true } });
    whole.want('cylinder-head');
    const ids = whole.plan().steps.map((s) => s.id);
    expect(ids).toEqual(
      expect.arrayContaining(['fuel-hose', 'air-cleaner-base', 'throttle-link', 'muffler-guard']),
    );
    expect(ids).not.toContain('carburetor');
    expect(ids).not.toContain('muffler');
  });

  test('of an assembly left whole only what holds it comes undone', () => {
    const side = bench('side-valve', mower);
    side.want('breaker-points');
    const whole = side.plan().steps.find((s) => s.how === 'whole')!;
    expect(whole.fasteners.map((f) => f.of)).toEqual(['blower-housing']);
    expect(whole.components).toEqual(
      ['recoil-starter', 'blower-housing', 'fuel-tank'].sort(
        (a, b) => whole.components.indexOf(a) - whole.components.indexOf(b),
      ),
    );
  });
});

describe('the engine in front of one', () => {
  test('bolts counted and measured by hole take the place of the usual ones', () => {
    const at = bench('side-valve', mower);
    at.want('cylinder-head');
    const fasteners = [
      { what: 'bolt', size: '5/16-18', length: '2 in', hole: 'exhaust corner', count: 2 },
      { what: 'bolt', size: '5/16-18', length: '1-1/2 in', count: 6 },
    ];
    at.add('differs', { how: 'fasteners', component: 'cylinder-head', fasteners });
    const head = at.plan().steps.find((s) => s.components.includes('cylinder-head'))!;
    expect(head.fasteners.filter((f) => f.of === 'cylinder-head')).toEqual(
      fasteners.map((f) => ({ ...f, of: 'cylinder-head', known: 'this engine' })),
    );
  });

  test('a line that cannot be so is left out and said, and the plan stands', () => {
    const at = bench('side-valve', mower);
    at.want('flywheel');
    const plain = at.plan().minutes;
    const wrong = at.add('differs', { how: 'waits-for', component: 'recoil-starter', before: ['flywheel'] });
    at.add('differs', { how: 'absent', component: 'rain-cap' });
    expect(at.plan().minutes).toBe(plain);
    expect(at.plan().engine.leftOut.map((l) => l.entry)).toContain(wrong.id);
    expect(at.plan().engine.leftOut).toHaveLength(2);
  });

  test('a piece told twice is corrected, not there twice', () => {
    const at = bench('side-valve', mower);
    at.want('rain-cap');
    at.add('differs', { how: 'added', component: 'rain-cap', name: 'Rain cap', minutes: 2, before: [] });
    at.add('differs', {
      how: 'added',
      component: 'rain-cap',
      name: 'Rain cap',
      minutes: 9,
      before: ['spark-plug'],
    });
    expect(at.plan().steps.map((s) => [s.name, s.minutes])).toEqual([
      ['Plug lead and spark plug', 1],
      ['Rain cap', 9],
    ]);
  });
});

describe('goals', () => {
  test('follow from a fault to repair and a part to fit; they are offered, and turned down for good', () => {
    const at = bench('two-stroke', { ...mower, fuelSystem: 'diaphragm' });
    at.add('decision', {
      about: 'fault',
      which: 'diaphragm-stiff-or-torn',
      title: 'Stiff diaphragm',
      choice: 'repair',
      reason: '',
    });
    at.add('part', {
      part: 'head-gasket',
      name: 'pump gasket',
      count: 1,
      state: 'wanted',
      component: 'pump-diaphragm',
    });
    expect(at.plan().steps).toEqual([]);
    const offered = at.plan().offered;
    expect(offered.find((o) => o.component === 'pump-diaphragm')?.why).toContain('to fit: pump gasket');
    at.add('goal', { component: 'pump-diaphragm', title: 'pump', why: '', state: 'dropped' });
    expect(at.plan().offered.map((o) => o.component)).not.toContain('pump-diaphragm');
  });

  test('a part that comes after its component went back wants it off again, under a handle of its own', () => {
    const at = bench('two-stroke', { fuelSystem: 'diaphragm' });
    at.want('metering-diaphragm');
    for (const step of at.plan().steps) at.takeOff(step);
    for (let next = door(at.job()).assembly.next; next; next = door(at.job()).assembly.next)
      at.putBack(next.off.step);
    at.add('part', {
      part: 'diaphragm',
      name: 'metering diaphragm',
      count: 1,
      state: 'arrived',
      component: 'metering-diaphragm',
    });
    at.want('metering-diaphragm');
    const { steps } = at.plan();
    expect(steps.map((s) => s.step)).toContain('carburetor-2');
    for (const step of steps) at.takeOff(step);
    expect(door(at.job()).assembly.steps.filter((s) => s.state !== 'back')).toHaveLength(steps.length);
  });

  test('a check and a fault name what they need off', () => {
    const choices = door(bench('side-valve', mower).job()).goalChoices;
    expect(new Set(choices.map((c) => c.kind))).toEqual(new Set(['component', 'check', 'fault']));
    expect(choices.every((c) => c.reach.length > 0)).toBe(true);
  });

  test('what left inside an assembly is not in the hand', () => {
    const at = bench('side-valve', mower);
    at.want('breaker-points');
    for (const step of at.plan().steps) at.takeOff(step);
    at.want('fuel-tank');
    expect(at.plan().goals.map((g) => [g.component, g.state])).toEqual([
      ['breaker-points', 'reached'],
      ['fuel-tank', 'inside'],
    ]);
  });
});

describe('pictures', () => {
  const at = bench('overhead-valve', mower);
  at.want('carburetor');
  const missing = () => at.plan().coverage.missing.map((v) => v.view);

  test('one is wanted of each thing a step hides; a photograph or a piece of film of it counts', () => {
    const before = at.plan().coverage;
    expect(missing()).toContain('gasket stack, slot visible');
    at.add('photograph', {
      caption: 'x',
      stage: 'teardown',
      when: 'before',
      about: 'carburetor:gasket stack, slot visible',
    });
    at.add('photograph', {
      clip: { file: 'bench-7.mp4', from: '1:10', to: '1:30' },
      caption: 'link and spring from the left',
      stage: 'teardown',
      when: 'before',
    });
    expect(at.plan().coverage.present).toBe(before.present + 2);
    expect(missing()).not.toContain('gasket stack, slot visible');
    expect(missing()).not.toContain('link and spring from the left');
  });

  test('once the piece is off a picture can no longer be taken: it is gone, with the reason why it was not', () => {
    for (const step of at.plan().steps)
      at.takeOff(step, {
        unseen: step.views.filter((v) => !v.shown).map((v) => ({ view: v.view, reason: 'no light' })),
      });
    const coverage = coverageOf(door(at.job()), 'teardown');
    expect(coverage.missing).toEqual([]);
    expect(coverage.wanted.filter((v) => v.gone).map((v) => v.reason)).toEqual(
      coverage.wanted.filter((v) => v.gone).map(() => 'no light'),
    );
    expect(coverage.figure).toBe(`2 of ${coverage.wanted.length} views`);
  });
});

describe('soaks and cool-downs', () => {
  const at = bench('overhead-valve', mower);
  at.want('muffler');

  test('start before the first bolt, and the waiting counts', () => {
    const plan = at.plan();
    expect(plan.early).toMatchObject([{ kind: 'soak', component: 'muffler', left: 60, begun: false }]);
    expect(plan.elapsed).toBe(60 + plan.steps.at(-1)!.minutes);
    expect(plan.steps.at(-1)?.waitBefore).toBe(60 - 2);
  });

  test('run down by the clock, and a joint that is not stuck does not wait', () => {
    const soak = {
      cleaning: 'penetrant-muffler',
      title: 'Penetrant',
      component: 'muffler',
      materials: ['steel'],
      agent: 'penetrating-oil',
    };
    const { at: begun } = at.add('cleaning', { ...soak, state: 'soaking', soakMinutes: 60 });
    const later = new Date(Date.parse(begun) + 45 * 60_000).toISOString();
    expect(at.plan(later).early).toMatchObject([{ left: 15, begun: true }]);
    at.add('cleaning', { ...soak, state: 'dropped' });
    expect(at.plan().early).toEqual([]);
    expect(at.plan().elapsed).toBe(at.plan().minutes);
  });

  test('an engine that ran half an hour ago is let cool first', () => {
    const running = catalog.checks.find((c) => c.engine === 'running')!;
    const warm = at.add('observation', { check: running.id, title: running.title, outcomes: [] });
    const soon = new Date(Date.parse(warm.at) + 10 * 60_000).toISOString();
    expect(at.plan(soon).early).toMatchObject([{ kind: 'cool', left: 20 }]);
    expect(at.plan(new Date(Date.parse(warm.at) + 40 * 60_000).toISOString()).early).toEqual([]);
  });
});

test('the shop’s own minutes are the median of what its log says, breaks and pauses left out', () => {
  const jobs = times(3, (n) => {
    const at = bench('side-valve', mower);
    at.want('carburetor');
    const steps = at.plan().steps;
    for (const step of steps) {
      at.takeOff(step);
      for (const _ of times(n + 1, () => 0)) at.add('note', { words: 'hands busy' });
    }
    return at.job();
  });
  const taken = (of: typeof jobs) => of.flatMap((job) => door(job).stepTimes);
  const minutes = shopMinutes(taken(jobs));
  // each line of these logs is a minute after the one before: 2, 3 and 4 minutes a step
  expect(minutes.carburetor).toBe(3);
  expect(minutes['fuel-drained']).toBeUndefined();
  expect(shopMinutes(taken(jobs.slice(0, 2)))).toEqual({});
  const plan = door(jobs[0]!, { jobs: { ...nothingTaught, minutes } }).teardown;
  expect(plan.state).toBe('planned');
});

test('every component of the catalog that a person soaks, oils, seals or turns round says it in words', () => {
  for (const architecture of architectures) {
    const told = componentsOf(catalog, architecture).filter(
      (c) => c.lubricant ?? c.sealant ?? c.wayRound ?? c.soak,
    );
    expect(told.length).toBeGreaterThan(12);
  }
});

describe('one step by its handle', () => {
  const at = bench('side-valve', mower);

  test('a component outside the plan says what is usually off before it', () => {
    const step = door(at.job()).step('cylinder-head')!;
    expect(step.stillBefore).toEqual(['Plug lead and spark plug', 'Head baffle or deflectors']);
    expect(step.fasteners[0]).toMatchObject({ what: 'bolt', count: 6, countTo: 10 });
    expect(door(at.job()).step('rain-cap')).toBeUndefined();
  });

  test('one that is done stands as it was logged', () => {
    const fasteners = [{ what: 'bolt', size: '5/16-18', count: 8 }];
    at.add('step', {
      step: 'cylinder-head',
      stage: 'teardown',
      title: 'Head',
      component: 'cylinder-head',
      state: 'done',
      fasteners,
      bag: '4',
    });
    expect(door(at.job()).step('cylinder-head')).toMatchObject({
      name: 'Head',
      bag: '4',
      fasteners: [{ ...fasteners[0]!, known: 'this engine' }],
      stillBefore: [],
    });
  });

  test('a piece of one’s own has its name and no more', () => {
    at.add('step', { step: 'rain-cap', stage: 'teardown', title: 'Rain cap', state: 'planned' });
    expect(door(at.job()).step('rain-cap')).toMatchObject({
      name: 'Rain cap',
      views: [],
      fasteners: [],
    });
  });
});

test('a step says in the log which pictures it went without, and what was proved', () => {
  const at = bench('side-valve', mower);
  at.add('step', {
    step: 'x',
    stage: 'teardown',
    title: 'Cover',
    state: 'done',
    unseen: [{ view: 'its inside', reason: 'no light' }],
    checked: ['free'],
  });
  expect(lineWords(at.job().log.at(-1)!).detail).toBe('no picture of its inside: no light · checked: free');
});

test('the gates name what is still ahead, and what is to be proved until the gate list is signed', () => {
  const at = bench('side-valve', mower);
  at.want('spark-plug');
  expect(door(at.job()).gateRules.ahead).toBe('1 step to reach spark plug, 1 min, 1 picture first');
  at.add('step', { step: 'carburetor', stage: 'teardown', title: 'Carburetor', state: 'planned' });
  expect(door(at.job()).gateRules.missingViews?.get('carburetor')).toEqual([
    'link and spring from the left',
    'gasket stack, slot visible',
  ]);
  at.takeOff(at.plan().steps[0]!);
  expect(door(at.job()).gateRules.ahead).toBeUndefined();
  at.add('step', { step: 'cylinder-head', stage: 'teardown', title: 'Head', state: 'done' });
  at.putBack('cylinder-head');
  expect(door(at.job()).gateRules.toProve).toEqual(['Head on: squeeze felt']);
  at.add('run-up', { item: 'gates-signed', title: 'Every check of the assembly is proved', result: 'ok' });
  expect(door(at.job()).gateRules.toProve).toEqual([]);
});
