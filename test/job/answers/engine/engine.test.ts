import { describe, expect, test } from 'vitest';
import { runUpPhases } from '../../../../src/catalog/schema/run-up.js';
import { door } from '../../door.js';
import { torque } from '../../entries.js';
import { bench, catalog } from '../../plan-job.js';

/** A tank-top diaphragm carburetor with an air vane: no hose, no bowl, no primer (common practice). */
const tankTop = () =>
  bench('side-valve', {
    use: 'mower',
    fuelSystem: 'diaphragm',
    governor: 'air-vane',
    starter: 'rope',
    ignition: 'points',
    variants: { 'tank-on-carburetor': true, 'primer-bulb': false },
  });

const faultsOf = (at: ReturnType<typeof bench>): string[] => {
  const said = door(at.job()).findings;
  return said.state === 'answered' ? said.findings.faults.map((f) => f.id) : [];
};

describe('nothing of a piece that is not fitted is ever shown', () => {
  test('the tank-top engine: no hose, primer, bowl or float among faults, checks, gates and run-up', () => {
    const at = tankTop();
    const answers = door(at.job());
    const faults = faultsOf(at);
    for (const gone of [
      'fuel-hose-perished',
      'primer-faulty',
      'bowl-seal-leaking',
      'float-faulty',
      'inlet-needle-leaking',
      'fuel-tap-or-solenoid-shut',
      'governor-arm-mis-set',
    ])
      expect(faults, gone).not.toContain(gone);
    const checks = answers.machine.checks.map((c) => c.check.id);
    for (const gone of ['fuel-flow', 'primer-press', 'bowl-sample', 'needle-by-hand', 'needle-pressure-hold'])
      expect(checks, gone).not.toContain(gone);
    expect(answers.runUp.items.map((i) => i.step.id)).not.toContain('static-governor-set');
    expect(answers.nextDue.map((d) => d.what)).not.toContain('Fuel hose');
  });

  test('no gate asks for a needle or a static setting that is not there; of a float bowl and fly-weights it does', () => {
    const asked = (at: ReturnType<typeof bench>) => {
      for (const piece of ['carburetor', 'governor-spring']) at.want(piece);
      for (const step of at.plan().steps) at.takeOff(step);
      const { assemblyGates } = door(at.job());
      return {
        demands: assemblyGates.flatMap(({ gate }) => [...gate.demands]),
        checks: assemblyGates.flatMap(({ gate }) => gate.checks ?? []),
      };
    };
    const bare = asked(tankTop());
    expect(bare.demands).toEqual(expect.arrayContaining(['throttle springs open', 'choke shuts']));
    for (const gone of ['needle holds', 'static set']) expect(bare.demands).not.toContain(gone);
    expect(bare.checks).not.toContain('needle-pressure-hold');
    const usual = asked(bench('side-valve', { fuelSystem: 'float-bowl', governor: 'flyweight' }));
    expect(usual.demands).toEqual(expect.arrayContaining(['needle holds', 'static set']));
    expect(usual.checks).toContain('needle-pressure-hold');
  });

  test('said not to be there in the teardown, it is gone from the findings, and from next service', () => {
    const at = bench('side-valve', {});
    expect(faultsOf(at)).toContain('fuel-hose-perished');
    at.add('differs', { how: 'absent', component: 'fuel-hose' });
    expect(faultsOf(at)).not.toContain('fuel-hose-perished');
    expect(door(at.job()).nextDue.map((d) => d.what)).not.toContain('Fuel hose');
  });

  test('the carburetor comes off before the tank under it, and no hose is in the way', () => {
    const at = tankTop();
    at.want('fuel-tank');
    const pieces = at.plan().steps.flatMap((s) => s.components);
    expect(pieces).not.toContain('fuel-hose');
    expect(pieces).toContain('fuel-drained');
    const graph = door(at.job()).graph;
    if ('state' in graph) throw new Error(graph.words);
    const waitsFor = (id: string) => graph.graph.pieces.find((p) => p.id === id)!.before;
    expect(waitsFor('fuel-tank')).toContain('carburetor');
    expect(waitsFor('blower-housing')).not.toContain('fuel-tank');
    expect(waitsFor('pump-diaphragm')).toEqual(['carburetor']);
  });

  test('next service of a two-stroke knows no engine oil and no valves; of one that goes to scrap, nothing', () => {
    const at = bench('two-stroke', { use: 'trimmer' });
    const due = () => door(at.job()).nextDue.map((d) => d.what);
    expect(due()).toContain('Spark plug');
    expect(due().filter((what) => /oil|valve/i.test(what))).toEqual([]);
    at.add('decision', { about: 'machine', title: 'Scrap', choice: 'scrap', reason: 'bore scored' });
    expect(due()).toEqual([]);
  });

  test('break-in and the first oil are for new rings alone', () => {
    const at = bench('side-valve', {});
    const shown = () => {
      const { runUp, nextDue } = door(at.job());
      return [
        runUp.items.some((i) => i.step.id === 'break-in-told'),
        nextDue.some((d) => d.what === 'First oil after new rings'),
      ];
    };
    expect(shown()).toEqual([false, false]);
    at.add('part', { part: 'rings', name: 'Ring set', count: 1, state: 'fitted', component: 'piston-rings' });
    expect(shown()).toEqual([true, true]);
  });
});

describe('what is done in which order, and not at all', () => {
  test('it cools down after the settings that want it warm', () => {
    const ids = catalog.runUp.map((s) => s.id);
    for (const warm of ['idle-mixture-set', 'main-mixture-set', 'top-speed-set', 'load-mower'])
      expect(ids.indexOf('cool-and-look'), warm).toBeGreaterThan(ids.indexOf(warm));
    const phases = catalog.runUp.map((s) => runUpPhases.indexOf(s.phase));
    expect(phases).toEqual(phases.toSorted((a, b) => a - b));
  });

  test('while fuel is in the crankcase no check that pulls or runs is offered, and each says why', () => {
    const at = bench('side-valve', {});
    at.add('observation', {
      check: 'oil-smell-and-feel',
      title: 'Oil smell',
      outcomes: ['thin, smells of gasoline'],
    });
    const { findings, barred, engine } = door(at.job());
    if (findings.state !== 'answered' || !findings.next) throw new Error('no findings');
    const engineOf = new Map(catalog.checks.map((c) => [c.id, c.engine]));
    const offered = findings.next.best.map((n) => engineOf.get(n.id));
    expect(offered.filter((e) => e === 'pulled' || e === 'running' || e === 'hot')).toEqual([]);
    expect(barred.find((b) => b.id === 'does-it-start')?.why).toBe('there is fuel in the crankcase');
    expect(engine.stop).toMatch(/^There is fuel in the crankcase\. First: drain the oil/);
  });

  test('the sound answer of the run-up ends what the check had found', () => {
    const at = bench('side-valve', {});
    at.add('observation', { check: 'stop-control', title: 'Stop', outcomes: ['no'] });
    expect(door(at.job()).engine.stop).toContain('stop control');
    at.add('run-up', { item: 'stop-each-position', title: 'Stop', result: 'ok' });
    expect(door(at.job()).engine.stop).toBeUndefined();
  });
});

describe('cleaning (common practice)', () => {
  const ask = (materials: string[], component: string, way?: string) => {
    const answers = door(bench('side-valve', {}).job());
    return new Map(
      answers
        .cleaningWith({ materials, component, ...(way && { way }) })
        .map((a) => [a.agent.id, a.verdict] as const),
    );
  };

  test('caustic never on a crankcase, whatever of it is meant', () => {
    expect(ask(['cast-iron'], 'crankcase', 'iron-bore-and-steel').get('caustic')).toBe('never');
    expect(ask(['cast-iron'], 'crankshaft', 'iron-bore-and-steel').get('caustic')).toBe('allowed');
  });

  test('gasoline is never a cleaner, on anything', () => {
    for (const { id } of catalog.materials) expect(ask([id], 'muffler').get('gasoline'), id).toBe('never');
  });

  test('nobody blasts a carburetor', () => {
    const { cleanings } = catalog;
    const ways = cleanings.filter((c) => c.components?.includes('carburetor')).flatMap((c) => c.agents);
    expect(ways).not.toContain('hard-blast');
    expect(ask(['zinc-alloy', 'aluminum'], 'carburetor', 'carburetor-body').get('hard-blast')).toBe('never');
  });
});

describe('bolts that hold head and baffle alike', () => {
  const at = bench('side-valve', { starter: 'rope', variants: { 'tank-on-shroud': false } });
  for (const component of ['blower-housing', 'head-baffle', 'cylinder-head'])
    at.add('step', { step: component, stage: 'teardown', title: component, component, state: 'done' });
  at.add('spec', {
    spec: 'head-bolt-torque',
    label: 'Head bolts, torque',
    line: 'head bolts 140 in-lb',
    value: torque('140 in-lb'),
    origin: { from: "maker's sheet", detail: 'page 4' },
  });
  const step = (id: string) => door(at.job()).assembly.steps.find((s) => s.off.step === id)!;

  test('the head stays finger tight until the baffle is on', () => {
    expect(step('cylinder-head').torques).toEqual([]);
    expect(step('cylinder-head').fingerTight).toContain('head baffle');
  });

  test('the baffle goes on with the head bolts’ confirmed torque, not with a class’s', () => {
    const [only, ...more] = step('head-baffle').torques;
    expect(more).toEqual([]);
    expect(only).toMatchObject({ component: 'cylinder-head', spec: { value: { written: '140 in-lb' } } });
    expect(only!.usual).toBeUndefined();
  });

  test('the head is not proved before its bolts are tight', () => {
    at.putBack('cylinder-head');
    const gate = () => door(at.job()).assemblyGates.find((g) => g.gate.id === 'head-on')!.state;
    expect(gate()).toBe('not yet');
    at.putBack('head-baffle');
    expect(gate()).toBe('asked');
  });
});
