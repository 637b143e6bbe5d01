import { describe, expect, test } from 'vitest';
import {
  byFault,
  byFunction,
  evidenceWeights,
  explanations,
  infer,
  inferExactly,
  type Network,
  NetworkError,
  outlook,
  readNetwork,
  seeded,
} from '../../src/infer/index.js';

/** Every state of every fault and function, one by one, as the form of a network says it. No code of the product. */
function counted(network: Network) {
  const faults = network.faults.map((f) => f.id);
  const functions = network.functions ?? [];
  const present = new Map(faults.map((f) => [f, 0]));
  const states = functions.map((f) => f.states.map(() => 0));
  const cumulated = (masses: readonly number[], k: number): number =>
    masses.slice(0, k + 1).reduce((a, b) => a + b, 0);
  /** the worst of independent draws */
  const worst = (draws: readonly (readonly number[])[], size: number): number[] => {
    const within = (k: number): number => (k < 0 ? 0 : draws.reduce((p, d) => p * cumulated(d, k), 1));
    return Array.from({ length: size }, (_, k) => within(k) - within(k - 1));
  };
  let evidence = 0;
  for (let bits = 0; bits < 2 ** faults.length; bits += 1) {
    const on = new Set(faults.filter((_, i) => (bits >> i) & 1));
    if (network.known.some((k) => on.has(k.fault) !== k.present)) continue;
    let weight = 1;
    for (const { id, prior } of network.faults) {
      const spared = network.links
        .filter((l) => l.to === id && on.has(l.from))
        .reduce((p, l) => p * (1 - l.p), 1 - prior);
      weight *= on.has(id) ? 1 - spared : spared;
    }
    const chances = functions.map((f) => {
      const good = f.states.map((_, s): number => (s === 0 ? 1 : 0));
      const causes = f.causes.filter((c) => on.has(c.fault)).map((c) => c.outcome);
      return worst([f.leak ?? good, ...causes], f.states.length);
    });
    const each = (at: number, chosen: readonly number[], sofar: number): void => {
      if (sofar === 0) return;
      if (at < functions.length) {
        for (const [s, p] of chances[at]!.entries()) each(at + 1, [...chosen, s], sofar * p);
        return;
      }
      const stateOf = new Map(functions.map((f, i) => [f.id, chosen[i]!]));
      let all = sofar;
      for (const reading of network.seen) {
        const sign = network.signs.find((s) => s.id === reading.sign)!;
        const draws = sign.causes.flatMap((c) => {
          if ('fault' in c) return on.has(c.fault) ? [c.outcome] : [];
          const s = stateOf.get(c.function)!;
          return s === 0 ? [] : [c.outcome[s - 1]!];
        });
        const shows = worst([sign.leak, ...draws], sign.outcomes.length);
        all *=
          'outcome' in reading
            ? shows[sign.outcomes.indexOf(reading.outcome)]!
            : reading.weights.reduce((sum, w, k) => sum + w * shows[k]!, 0);
      }
      evidence += all;
      for (const f of on) present.set(f, present.get(f)! + all);
      for (const [i, s] of chosen.entries()) states[i]![s]! += all;
    };
    each(0, [], weight);
  }
  return {
    evidence,
    posterior: Object.fromEntries([...present].map(([f, p]) => [f, p / evidence])),
    states: Object.fromEntries(
      functions.map((f, i) => [
        f.id,
        Object.fromEntries(f.states.map((s, k) => [String(s), states[i]![k]! / evidence])),
      ]),
    ),
  };
}

/** Up to seven faults, three functions of two to four states, and six signs; some signs name both kinds of cause. */
function randomNetwork(seed: number): Network {
  const next = seeded(seed);
  const upTo = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  const masses = (n: number, from = 0): number[] => {
    const draws: number[] = Array.from({ length: n }, (_, k) =>
      k < from || next() < 0.15 ? 0 : next() + 0.01,
    );
    if (!draws.some((d) => d > 0)) draws[n - 1] = 1;
    const sum = draws.reduce((a, b) => a + b, 0);
    return draws.map((d) => d / sum);
  };
  const faults = Array.from({ length: upTo(2, 7) }, (_, i) => ({ id: `f${i}`, prior: next() ** 2 * 0.7 }));
  const links = faults.flatMap((a, i) =>
    faults.slice(i + 1).flatMap((b) => (next() < 0.15 ? [{ from: a.id, to: b.id, p: next() }] : [])),
  );
  const functions = Array.from({ length: upTo(1, 3) }, (_, i) => {
    const states = Array.from({ length: upTo(2, 4) }, (_, s) => `s${s}`);
    return {
      id: `g${i}`,
      states,
      ...(next() < 0.5 && { leak: masses(states.length) }),
      causes: faults.filter(() => next() < 0.6).map((f) => ({ fault: f.id, outcome: masses(states.length) })),
    };
  });
  /** by state; a worse state leaves nothing milder than the one before it */
  const byState = (states: number, outcomes: number): number[][] => {
    let least = 0;
    return Array.from({ length: states - 1 }, () => {
      const made = masses(outcomes, least);
      least = Math.max(
        least,
        made.findIndex((m) => m > 0),
      );
      return made;
    });
  };
  const signs = Array.from({ length: upTo(2, 6) }, (_, i) => {
    const outcomes = Array.from({ length: upTo(2, 4) }, (_, k) => `o${k}`);
    const n = outcomes.length;
    return {
      id: `x${i}`,
      outcomes,
      leak: masses(n),
      causes: [
        ...functions
          .filter(() => next() < 0.6)
          .map((f) => ({ function: f.id, outcome: byState(f.states.length, n) })),
        ...faults.filter(() => next() < 0.3).map((f) => ({ fault: f.id, outcome: masses(n) })),
      ],
    };
  });
  const seen = signs
    .filter(() => next() < 0.85)
    .map(({ id, outcomes }) =>
      next() < 0.7
        ? { sign: id, outcome: outcomes[Math.floor(next() * outcomes.length)]! }
        : { sign: id, weights: outcomes.map(() => Math.ceil(next() * 10) / 10) },
    );
  const known = faults.filter(() => next() < 0.08).map((f) => ({ fault: f.id, present: next() < 0.5 }));
  return { faults, links, signs, functions, seen, known };
}

const possible = Array.from({ length: 300 }, (_, i) => i + 1).flatMap((seed) => {
  const network = randomNetwork(seed);
  const want = counted(network);
  return want.evidence > 1e-9 ? [{ seed, network, want }] : [];
});

const near = (got: number, want: number, what: string): void =>
  expect(Math.abs(got - want), what).toBeLessThan(1e-10);

describe('functions between faults and signs: every state counted one by one, 300 seeded networks', () => {
  test('most are possible', () => {
    expect(possible.length).toBeGreaterThan(230);
  });

  test('faults, functions and the evidence come out as counted', () => {
    for (const { seed, network, want } of possible) {
      const got = inferExactly(readNetwork(network));
      near(got.evidence, want.evidence, `seed ${seed}: evidence`);
      for (const [f, p] of Object.entries(byFault(got))) near(p, want.posterior[f]!, `seed ${seed}: ${f}`);
      for (const [g, states] of Object.entries(byFunction(got)))
        for (const [s, p] of Object.entries(states)) near(p, want.states[g]![s]!, `seed ${seed}: ${g} ${s}`);
    }
  });

  test('what a sign not yet seen would say is what it says once it is seen', () => {
    for (const { seed, network } of possible.slice(0, 120)) {
      const open = network.signs.find((s) => !network.seen.some((r) => r.sign === s.id));
      if (!open) continue;
      const { evidence } = counted(network);
      for (const [k, prospect] of outlook(inferExactly(network), open.id).entries()) {
        const then = counted({
          ...network,
          seen: [...network.seen, { sign: open.id, outcome: open.outcomes[k]! }],
        });
        near(prospect.probability, then.evidence / evidence, `seed ${seed}`);
        if (!prospect.posterior || prospect.probability < 1e-4) continue;
        for (const [f, { id }] of network.faults.entries())
          near(prospect.posterior[f]!, then.posterior[id]!, `seed ${seed}: ${id}`);
      }
    }
  });

  test('the weight of a finding is that of the network without it', () => {
    for (const { seed, network, want } of possible.slice(0, 80)) {
      const weights = evidenceWeights(inferExactly(network));
      for (const [i, reading] of network.seen.entries()) {
        const without = counted({ ...network, seen: network.seen.filter((r) => r !== reading) });
        for (const [f, { id }] of network.faults.entries()) {
          const [p, q] = [want.posterior[id]!, without.posterior[id]!];
          if (Math.min(p, 1 - p, q, 1 - q) < 1e-6) continue;
          const gain = Math.log(p / (1 - p)) - Math.log(q / (1 - q));
          expect(Math.abs(weights[i]!.logOddsGain[f]! - gain), `seed ${seed}`).toBeLessThan(1e-7);
        }
      }
    }
  });

  test('bounds hold where an exact answer is refused', () => {
    for (const { seed, network, want } of possible.slice(0, 60)) {
      const got = infer(network, { maxCells: 1, boundCells: 1_000, branches: 32 });
      if (got.kind !== 'bounded') continue;
      for (const [f, id] of got.faults.entries()) {
        expect(got.low[f]! - 1e-9, `seed ${seed}`).toBeLessThanOrEqual(want.posterior[id]!);
        expect(got.high[f]! + 1e-9, `seed ${seed}`).toBeGreaterThanOrEqual(want.posterior[id]!);
      }
    }
  });

  test('explanations name faults, never functions', () => {
    for (const { network } of possible.slice(0, 40)) {
      const ids = new Set(network.faults.map((f) => f.id));
      const { list } = explanations(inferExactly(network), { count: 3 });
      expect(list.flatMap((e) => e.present).every((f) => ids.has(f))).toBe(true);
    }
  });
});

describe('a function is refused at the place where it is wrong', () => {
  const base = {
    faults: [{ id: 'coil', prior: 0.1 }],
    functions: [
      {
        id: 'spark',
        states: ['good', 'weak', 'none'],
        causes: [{ fault: 'coil', outcome: [0.1, 0.2, 0.7] }],
      },
    ],
    signs: [
      {
        id: 'tester',
        outcomes: ['strong', 'weak', 'none'],
        leak: [0.9, 0.05, 0.05],
        causes: [
          {
            function: 'spark',
            outcome: [
              [0.2, 0.7, 0.1],
              [0, 0.1, 0.9],
            ],
          },
        ],
      },
    ],
  };
  test('as it stands it is taken', () => {
    expect(readNetwork(base).functions).toHaveLength(1);
  });
  const cases: [string, object, string][] = [
    ['a fault of the same name', { functions: [{ ...base.functions[0], id: 'coil' }] }, 'functions[0].id'],
    [
      'a state twice',
      { functions: [{ ...base.functions[0], states: ['good', 'weak', 'weak'] }] },
      'functions[0].states[2]',
    ],
    [
      'a cause that is no fault',
      { functions: [{ ...base.functions[0], causes: [{ fault: 'x', outcome: [1, 0, 0] }] }] },
      'functions[0].causes[0].fault',
    ],
    [
      'a sign that names a function that is not there',
      { signs: [{ ...base.signs[0], causes: [{ function: 'fuel', outcome: [[1, 0, 0]] }] }] },
      'signs[0].causes[0].function',
    ],
    [
      'a state without its distribution',
      { signs: [{ ...base.signs[0], causes: [{ function: 'spark', outcome: [[1, 0, 0]] }] }] },
      'signs[0].causes[0].outcome',
    ],
    [
      'a worse state that leaves something milder',
      {
        signs: [
          {
            ...base.signs[0],
            causes: [
              {
                function: 'spark',
                outcome: [
                  [0, 1, 0],
                  [0.5, 0, 0.5],
                ],
              },
            ],
          },
        ],
      },
      'signs[0].causes[0].outcome[1]',
    ],
  ];
  test.each(cases)('%s', (_, change, place) => {
    const read = () => readNetwork({ ...base, ...change });
    expect(read).toThrow(NetworkError);
    try {
      read();
    } catch (error) {
      expect((error as NetworkError).place).toBe(place);
    }
  });

  test('good spark speaks against coil and condenser alike, by hand', () => {
    // two faults of 0.1 that each spoil the spark in 0.8; the tester shows a spoiled spark in 0.9:
    // P(good | coil) = 0.1 + 0.9 · 0.2·(1 − 0.1·0.8) … worked out below, by the definition
    const network = readNetwork({
      faults: [
        { id: 'coil', prior: 0.1 },
        { id: 'condenser', prior: 0.1 },
      ],
      functions: [
        {
          id: 'spark',
          states: ['good', 'none'],
          causes: ['coil', 'condenser'].map((fault) => ({ fault, outcome: [0.2, 0.8] })),
        },
      ],
      signs: [
        {
          id: 'tester',
          outcomes: ['strong', 'none'],
          leak: [1, 0],
          causes: [{ function: 'spark', outcome: [[0.1, 0.9]] }],
        },
      ],
      seen: [{ sign: 'tester', outcome: 'strong' }],
    });
    const got = byFault(inferExactly(network));
    // strong given the spark good: 1, none: 0.1. good given (c, d): 0.2^(c + d).
    const shows = (faulty: number): number => 0.2 ** faulty + (1 - 0.2 ** faulty) * 0.1;
    const all = 0.81 * shows(0) + 0.18 * shows(1) + 0.01 * shows(2);
    const want = (0.09 * shows(1) + 0.01 * shows(2)) / all;
    expect(got.coil).toBeCloseTo(want, 12);
    expect(got.condenser).toBeCloseTo(want, 12);
    expect(want).toBeLessThan(0.04);
  });
});
