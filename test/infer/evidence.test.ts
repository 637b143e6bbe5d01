import { describe, expect, test } from 'vitest';
import { evidenceWeights, inferExactly, type Network, readNetwork } from '../../src/infer/index.js';
import { byFractions } from './by-fractions.js';
import { randomNetwork } from './random-network.js';
import { small } from './small-network.js';

const logit = (p: number): number => Math.log(p) - Math.log(1 - p);
const without = (network: Network, finding: number): Network => ({
  ...network,
  seen: network.seen.toSpliced(finding, 1),
});

describe('weight of evidence', () => {
  test('is the change of the log odds from leaving the finding out, counted over every state', () => {
    let compared = 0;
    for (let seed = 1; seed <= 60; seed += 1) {
      const network = readNetwork(randomNetwork(seed, { faults: 9 }));
      const all = byFractions(network, false);
      if (all.evidence === 0) continue;
      for (const [finding, { logOddsGain }] of evidenceWeights(inferExactly(network)).entries()) {
        const less = byFractions(without(network, finding), false);
        for (const [f, { id }] of network.faults.entries()) {
          const want = logit(all.posterior[id]!) - logit(less.posterior[id]!);
          if (!Number.isFinite(want) || all.posterior[id]! > 1 - 1e-6) continue;
          expect(Math.abs(logOddsGain[f]! - want), `seed ${seed} ${finding} ${id}`).toBeLessThan(1e-8);
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(800);
  });

  test('of a single finding on a lone fault is the log of its likelihood ratio', () => {
    const network = { ...small, links: [], seen: [{ sign: 'smell', outcome: 'flat' }] };
    const present = 1 - 0.2 * 0.9;
    const [weight] = evidenceWeights(inferExactly(network));
    expect(weight!.logOddsGain[0]).toBeCloseTo(Math.log(present / 0.1), 13);
    expect(weight!.logOddsGain[1]).toBe(0);
  });

  test('of a finding that only one fault can explain is infinite for that fault', () => {
    const signs = [
      {
        id: 'hole',
        outcomes: ['no', 'yes'],
        leak: [1, 0],
        causes: [{ fault: 'weak-coil', outcome: [0.5, 0.5] }],
      },
    ];
    const [weight] = evidenceWeights(
      inferExactly({ ...small, signs, seen: [{ sign: 'hole', outcome: 'yes' }] }),
    );
    expect([...weight!.logOddsGain]).toEqual([0, Number.POSITIVE_INFINITY, 0]);
  });

  test('on a fault that is known is nought', () => {
    const known = [{ fault: 'wet-plug', present: true }];
    for (const { logOddsGain } of evidenceWeights(inferExactly({ ...small, known })))
      expect(logOddsGain[2]).toBe(0);
  });
});
