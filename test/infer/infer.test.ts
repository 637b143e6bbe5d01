import { beforeAll, describe, expect, test } from 'vitest';
import {
  answerOf,
  byFault,
  type ExactInference,
  infer,
  inferExactly,
  NetworkError,
  readNetwork,
} from '../../src/infer/index.js';
import { byFractions, type Enumerated } from './by-fractions.js';
import { randomNetwork } from './random-network.js';
import { small } from './small-network.js';

const networks = Array.from({ length: 500 }, (_, i) => i + 1);

/** so many of them are looked at in every detail */
const detailed = 150;

function apart(got: ArrayLike<number>, want: ArrayLike<number>): number {
  if (got.length !== want.length) return Number.POSITIVE_INFINITY;
  return Array.from(got).reduce((worst, x, i) => Math.max(worst, Math.abs(x - want[i]!)), 0);
}

function inferOrNothing(seed: number): ExactInference | undefined {
  try {
    return inferExactly(readNetwork(randomNetwork(seed)));
  } catch (error) {
    if (error instanceof NetworkError && error.code === 'impossible') return undefined;
    throw error;
  }
}

describe('every state counted in whole numbers, 500 seeded networks', () => {
  const pairs: { seed: number; got: ExactInference; want: Enumerated }[] = [];
  const impossible: number[] = [];
  beforeAll(() => {
    for (const seed of networks) {
      const got = inferOrNothing(seed);
      const want = byFractions(randomNetwork(seed), seed <= detailed);
      if (got) pairs.push({ seed, got, want });
      else {
        impossible.push(seed);
        expect(want.evidence, `seed ${seed}`).toBe(0);
      }
    }
  });

  test('nearly all of them are possible, and they are of all kinds', () => {
    expect(impossible.length).toBeLessThan(75);
    const seen = pairs.map(({ seed }) => randomNetwork(seed));
    expect(seen.some((n) => n.faults.length === 14)).toBe(true);
    expect(seen.filter((n) => n.links.length > 0).length).toBeGreaterThan(300);
    expect(seen.filter((n) => n.known.length > 0).length).toBeGreaterThan(100);
    expect(seen.filter((n) => n.seen.some((r) => 'weights' in r)).length).toBeGreaterThan(250);
  });

  test('the posterior is the exact one', () => {
    for (const { seed, got, want } of pairs) {
      expect(
        apart(
          got.posterior,
          got.faults.map((f) => want.posterior[f]!),
        ),
        `seed ${seed}`,
      ).toBeLessThan(1e-13);
    }
  });

  test('the evidence probability is the exact one', () => {
    for (const { seed, got, want } of pairs) {
      expect(Math.abs(got.evidence / want.evidence - 1), `seed ${seed}`).toBeLessThan(1e-13);
      expect(Math.abs(got.logEvidence - Math.log(want.evidence)), `seed ${seed}`).toBeLessThan(1e-12);
    }
  });

  test('what only the leak accounts for is exact', () => {
    for (const { seed, got, want } of pairs.filter((p) => p.seed <= detailed)) {
      expect(
        apart(
          got.findings.map((f) => f.unexplained),
          want.unexplained,
        ),
        `seed ${seed}`,
      ).toBeLessThan(1e-13);
    }
  });

  test('which fault reaches what was seen is exact for plain readings', () => {
    let looked = 0;
    for (const { seed, got, want } of pairs.filter((p) => p.seed <= detailed)) {
      for (const [i, reading] of got.network.seen.entries()) {
        if (!('outcome' in reading) || reading.outcome === 'o0') continue;
        for (const { fault, probability } of got.findings[i]!.reachedBy) {
          expect(
            Math.abs(probability - want.reachedBy[i]![fault]!),
            `seed ${seed} ${reading.sign} ${fault}`,
          ).toBeLessThan(1e-13);
          looked += 1;
        }
      }
    }
    expect(looked).toBeGreaterThan(400);
  });
});

const exactly = (given: Partial<typeof small>): ExactInference => inferExactly({ ...small, ...given });
const of = (fault: string, given: Partial<typeof small> = {}): number => byFault(exactly(given))[fault]!;

describe('laws', () => {
  test('nothing seen leaves the priors, raised by the links', () => {
    expect(byFault(exactly({ seen: [] }))).toEqual({
      'stale-fuel': 0.3,
      'weak-coil': 0.05,
      'wet-plug': expect.closeTo(1 - 0.9 * (1 - 0.3 * 0.2), 15),
    });
    expect(exactly({ seen: [] }).evidence).toBeCloseTo(1, 15);
  });

  test('a finding that no fault explains multiplies the evidence by its leak and changes nothing else', () => {
    const before = exactly({});
    for (const [outcome, leak] of [
      ['whole', 0.7],
      ['flaked', 0.2],
      ['gone', 0.1],
    ] as const) {
      const after = exactly({ seen: [...small.seen, { sign: 'paint', outcome }] });
      expect(after.evidence / before.evidence).toBeCloseTo(leak, 14);
      expect(apart(after.posterior, before.posterior)).toBeLessThan(1e-15);
    }
  });

  test('the order of findings, faults, signs and causes does not matter', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      if (!inferOrNothing(seed)) continue;
      const network = readNetwork(randomNetwork(seed));
      const turned = {
        ...network,
        faults: network.faults.toReversed(),
        signs: network.signs.map((s) => ({ ...s, causes: s.causes.toReversed() })).toReversed(),
        seen: network.seen.toReversed(),
        links: network.links.toReversed(),
      };
      const [a, b] = [inferExactly(network), inferExactly(turned)];
      expect(apart(a.posterior, b.posterior.toReversed()), `seed ${seed}`).toBeLessThan(1e-13);
    }
  });

  test('an excluded fault has probability 0, a confirmed one 1', () => {
    expect(of('weak-coil', { known: [{ fault: 'weak-coil', present: false }] })).toBe(0);
    expect(of('weak-coil', { known: [{ fault: 'weak-coil', present: true }] })).toBe(1);
  });

  test('confirming a fault splits the evidence by its probability', () => {
    const [all, with_, without] = [[], [true], [false]].map((states) =>
      exactly({ known: states.map((present) => ({ fault: 'wet-plug', present })) }),
    );
    expect(with_!.evidence + without!.evidence).toBeCloseTo(all!.evidence, 16);
    expect(with_!.evidence / all!.evidence).toBeCloseTo(byFault(all!)['wet-plug']!, 14);
  });

  test('confirming an effect speaks for its cause, excluding it against', () => {
    const seen = [] as const;
    expect(of('stale-fuel', { seen, known: [{ fault: 'wet-plug', present: true }] })).toBeGreaterThan(0.3);
    expect(of('stale-fuel', { seen, known: [{ fault: 'wet-plug', present: false }] })).toBeLessThan(0.3);
  });

  test('what one fault explains no longer speaks for another', () => {
    const seen = [{ sign: 'spark', outcome: 'none' }];
    expect(of('weak-coil', { seen })).toBeGreaterThan(0.05);
    expect(of('weak-coil', { seen, known: [{ fault: 'wet-plug', present: true }] })).toBeLessThan(
      of('weak-coil', { seen }),
    );
  });

  test('weights of 1 for one outcome and 0 for the others are that outcome', () => {
    const doubtful = exactly({ seen: [{ sign: 'spark', weights: [0, 0, 1] }, small.seen[1]!] });
    expect(apart(doubtful.posterior, exactly({}).posterior)).toBeLessThan(1e-15);
    expect(doubtful.evidence).toBeCloseTo(exactly({}).evidence, 16);
  });

  test('a reading that fits every outcome alike says nothing', () => {
    const doubtful = exactly({ seen: [{ sign: 'spark', weights: [0.25, 0.25, 0.25] }, small.seen[1]!] });
    const without = exactly({ seen: [small.seen[1]!] });
    expect(apart(doubtful.posterior, without.posterior)).toBeLessThan(1e-15);
    expect(doubtful.evidence).toBeCloseTo(0.25 * without.evidence, 16);
  });

  test('the scale of the weights goes into the evidence and nowhere else', () => {
    const [once, thrice] = [1, 3].map((s) =>
      exactly({ seen: [{ sign: 'spark', weights: [0.1 * s, 0.4 * s, 0.9 * s] }] }),
    );
    expect(apart(once!.posterior, thrice!.posterior)).toBeLessThan(1e-15);
    expect(thrice!.evidence).toBeCloseTo(3 * once!.evidence, 14);
  });

  test('a doubtful reading is the mixture of the plain ones', () => {
    const plain = ['strong', 'weak', 'none'].map((outcome) =>
      exactly({ seen: [{ sign: 'spark', outcome }] }),
    );
    const doubtful = exactly({ seen: [{ sign: 'spark', weights: [0.5, 0.2, 0.7] }] });
    const evidence = 0.5 * plain[0]!.evidence + 0.2 * plain[1]!.evidence + 0.7 * plain[2]!.evidence;
    expect(doubtful.evidence).toBeCloseTo(evidence, 15);
  });

  test('a link of probability 0 is none', () => {
    const links = [...small.links, { from: 'weak-coil', to: 'wet-plug', p: 0 }];
    expect(apart(exactly({ links }).posterior, exactly({}).posterior)).toBeLessThan(1e-15);
  });

  test('a fault that a sure link alone brings about goes with its cause', () => {
    const faults = [...small.faults, { id: 'soot', prior: 0 }];
    const inference = exactly({ faults, links: [...small.links, { from: 'wet-plug', to: 'soot', p: 1 }] });
    expect(byFault(inference).soot).toBeCloseTo(byFault(inference)['wet-plug']!, 15);
  });

  test('a fault without a sign keeps its prior', () => {
    const faults = [...small.faults, { id: 'loose-guard', prior: 0.123 }];
    expect(of('loose-guard', { faults })).toBe(0.123);
  });

  test('a repair that cannot fail clears the later signs and leaves the earlier ones their say', () => {
    const later = {
      faults: [...small.faults, { id: 'weak-coil, after', prior: 0 }],
      links: [...small.links, { from: 'weak-coil', to: 'weak-coil, after', p: 0 }],
      signs: [
        ...small.signs,
        {
          ...small.signs[0]!,
          id: 'spark, after',
          causes: [{ fault: 'weak-coil, after', outcome: [0.1, 0.5, 0.4] }, small.signs[0]!.causes[1]!],
        },
      ],
      seen: [...small.seen, { sign: 'spark, after', outcome: 'strong' }],
    };
    expect(of('weak-coil, after', later)).toBe(0);
    expect(of('weak-coil', later)).toBeGreaterThan(of('weak-coil'));
    expect(of('wet-plug', later)).toBeLessThan(of('wet-plug'));
  });

  test('a repair that failed surely is no repair', () => {
    const after = { id: 'weak-coil, after', prior: 0 };
    const sign = { ...small.signs[0]!, id: 'spark, after' };
    const renamed = { ...sign, causes: [{ ...sign.causes[0]!, fault: after.id }, sign.causes[1]!] };
    const seen = [...small.seen, { sign: 'spark, after', outcome: 'weak' }];
    const failed = exactly({
      faults: [...small.faults, after],
      links: [...small.links, { from: 'weak-coil', to: after.id, p: 1 }],
      signs: [...small.signs, renamed],
      seen,
    });
    const untouched = exactly({ signs: [...small.signs, sign], seen });
    expect(apart(failed.posterior.slice(0, 3), untouched.posterior)).toBeLessThan(1e-15);
  });

  test('evidence below the range of a double keeps its logarithm and its posterior', () => {
    const count = 400;
    const signs = Array.from({ length: count }, (_, i) => ({
      id: `s${i}`,
      outcomes: ['no', 'yes'],
      leak: [0.99, 0.01],
      causes: [
        { fault: `f${i}`, outcome: [0.5, 0.5] },
        { fault: `f${i + 1}`, outcome: [0.5, 0.5] },
      ],
    }));
    const faults = Array.from({ length: count + 1 }, (_, i) => ({ id: `f${i}`, prior: 0.001 }));
    const chain = inferExactly(
      readNetwork({ faults, signs, seen: signs.map((s) => ({ sign: s.id, outcome: 'yes' })) }),
    );
    const { log, last } = alongTheChain(count);
    expect(log).toBeLessThan(-745);
    expect(chain.evidence).toBe(0);
    expect(chain.logEvidence).toBeCloseTo(log, 9);
    expect(chain.posterior[count]).toBeCloseTo(last, 13);
    expect(chain.posterior[0]).toBeCloseTo(last, 13);
  });
});

/** The chain above, state by state from one end. */
function alongTheChain(count: number): { log: number; last: number } {
  let absent = 0.999;
  let present = 0.001;
  let log = 0;
  for (let i = 0; i < count; i += 1) {
    const yes = (faults: number): number => 1 - 0.99 * 0.5 ** faults;
    const a = 0.999 * (absent * yes(0) + present * yes(1));
    const p = 0.001 * (absent * yes(1) + present * yes(2));
    log += Math.log(a + p);
    absent = a / (a + p);
    present = p / (a + p);
  }
  return { log, last: present };
}

describe('as plain data', () => {
  test('an exact answer has a probability for every fault and one for the evidence', () => {
    const inference = exactly({});
    expect(answerOf(inference)).toEqual({
      method: 'exact',
      posterior: byFault(inference),
      evidence: inference.evidence,
      logEvidence: Math.log(inference.evidence),
      width: inference.size.width,
    });
    expect(JSON.parse(JSON.stringify(answerOf(inference)))).toEqual(answerOf(inference));
  });

  test('bounds say that they are bounds, how wide they are and why', () => {
    const answer = answerOf(infer(small, { maxCells: 1, boundCells: 1, branches: 1 }));
    if (answer.method !== 'bounds') throw new Error('one cell cannot be enough');
    expect(answer.note).toContain('the limit is 1;');
    for (const [fault, [low, high]] of Object.entries(answer.interval)) {
      expect(answer.posterior[fault]).toBe((low + high) / 2);
      expect(low).toBeLessThanOrEqual(of(fault));
      expect(high).toBeGreaterThanOrEqual(of(fault));
    }
    expect(answer.evidenceInterval[0]).toBeLessThanOrEqual(exactly({}).evidence);
    expect(answer.evidenceInterval[1]).toBeGreaterThanOrEqual(exactly({}).evidence);
  });
});

describe('refusals', () => {
  test('what cannot be is refused, not divided by', () => {
    const signs = [{ id: 'noise', outcomes: ['no', 'yes'], leak: [1, 0], causes: [] }];
    const network = readNetwork({
      faults: [{ id: 'f', prior: 0.5 }],
      signs,
      seen: [{ sign: 'noise', outcome: 'yes' }],
    });
    expect(() => infer(network)).toThrow(
      expect.objectContaining({ name: 'NetworkError', code: 'impossible' }),
    );
  });

  test('a known fault that cannot be is refused', () => {
    const network = readNetwork({
      faults: [{ id: 'f', prior: 0 }],
      signs: [],
      known: [{ fault: 'f', present: true }],
    });
    expect(() => infer(network)).toThrow(expect.objectContaining({ code: 'impossible' }));
  });

  test('an exact answer beyond the limit is refused with what it would take', () => {
    expect(() => inferExactly(small, { maxCells: 3 })).toThrow(
      expect.objectContaining({ code: 'too-wide', bound: '3 cells' }),
    );
  });
});
