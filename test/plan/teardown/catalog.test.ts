import { describe, expect, test } from 'vitest';
import { architectures, builtInCatalog, byId, componentsOf, type Facts } from '../../../src/catalog/index.js';
import {
  adapted,
  assemblySteps,
  howFar,
  leastTeardown,
  PlanError,
  teardownGraph,
  teardownSteps,
} from '../../../src/plan/index.js';
import { drawing, times } from '../seeded.js';
import { faultsInFollowing } from './follow.js';

const catalog = builtInCatalog();
const mower: Facts = {
  ignition: 'points',
  fuelSystem: 'float-bowl',
  shaft: 'vertical',
  governor: 'air-vane',
  starter: 'rope',
  use: 'mower',
};

/** 60 goals over all architectures, with facts known, unknown and unusual. */
const goals = architectures.flatMap((architecture) =>
  times(20, (seed) => {
    const { whole, some, chance } = drawing(seed + 1000);
    const variants = catalog.variants.filter((v) => v.architectures.includes(architecture) && chance(0.5));
    const facts: Facts = {
      ...(chance(0.7) && mower),
      variants: Object.fromEntries(variants.map((v) => [v.id, chance(0.5)])),
    };
    const { graph } = teardownGraph(catalog, architecture, facts);
    const ids = graph.pieces.map(({ id }) => id);
    const goal = { reach: some(ids, whole(1, 4)), off: chance(0.5) ? some(ids, 3) : [] };
    return { architecture, graph, goal };
  }),
);

describe('the catalog’s engines', () => {
  test('every order can be followed, and backwards again', () => {
    for (const { architecture, graph, goal } of goals) {
      const plan = leastTeardown(graph, goal);
      expect(plan.optimal).toBe(true);
      expect(faultsInFollowing(graph, plan.removals, goal.off)).toEqual([]);
      const taken = teardownSteps(catalog, architecture, plan);
      const back = assemblySteps(catalog, architecture, taken);
      expect(back.map(({ of }) => of)).toEqual(taken.map(({ id }) => id).reverse());
      const on = new Set<string>();
      for (const step of back) {
        expect(step.after.filter((id) => !on.has(id))).toEqual([]);
        on.add(step.of);
      }
    }
  });

  test('putting back, nothing goes on over a joint that still has to be reached', () => {
    for (const { architecture, graph, goal } of goals) {
      const taken = teardownSteps(catalog, architecture, leastTeardown(graph, goal));
      const before = new Map(graph.pieces.map((piece) => [piece.id, piece.before]));
      const off = new Set(taken.flatMap(({ components }) => components));
      for (const { components } of assemblySteps(catalog, architecture, taken)) {
        for (const id of components)
          for (const b of before.get(id)!.filter((each) => !goal.off.includes(each)))
            expect(off.has(b), `${id} back while ${b} is on`).toBe(true);
        for (const id of components) off.delete(id);
      }
      expect(off.size).toBe(0);
    }
  });

  test('a full strip is planned by looking at two hundred choices at most', () => {
    for (const architecture of architectures) {
      const { graph } = teardownGraph(catalog, architecture, mower);
      const goal = { reach: ['crankcase', 'crankshaft'], clear: graph.pieces.map(({ id }) => id) };
      expect(leastTeardown(graph, { ...goal, limit: 200 }).optimal, architecture).toBe(true);
    }
  });

  test('starter, shroud and tank stay together on the way to the points, and are split when the tank is wanted', () => {
    const { graph } = teardownGraph(catalog, 'side-valve', mower);
    const points = leastTeardown(graph, { reach: ['breaker-points'] });
    expect(points.removals.map(({ id }) => id)).toEqual([
      'fuel-drained',
      'fuel-hose',
      'starter-and-shroud',
      'starter-cup',
      'flywheel-nut',
      'flywheel',
      'flywheel-key',
      'breaker-points',
    ]);
    const tank = leastTeardown(graph, { reach: ['breaker-points', 'fuel-tank'] });
    expect(tank.minutes).toBe(points.minutes + 4);
    expect(tank.removals.find(({ id }) => id === 'fuel-tank')?.how).toBe('alone');
  });

  test('a component that is not fitted is not planned, and what is not known is taken as there and said', () => {
    const air = teardownGraph(catalog, 'side-valve', mower);
    expect(air.graph.pieces.map(({ id }) => id)).not.toContain('governor-gear');
    expect(air.assumed).toEqual([]);
    const unknown = teardownGraph(catalog, 'side-valve', { ...mower, governor: 'unknown' });
    expect(unknown.graph.pieces.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['governor-gear', 'air-vane']),
    );
    expect(unknown.assumed).toContainEqual({
      what: 'fitted',
      component: 'governor-gear',
      when: { governor: ['flyweight'] },
    });
  });

  test('a joint that only some engines have counts where it holds', () => {
    const minutes = (inside: boolean) => {
      const { graph } = teardownGraph(catalog, 'side-valve', {
        ...mower,
        variants: { 'coil-inside-flywheel': inside },
      });
      return leastTeardown(graph, { reach: ['ignition-coil'] }).minutes;
    };
    expect(minutes(true) - minutes(false)).toBe(2 + 3 + 5);
  });

  test('the shop’s own minutes go before the catalog’s', () => {
    const shop = { flywheel: 25, 'starter-and-shroud': 2 };
    const plain = leastTeardown(teardownGraph(catalog, 'side-valve', mower).graph, { reach: ['flywheel'] });
    const own = leastTeardown(teardownGraph(catalog, 'side-valve', mower, shop).graph, {
      reach: ['flywheel'],
    });
    expect(own.minutes - plain.minutes).toBe(20 - 2);
  });
});

describe('the steps', () => {
  const { graph } = teardownGraph(catalog, 'side-valve', mower);
  const steps = teardownSteps(
    catalog,
    'side-valve',
    leastTeardown(graph, { reach: ['cylinder-head', 'carburetor'] }),
  );
  const step = (id: string) => steps.find((each) => each.id === id)!;

  test('carry fasteners, views, ports, cautions and one-time parts of the catalog', () => {
    expect(step('spark-plug')).toMatchObject({
      fasteners: [{ what: 'spark plug', count: 1, sizes: ['M14×1.25'], of: 'spark-plug' }],
      views: ['plug tip, side light'],
      plugs: [{ port: 'spark-plug-hole', plugWith: 'an old plug' }],
      oneTimeParts: [{ component: 'spark-plug', part: 'plug crush washer' }],
    });
    expect(step('spark-plug').cautions).toContain('lead-off-first');
    expect(step('fuel-hose').cautions).toContain('fuel-handling');
  });

  test('cautions come gravest first', () => {
    const severity = byId(catalog.cautions);
    for (const { cautions } of steps) {
      const grades = cautions.map((id) => severity.get(id)!.severity);
      expect(grades).toEqual(grades.toSorted((a, b) => b - a));
    }
  });

  test('a port is plugged once and unplugged once', () => {
    const plugged = steps.flatMap(({ plugs }) => plugs.map(({ port }) => port));
    expect(plugged).toContain('fuel-inlet');
    expect(new Set(plugged).size).toBe(plugged.length);
    const unplugged = assemblySteps(catalog, 'side-valve', steps).flatMap(({ unplug }) => unplug);
    expect(unplugged.toSorted()).toEqual(plugged.toSorted());
  });

  test('an assembly left together says what it hides', () => {
    const whole = steps.find(({ how }) => how === 'whole')!;
    expect(whole).toMatchObject({
      name: 'Recoil starter, blower housing and tank',
      hides: 'the rope guide and the tank mounts',
    });
  });

  test('putting back brings the torque, the renewed parts, the checks and the gate', () => {
    const head = assemblySteps(catalog, 'side-valve', steps).find(({ of }) => of === 'cylinder-head')!;
    const known = componentsOf(catalog, 'side-valve').find(({ id }) => id === 'cylinder-head')!;
    expect(head.torque).toContainEqual({
      component: 'cylinder-head',
      class: known.torqueClass,
      spec: known.torqueSpec,
    });
    expect(head.renew.map(({ part }) => part)).toEqual(expect.arrayContaining([...known.oneTimeParts]));
    expect(head.checks.map(({ words }) => words)).toEqual(
      expect.arrayContaining(known.reassemblyChecks.map(({ words }) => words)),
    );
    expect(head.gates).toContain('head-on');
  });

  test('a late part holds up just what goes on over it', () => {
    const back = assemblySteps(catalog, 'side-valve', steps);
    const { possible, waiting } = howFar(back, new Set(['carburetor']));
    expect(possible).toContain('cylinder-head');
    const held = waiting.map((each) => each.step);
    expect(held).toEqual(expect.arrayContaining(['carburetor', 'air-cleaner-base', 'air-cleaner-element']));
    expect(possible.length + held.length).toBe(back.length);
    expect(waiting.every((each) => each.for.join() === 'carburetor')).toBe(true);
    expect(howFar(back, new Set()).possible).toEqual(back.map(({ of }) => of));
  });
});

describe('the engine in front of one', () => {
  const { graph } = teardownGraph(catalog, 'side-valve', mower);

  test('can have a piece more, a piece less, and other ties', () => {
    const own = adapted(graph, [
      { kind: 'add', piece: { id: 'debris-screen', minutes: 2, before: [] } },
      { kind: 'retie', piece: 'recoil-starter', before: ['debris-screen'] },
      { kind: 'remove', piece: 'starter-cup' },
      { kind: 'minutes', piece: 'flywheel', minutes: 9 },
    ]);
    const plan = leastTeardown(own, { reach: ['flywheel'] });
    expect(plan.removals.map(({ id }) => id)).toEqual([
      'fuel-drained',
      'fuel-hose',
      'debris-screen',
      'starter-and-shroud',
      'flywheel-nut',
      'flywheel',
    ]);
    expect(plan.minutes).toBe(3 + 2 + 2 + 4 + 3 + 9);
    expect(teardownSteps(catalog, 'side-valve', plan)[2]).toMatchObject({
      name: 'debris-screen',
      fasteners: [],
    });
  });

  test.each([
    [
      'a piece that is there already',
      { kind: 'add', piece: { id: 'flywheel', minutes: 1, before: [] } },
      'duplicate',
    ],
    ['a piece that is not there', { kind: 'remove', piece: 'debris-screen' }, 'unknown'],
    ['a tie to nothing', { kind: 'retie', piece: 'flywheel', before: ['debris-screen'] }, 'unknown'],
    ['a tie that goes round', { kind: 'retie', piece: 'recoil-starter', before: ['flywheel'] }, 'cycle'],
  ] as const)('%s is refused', (_, change, code) => {
    expect(() => adapted(graph, [change])).toThrow(expect.objectContaining({ code }));
    expect(() => adapted(graph, [change])).toThrow(PlanError);
  });
});
