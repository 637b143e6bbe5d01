import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../src/catalog/index.js';
import { type AgentAnswer, cleaningStates, fold, waysToClean } from '../../../src/job/index.js';
import { door } from '../door.js';
import { jobId, log } from '../entries.js';

const catalog = builtInCatalog();
type Add = ReturnType<typeof log>['add'];
const jobWith = (more: (add: Add) => void = () => undefined) => {
  const { add, lines } = log();
  add('open', { tag: 4, title: 'Pump' });
  more(add);
  return fold(jobId, lines);
};
const of = (answers: readonly AgentAnswer[], agent: string) => answers.find((a) => a.agent.id === agent);
const body = { component: 'carburetor', way: 'carburetor-body', materials: ['aluminum', 'zinc-alloy'] };
const used =
  (agent: string, state: 'planned' | 'done' | 'dropped' = 'done') =>
  (add: Add) =>
    add('cleaning', {
      cleaning: agent,
      title: 'Head',
      component: 'cylinder-head',
      materials: ['steel'],
      agent,
      state,
    });

describe('an agent on a part', () => {
  test('caustic on aluminum is never, with the reason and the hazard', () => {
    const caustic = of(door(jobWith()).cleaningWith(body), 'caustic')!;
    expect(caustic.verdict).toBe('never');
    expect(caustic.reasons[0]).toBe('Aluminum: etches and dissolves it, makes hydrogen and heat');
    expect(caustic.hazards).toContain('hydrogen with aluminum or zinc');
    expect(caustic.cautions.map(({ id }) => id)).toContain('caustic-never-on-aluminum');
  });

  test('one material that it attacks is enough, whatever else the part is of', () => {
    for (const other of catalog.materials) {
      const asked = { materials: [...new Set([other.id, 'aluminum'])] };
      expect(of(door(jobWith()).cleaningWith(asked), 'caustic')?.verdict).toBe('never');
    }
    expect(of(door(jobWith()).cleaningWith({ materials: ['cast-iron'] }), 'caustic')?.verdict).toBe(
      'allowed',
    );
  });

  test('what the trade uses on such a part stands first, with its soaking time', () => {
    const [first] = door(jobWith()).cleaningWith(body);
    expect(first).toMatchObject({ verdict: 'allowed', soakMinutes: 30 });
    expect(first!.agent.id).toBe('aerosol-carburetor-cleaner');
  });

  test('every agent that the catalog would never put on a listed part is never for it', () => {
    for (const way of catalog.cleanings)
      for (const agent of way.avoidAgents ?? []) {
        const answers = door(jobWith()).cleaningWith({ way: way.id, materials: way.materials });
        expect(of(answers, agent)?.verdict, `${agent} for ${way.id}`).toBe('never');
      }
  });

  test('every agent that the trade uses on a listed part may be used on it', () => {
    for (const way of catalog.cleanings)
      for (const agent of way.agents) {
        const answers = door(jobWith()).cleaningWith({ way: way.id, materials: way.materials });
        // a caustic tank only if no aluminum is on it: the catalog’s own words
        expect(of(answers, agent)?.verdict, `${agent} for ${way.id}`).not.toBe('never');
      }
  });

  test('what nobody has judged is not offered; judged in part, it is taken with care', () => {
    const answers = door(jobWith()).cleaningWith({ materials: ['brass'] });
    expect(of(answers, 'oxygen')).toBeUndefined();
    const mixed = door(jobWith()).cleaningWith({ materials: ['aluminum', 'electrical'] });
    expect(of(mixed, 'parts-spray')).toMatchObject({ verdict: 'with-care' });
    expect(of(mixed, 'parts-spray')!.reasons[0]).toMatch(/^Coil, points.*nobody has judged/);
  });

  test('chlorinated spray, then heat: never, once the spray was on the part; planned or dropped it was not', () => {
    const heat = (more?: (add: Add) => void) =>
      of(
        door(jobWith(more)).cleaningWith({
          component: 'cylinder-head',
          way: 'muffler-cleaning',
          materials: ['steel'],
        }),
        'heat-or-flame',
      )!;
    expect(heat().verdict).not.toBe('never');
    expect(heat(used('chlorinated-spray'))).toMatchObject({ verdict: 'never' });
    expect(heat(used('chlorinated-spray')).reasons[0]).toMatch(
      /^Chlorinated spray .* was used on it: together they give phosgene/,
    );
    expect(heat(used('chlorinated-spray', 'planned')).verdict).not.toBe('never');
    expect(heat(used('chlorinated-spray', 'dropped')).verdict).not.toBe('never');
  });

  test('acid after caustic is never, and caustic after acid', () => {
    const second = (first: string, then: string) =>
      of(door(jobWith(used(first))).cleaningWith({ component: 'cylinder-head', materials: ['steel'] }), then)
        ?.verdict;
    expect(second('caustic', 'citric-acid')).toBe('never');
    expect(second('citric-acid', 'caustic')).toBe('never');
  });
});

test('a component has its own ways of cleaning; a part that the catalog does not know may take any', () => {
  expect(waysToClean(catalog, 'carburetor').map(({ id }) => id)).toEqual(['carburetor-body']);
  expect(waysToClean(catalog, 'cup-holder')).toHaveLength(catalog.cleanings.length);
  expect(waysToClean(catalog, undefined)).toHaveLength(catalog.cleanings.length);
});

test('a soak runs from the moment it was put in', () => {
  const job = jobWith((add) =>
    add('cleaning', {
      cleaning: 'c',
      title: 'Body',
      materials: ['aluminum'],
      agent: 'petroleum-dip',
      state: 'soaking',
      soakMinutes: 30,
    }),
  );
  const [state] = cleaningStates(job);
  expect(state!.until).toBe(Date.parse(state!.cleaning.at) + 30 * 60_000);
});
