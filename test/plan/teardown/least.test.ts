import { describe, expect, test } from 'vitest';
import { type Goal, leastTeardown, PlanError, type TeardownGraph } from '../../../src/plan/index.js';
import { drawing, times } from '../seeded.js';
import { leastByExhaustion } from './by-exhaustion.js';
import { faultsInFollowing, soonestEnd } from './follow.js';
import { randomCase } from './random-graph.js';

/** A starter and a tank on a shroud that can leave as one, over a flywheel. */
const shroud: TeardownGraph = {
  pieces: [
    { id: 'starter', minutes: 3, before: [] },
    { id: 'hose', minutes: 2, before: [] },
    { id: 'tank', minutes: 4, before: ['hose'] },
    { id: 'shroud', minutes: 3, before: ['starter', 'tank'] },
    { id: 'flywheel', minutes: 5, before: ['shroud'] },
  ],
  together: [{ id: 'starter-and-shroud', pieces: ['starter', 'shroud', 'tank'], minutes: 4 }],
};
const ids = (graph: TeardownGraph, goal: Goal) => leastTeardown(graph, goal).removals.map(({ id }) => id);

describe('the least teardown', () => {
  const cases = times(300, (seed) => ({ seed, ...randomCase(seed) }));

  test('takes the minutes that exhaustive search finds, on 300 random graphs', () => {
    const differ = cases.flatMap((each) => {
      const { minutes, bound, optimal } = leastTeardown(each.graph, each.goal);
      const least = leastByExhaustion(each);
      return minutes === least && bound === least && optimal
        ? []
        : [{ seed: each.seed, minutes, bound, least }];
    });
    expect(differ).toEqual([]);
  });

  test('the random graphs put whole and split to the test', () => {
    const hows = cases.map(({ graph, goal }) => leastTeardown(graph, goal).removals.map(({ how }) => how));
    expect(hows.filter((how) => how.includes('whole')).length).toBeGreaterThan(60);
    expect(hows.filter((how) => !how.includes('whole')).length).toBeGreaterThan(60);
  });

  test('every order can be followed, and no target is missed', () => {
    for (const { graph, goal } of cases) {
      const { removals } = leastTeardown(graph, goal);
      expect(faultsInFollowing(graph, removals, goal.off)).toEqual([]);
      const off = new Set([...goal.off!, ...removals.flatMap(({ pieces }) => pieces)]);
      expect([...goal.reach, ...goal.clear!].filter((id) => !off.has(id))).toEqual([]);
      const inside = removals.filter(({ how }) => how === 'whole').flatMap(({ pieces }) => pieces);
      expect(goal.reach.filter((id) => inside.includes(id))).toEqual([]);
    }
  });

  test('the minutes are the sum of the removals, and none is there twice', () => {
    for (const { graph, goal } of cases) {
      const { removals, minutes, elapsed } = leastTeardown(graph, goal);
      expect(removals.reduce((sum, removal) => sum + removal.minutes, 0)).toBe(minutes);
      expect(elapsed).toBe(minutes);
      const all = removals.flatMap(({ pieces }) => pieces);
      expect(new Set(all).size).toBe(all.length);
    }
  });

  test('cut off early, it says how far the truth can be below', () => {
    const gaps = cases.flatMap((each) => {
      const { minutes, bound, optimal } = leastTeardown(each.graph, { ...each.goal, limit: 2 });
      const least = leastByExhaustion(each);
      expect(bound).toBeLessThanOrEqual(least);
      expect(minutes).toBeGreaterThanOrEqual(least);
      if (optimal) expect(minutes).toBe(least);
      return optimal ? [] : [minutes - bound];
    });
    expect(gaps.length).toBeGreaterThan(10);
  });

  test('leaves an assembly whole where it is only in the way', () => {
    expect(ids(shroud, { reach: ['flywheel'] })).toEqual(['hose', 'starter-and-shroud', 'flywheel']);
  });

  test('splits it as far as a piece of it is wanted', () => {
    expect(ids(shroud, { reach: ['flywheel', 'starter'] })).toEqual([
      'starter',
      'hose',
      'starter-and-shroud',
      'flywheel',
    ]);
    expect(ids(shroud, { reach: ['shroud'] })).toEqual(['starter', 'hose', 'tank', 'shroud']);
  });

  test('what is off already costs nothing', () => {
    expect(leastTeardown(shroud, { reach: ['flywheel'], off: ['shroud', 'tank'] })).toMatchObject({
      minutes: 5,
      optimal: true,
    });
    expect(leastTeardown(shroud, { reach: ['tank'], off: ['tank'] }).removals).toEqual([]);
  });

  test('an assembly whose pieces wait for one another round a corner is split there', () => {
    const corner: TeardownGraph = {
      pieces: [
        { id: 'base', minutes: 3, before: [] },
        { id: 'spring', minutes: 1, before: ['base'] },
        { id: 'carburetor', minutes: 3, before: ['spring'] },
        { id: 'tank', minutes: 4, before: ['carburetor'] },
      ],
      together: [{ id: 'tank-top', pieces: ['base', 'carburetor', 'tank'], minutes: 4 }],
    };
    expect(ids(corner, { reach: [], clear: ['tank'] })).toEqual(['base', 'spring', 'tank-top']);
  });

  test('a soak runs while other work is done, and only its rest is waited for', () => {
    const soaked = leastTeardown(shroud, {
      reach: ['flywheel'],
      waits: [{ piece: 'flywheel', minutes: 30 }],
    });
    expect(soaked.removals.at(-1)).toMatchObject({ id: 'flywheel', start: 30 });
    expect(soaked).toMatchObject({ minutes: 11, elapsed: 35 });
    const hoseSoaked = leastTeardown(shroud, {
      reach: ['flywheel', 'starter'],
      waits: [{ piece: 'hose', minutes: 2 }],
    });
    expect(hoseSoaked.elapsed).toBe(hoseSoaked.minutes);
  });

  test('no order of the same removals ends sooner, whatever has to soak', () => {
    const waited = cases
      .map(({ seed, graph, goal }) => {
        const { whole, some } = drawing(seed + 50);
        const soaked = some(graph.pieces, 3).filter(({ id }) => !goal.off!.includes(id));
        const waits = soaked.map(({ id }) => ({ piece: id, minutes: whole(1, 20) }));
        return { waits, ...leastTeardown(graph, { ...goal, waits }) };
      })
      .filter(({ removals }) => removals.length > 1 && removals.length < 8);
    for (const { waits, removals, elapsed } of waited) expect(elapsed).toBe(soonestEnd(removals, waits));
    expect(waited.filter(({ elapsed, minutes }) => elapsed > minutes).length).toBeGreaterThan(20);
  });

  test.each([
    ['a target that is not there', { reach: ['cylinder'] }, 'unknown', 'reach[0]'],
    ['a piece off that is not there', { reach: [], off: ['cylinder'] }, 'unknown', 'off[0]'],
    [
      'a wait of no minutes',
      { reach: [], waits: [{ piece: 'hose', minutes: Number.NaN }] },
      'shape',
      'waits[0].minutes',
    ],
  ])('%s is refused', (_, goal, code, place) => {
    expect(() => leastTeardown(shroud, goal)).toThrow(
      expect.objectContaining({ name: 'PlanError', code, place }),
    );
  });

  test('pieces that wait for one another are refused by name', () => {
    const round = {
      pieces: [
        { id: 'lid', minutes: 1, before: ['bolt'] },
        { id: 'bolt', minutes: 1, before: ['lid'] },
      ],
      together: [],
    };
    expect(() => leastTeardown(round, { reach: ['lid'] })).toThrow(PlanError);
    expect(() => leastTeardown(round, { reach: ['lid'] })).toThrow(/lid → bolt → lid/);
  });
});

test('of two ways that take the same, the one that leaves more on is taken', () => {
  const graph = {
    pieces: [
      { id: 'carburetor', minutes: 3, before: [] },
      { id: 'boot', minutes: 3, before: ['carburetor'] },
      { id: 'pulse-cover', minutes: 1, before: ['carburetor'] },
    ],
    together: [{ id: 'carburetor-and-boot', pieces: ['carburetor', 'boot'], minutes: 3 }],
  };
  const { removals } = leastTeardown(graph, { reach: ['pulse-cover'] });
  expect(removals.map(({ id }) => id)).toEqual(['carburetor', 'pulse-cover']);
});
