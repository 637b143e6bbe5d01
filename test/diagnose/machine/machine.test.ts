import { describe, expect, test } from 'vitest';
import { byId } from '../../../src/catalog/index.js';
import { infer, outlook, readNetwork } from '../../../src/infer/index.js';
import { catalog, machine, mower, probabilities, seen } from './support.js';

const kinds = [
  mower,
  { ...mower, ignition: 'points', use: 'generator', storedMonths: 70 },
  { architecture: 'overhead-valve', fuelSystem: 'float-bowl', ignition: 'solid-state' },
  { architecture: 'two-stroke', fuelSystem: 'diaphragm', governor: 'none', use: 'blower' },
  {},
] as const;

describe('the network of a machine', () => {
  test.each(kinds)('is of the open form: %o', (facts) => {
    const all = machine([], { facts });
    const everything = all.checks.map(({ check }) => [check.id, check.outcomes.at(-1)!.id] as const);
    const history = {
      complaints: ['cranks-never-fires', 'races'],
      repairs: [{ fault: 'stale-fuel', at: '2026-03-01' }],
    };
    for (const made of [all, machine(seen(...everything), { facts, history })]) {
      expect(readNetwork(made.network).faults).toHaveLength(made.network.faults.length);
      expect(infer(made.network).kind).toBe('exact');
    }
  });

  test('a fault that the machine cannot have is not in it, one that it may have is', () => {
    const known = machine([]).faults.map((f) => f.id);
    expect(known).not.toContain('points-dirty-or-closed');
    expect(known).not.toContain('crank-seal-leaking-air');
    const unknown = machine([], { facts: {} }).faults.map((f) => f.id);
    expect(unknown).toContain('points-dirty-or-closed');
    expect(unknown).toContain('crank-seal-leaking-air');
  });

  test('before anything is seen each fault is as frequent as said, with what brings it about counted in', () => {
    const made = machine([]);
    const p = probabilities([]);
    const broughtAbout = new Set(made.network.links.map((l) => l.to));
    for (const { id, frequency } of made.faults) {
      if (!broughtAbout.has(id)) expect(p[id], id).toBeCloseTo(frequency, 12);
      else expect(Math.abs(p[id]! / frequency - 1), id).toBeLessThan(0.02);
    }
    expect(p['coil-dead']).toBeCloseTo(0.05, 12);
  });

  test('kin checks read by themselves are as likely as the sheet says, also after another was read', () => {
    // the two ways of building a sign, before and after its kin are bound together
    const chance = (made: ReturnType<typeof machine>) =>
      outlookOfMachineWith('exhaust-valve-stuck-open', made, 'leak-down');
    const after = machine(seen(['backward-rebound', 'nothing the catalog knows']));
    expect(chance(after)).toEqual(chance(machine([])));
  });

  function outlookOfMachineWith(fault: string, made: ReturnType<typeof machine>, sign: string): number[] {
    const known = made.faults.map((f) => ({ fault: f.id, present: f.id === fault }));
    const answer = infer({ ...made.network, known });
    if (answer.kind !== 'exact') throw new Error('bounded');
    return outlook(answer, sign).map((p) => Number(p.probability.toFixed(12)));
  }
});

describe('the facts of the intake', () => {
  const withFacts = (more: object) => probabilities([], { facts: { ...mower, ...more } });

  test.each([
    ['struck something', { struck: 'yes' }, 'flywheel-key-part-sheared'],
    ['tipped', { tipped: 'yes' }, 'oil-in-cylinder'],
    ['five years in a shed', { storedMonths: 60 }, 'main-jet-plugged'],
    ['fuel left in', { fuelLeftIn: 'yes' }, 'stale-fuel'],
    ['wrong fuel', { wrongFuel: 'yes' }, 'wrong-fuel'],
  ] as const)('%s raises what it does', (_title, fact, fault) => {
    expect(withFacts(fact)[fault]!).toBeGreaterThan(withFacts({})[fault]!);
  });

  test('points left for years are likely bad, and the figure for just such machines is taken', () => {
    const left = probabilities([], { facts: { ...mower, ignition: 'points', storedMonths: 60 } });
    expect(left['points-dirty-or-closed']).toBeCloseTo(0.6, 12);
  });

  test('“main jet, idle passages or both in 70 of 100” is shared out so that at least one is there in 70', () => {
    const p = probabilities([], { facts: { ...mower, use: 'generator', storedMonths: 24 } });
    expect(1 - (1 - p['main-jet-plugged']!) * (1 - p['idle-passages-plugged']!)).toBeCloseTo(0.7, 12);
  });

  test('the shop’s own frequency stands in place of the catalog’s', () => {
    const history = { frequencies: new Map([['coil-dead', 0.31]]) };
    expect(probabilities([], { history })['coil-dead']).toBeCloseTo(0.31, 12);
  });
});

describe('a check is not a sign', () => {
  test('one outcome of several sets its own, clears others and leaves what it hides unknown', () => {
    const made = machine(seen(['plug-tip', 'black and oily']));
    const read = new Map(made.network.seen.map((r) => [r.sign, 'outcome' in r ? r.outcome : 'doubtful']));
    expect(read.get('plug-tip/black-oily')).toBe('black-oily');
    expect(read.get('plug-tip/dry-clean')).toBe('tan');
    expect(read.get('plug-tip/metal-specks')).toBe('tan');
    expect(read.has('plug-tip/white-blistered')).toBe(false);
  });

  test('two outcomes seen together raise the faults of both', () => {
    const before = probabilities([]);
    const after = probabilities(seen(['oil-smell-and-feel', 'black', 'thin']));
    for (const fault of ['oil-low-or-black', 'oil-thinned-by-fuel'])
      expect(after[fault]!).toBeGreaterThan(before[fault]!);
    expect(after['water-in-oil']!).toBeLessThan(before['water-in-oil']!);
  });

  test('the worst step of a ladder does not clear what shows in a milder one', () => {
    const mild = 'tank-cap-vent-blocked';
    const none = probabilities(seen(['fuel-flow', 'full-stream']));
    const dead = probabilities(seen(['fuel-flow', 'none']));
    expect(dead[mild]!).toBeGreaterThan(none[mild]!);
    expect(dead['fuel-hose-perished']!).toBeGreaterThan(none['fuel-hose-perished']!);
  });

  test('words and ids of an outcome are the same reading', () => {
    const ids = probabilities(seen(['slow-pull', 'springy']));
    expect(probabilities(seen(['slow-pull', 'springy, twice in each pair of turns']))).toEqual(ids);
  });

  test('an outcome that the catalog does not have says nothing and is kept', () => {
    const made = machine(seen(['slow-pull', 'purple']));
    expect(made.network.seen).toEqual([]);
    expect(made.readings[0]).toMatchObject({ silent: 'outcome not in the catalog', words: ['purple'] });
  });
});

describe('evidence', () => {
  test('an excluded fault has no probability, a confirmed one is certain', () => {
    const history = { excluded: ['coil-dead'], confirmed: ['stop-wire-grounded'] };
    const p = probabilities(seen(['spark-across-gap', 'none']), { history });
    expect(p['coil-dead']).toBe(0);
    expect(p['stop-wire-grounded']).toBe(1);
  });

  test('a healthy reading lowers every fault that it would show', () => {
    const before = probabilities([]);
    for (const { check, waitsFor } of machine([]).checks) {
      if (waitsFor !== undefined) continue;
      const after = probabilities(seen([check.id, check.outcomes[0]!.id]));
      for (const link of check.links) {
        if (before[link.fault] === undefined || link.withComplaint) continue;
        expect(after[link.fault]!, `${check.id}: ${link.fault}`).toBeLessThan(before[link.fault]!);
      }
    }
  });

  test('a doubtful reading says less than a sure one, in the same direction', () => {
    const [sure] = seen(['spark-across-gap', 'none']);
    const before = probabilities([])['coil-dead']!;
    const certain = probabilities([sure!])['coil-dead']!;
    const doubtful = probabilities([{ ...sure!, doubtful: true }])['coil-dead']!;
    expect(doubtful).toBeGreaterThan(before);
    expect(doubtful).toBeLessThan(certain);
  });

  test('of a check made twice the last reading counts', () => {
    const twice = seen(['spark-across-gap', 'none'], ['spark-across-gap', 'strong']);
    expect(probabilities(twice)).toEqual(probabilities(seen(['spark-across-gap', 'strong'])));
    expect(machine(twice).readings.map((r) => r.silent)).toEqual(['read again', undefined]);
  });

  test('the complaint alone raises the faults that stand behind it, and no others by much', () => {
    const before = probabilities([]);
    const after = probabilities([], { history: { complaints: ['blue-smoke'] } });
    const behind = byId(catalog.complaints)
      .get('blue-smoke')!
      .commonFaults.map((c) => c.fault);
    for (const fault of behind) expect(after[fault]! / before[fault]!, fault).toBeGreaterThan(1.15);
    // blue smoke comes out of an engine that runs: that speaks against what would keep it from running, and for nothing
    for (const fault of ['coil-dead', 'fuel-filter-blocked', 'muffler-blocked'])
      expect(after[fault], fault).toBeLessThanOrEqual(before[fault]! + 1e-12);
  });

  test('related checks that agree say less than unrelated ones would', () => {
    const odds = (p: number) => p / (1 - p);
    const of = (...list: (readonly [string, string])[]) =>
      odds(probabilities(seen(...list))['exhaust-valve-stuck-open']!);
    const none = of();
    const one = of(['backward-rebound', 'none']) / none;
    const other = of(['compression-dry', 'near-zero']) / none;
    const both = of(['backward-rebound', 'none'], ['compression-dry', 'near-zero']) / none;
    expect(both).toBeGreaterThan(Math.max(one, other));
    expect(both).toBeLessThan(0.7 * one * other);
  });

  test('a weak gauge reading says nothing against the rings where a release is fitted, less where it may be', () => {
    const gauge = seen(['compression-dry', 'down-forty-percent']);
    const p = (fitted: boolean | undefined) =>
      probabilities(gauge, {
        facts: { ...mower, variants: fitted === undefined ? {} : { 'automatic-release': fitted } },
      })['rings-and-bore-worn']!;
    const before = probabilities([])['rings-and-bore-worn']!;
    expect(p(false)).toBeGreaterThan(1.5 * before);
    expect(p(undefined)).toBeGreaterThan(p(true));
    expect(p(undefined)).toBeLessThan(p(false));
    expect(Math.abs(p(true) - before)).toBeLessThan(0.1 * before);
  });
});

describe('a repeat with the suspect out of the way', () => {
  test('“spark returns with the stop wire off” raises the stop wire above the coil', () => {
    const p = probabilities(seen(['spark-across-gap', 'none'], ['spark-stop-wire-off', 'returns']));
    expect(p['stop-wire-grounded']!).toBeGreaterThan(0.8);
    expect(p['coil-dead']!).toBeLessThan(0.1);
  });

  test('“no change” leaves the coil and lowers the stop wire', () => {
    const first = probabilities(seen(['spark-across-gap', 'none']));
    const p = probabilities(seen(['spark-across-gap', 'none'], ['spark-stop-wire-off', 'no-change']));
    expect(p['coil-dead']!).toBeGreaterThan(1.5 * first['coil-dead']!);
    expect(p['stop-wire-grounded']!).toBeLessThan(first['stop-wire-grounded']!);
    expect(p['coil-dead']!).toBeGreaterThan(p['stop-wire-grounded']!);
  });

  test('it waits for the first reading, and says nothing without it', () => {
    const made = machine(seen(['spark-stop-wire-off', 'returns']));
    expect(made.readings[0]!.silent).toBe('waits for its first reading');
    expect(made.network.seen).toEqual([]);
    const waits = (m: typeof made) => m.checks.find((c) => c.check.id === 'spark-stop-wire-off')!.waitsFor;
    expect(waits(machine([]))).toBe('spark-across-gap');
    expect(waits(machine(seen(['spark-across-gap', 'strong'])))).toBe('spark-across-gap');
    expect(waits(machine(seen(['spark-across-gap', 'none'])))).toBeUndefined();
  });
});

describe('what looks alike is told apart by the right check', () => {
  test.each([
    [
      'weak squeeze',
      [['slow-pull', 'soft']],
      ['leak-down-listen', 'breather-or-filler'],
      'rings-and-bore-worn',
      'exhaust-valve-stuck-open',
    ],
    [
      'weak squeeze',
      [['slow-pull', 'none']],
      ['leak-down-listen', 'exhaust'],
      'exhaust-valve-stuck-open',
      'rings-and-bore-worn',
    ],
    [
      'kicks',
      [['kickback', 'every-pull']],
      ['key-look', 'slight-step'],
      'flywheel-key-part-sheared',
      'valve-clearance-too-large',
    ],
    [
      'kicks',
      [['kickback', 'sometimes']],
      ['valve-clearance', 'wide'],
      'valve-clearance-too-large',
      'flywheel-key-part-sheared',
    ],
    [
      'hunts',
      [['speed-steadiness', 'constant-hunt']],
      ['throttle-held-by-hand', 'steady'],
      'governor-spring-off',
      'idle-passages-plugged',
    ],
    [
      'hunts',
      [['speed-steadiness', 'constant-hunt']],
      ['throttle-held-by-hand', 'still-surges'],
      'idle-passages-plugged',
      'governor-spring-off',
    ],
    [
      'dies warm',
      [['hot-restart', 'none']],
      ['minutes-to-failure', 'cap-cures'],
      'tank-cap-vent-blocked',
      'coil-fails-hot',
    ],
    [
      'dies warm',
      [['hot-restart', 'none']],
      ['minutes-to-failure', 'cooling-cures'],
      'coil-fails-hot',
      'tank-cap-vent-blocked',
    ],
    [
      'needs choke',
      [['choke-response', 'smoother-on-half']],
      ['spray-round-joints', 'big-change'],
      'intake-air-leak',
      undefined,
    ],
    [
      'blue smoke',
      [['smoke', 'steady-blue']],
      ['oil-level', 'over'],
      'oil-in-cylinder',
      'rings-and-bore-worn',
    ],
    [
      'blue smoke',
      [
        ['smoke', 'steady-blue'],
        ['oil-level', 'right'],
      ],
      ['leak-down', 'high'],
      'rings-and-bore-worn',
      'oil-in-cylinder',
    ],
    [
      'breathless',
      [['step-of-load', 'bogs']],
      ['muffler-off-trial', 'cured'],
      'muffler-blocked',
      'cam-lobe-worn',
    ],
    [
      'no spark',
      [['spark-across-gap', 'none']],
      ['spark-stop-wire-off', 'no-change'],
      'coil-dead',
      'stop-wire-grounded',
    ],
  ] as const)('%s: %j, then %j', (_title, first, then, raised, other) => {
    const before = probabilities(seen(...first));
    const after = probabilities(seen(...first, then));
    const odds = (p: number) => p / (1 - p);
    const ratio = (fault: string) => odds(after[fault]!) / odds(before[fault]!);
    expect(ratio(raised)).toBeGreaterThan(1.3);
    if (other) {
      expect(ratio(other)).toBeLessThan(ratio(raised) / 1.5);
    }
  });
});

describe('after a repair', () => {
  const noSpark = seen(['spark-across-gap', 'none'], ['spark-stop-wire-off', 'returns']);
  const repairs = [{ fault: 'stop-wire-grounded', at: '2026-03-01T10:00:00.000Z' }];
  const again = (outcome: string) => ({
    check: 'spark-across-gap',
    outcomes: [outcome],
    at: '2026-03-01T11:00:00.000Z',
  });

  test('the repaired fault is gone but for a repair that failed, and its check is open again', () => {
    const p = probabilities(noSpark, { history: { repairs } });
    expect(p['stop-wire-grounded']!).toBeLessThan(0.1);
    const check = machine(noSpark, { history: { repairs } }).checks.find(
      (c) => c.check.id === 'spark-across-gap',
    )!;
    expect(check.open).toBe(true);
  });

  test('a good reading then proves it, a bad one brings back doubt', () => {
    const p = (outcome: string) =>
      probabilities([...noSpark, again(outcome)], { history: { repairs } })['stop-wire-grounded']!;
    const untried = probabilities(noSpark, { history: { repairs } })['stop-wire-grounded']!;
    expect(p('strong')).toBeLessThan(untried);
    expect(p('none')).toBeGreaterThan(untried);
  });

  test('what was seen before still stands for the faults that were not touched', () => {
    const first = [...seen(['air-cleaner-look', 'blocked']), ...noSpark.slice(1)];
    const p = probabilities(first, { history: { repairs } });
    expect(p['air-cleaner-choked']!).toBeGreaterThan(0.6);
  });
});
