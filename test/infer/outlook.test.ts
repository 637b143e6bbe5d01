import { describe, expect, test } from 'vitest';
import { entropyBits, informationBits } from '../../bench/information.js';
import {
  inferExactly,
  leastProbability,
  type Network,
  outlook,
  prospects,
  type Reading,
  readNetwork,
} from '../../src/infer/index.js';
import { byFractions } from './by-fractions.js';
import { randomNetwork } from './random-network.js';
import { small } from './small-network.js';

const networks: { seed: number; network: Network; evidence: number }[] = [];
for (let seed = 1; networks.length < 60; seed += 1) {
  const network = readNetwork(randomNetwork(seed, { faults: 8, unseen: 0.5 }));
  const { evidence } = byFractions(network, false);
  if (evidence > 0) networks.push({ seed, network, evidence });
}

const unseen = (network: Network) => network.signs.filter((s) => !network.seen.some((r) => r.sign === s.id));
const seeing = (network: Network, readings: readonly Reading[]): Network => ({
  ...network,
  seen: [...network.seen, ...readings],
});

describe('outlook', () => {
  test('each outcome has the probability and the posterior of having seen it, counted over every state', () => {
    let compared = 0;
    for (const { seed, network, evidence } of networks) {
      const inference = inferExactly(network);
      for (const sign of unseen(network)) {
        for (const [k, { probability, posterior }] of outlook(inference, sign.id).entries()) {
          const after = byFractions(seeing(network, [{ sign: sign.id, outcome: sign.outcomes[k]! }]), false);
          expect(Math.abs(probability - after.evidence / evidence), `seed ${seed} ${sign.id}`).toBeLessThan(
            1e-14,
          );
          if (!posterior) continue;
          for (const [f, { id }] of network.faults.entries()) {
            expect(
              Math.abs(posterior[f]! - after.posterior[id]!),
              `seed ${seed} ${sign.id} ${id}`,
            ).toBeLessThan(2e-15 / probability + 1e-13);
          }
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(300);
  });

  test('probabilities sum to 1 and posteriors average to what is believed now', () => {
    for (const { network } of networks) {
      const inference = inferExactly(network);
      for (const sign of unseen(network)) {
        const all = outlook(inference, sign.id);
        expect(all.reduce((sum, p) => sum + p.probability, 0)).toBeCloseTo(1, 13);
        for (const [f, now] of inference.posterior.entries()) {
          const mean = all.reduce((sum, p) => sum + p.probability * (p.posterior?.[f] ?? now), 0);
          expect(mean).toBeCloseTo(now, 6);
        }
      }
    }
  });

  test('several readings at once, doubtful ones among them, are as good as having seen them', () => {
    let compared = 0;
    for (const { seed, network, evidence } of networks) {
      const [a, b] = unseen(network);
      if (!a || !b) continue;
      const readings = [
        { sign: a.id, outcome: a.outcomes[1]! },
        { sign: b.id, weights: b.outcomes.map((_, k) => (k === 0 ? 0.25 : 0.75)) },
      ];
      const after = byFractions(seeing(network, readings), false);
      const [got] = prospects(inferExactly(network), [readings]);
      expect(Math.abs(got!.probability - after.evidence / evidence), `seed ${seed}`).toBeLessThan(1e-14);
      for (const [f, { id }] of network.faults.entries()) {
        if (got!.posterior)
          expect(Math.abs(got!.posterior[f]! - after.posterior[id]!), `seed ${seed}`).toBeLessThan(1e-8);
      }
      compared += 1;
    }
    expect(compared).toBeGreaterThan(30);
  });

  test('what can hardly be has no posterior', () => {
    const signs = [{ id: 'crack', outcomes: ['no', 'yes'], leak: [1 - 1e-9, 1e-9], causes: [] }];
    const [no, yes] = outlook(inferExactly({ ...small, signs: [...small.signs, ...signs] }), 'crack');
    expect(no!.posterior).toBeDefined();
    expect(yes!.probability).toBeLessThan(leastProbability);
    expect(yes!.posterior).toBeUndefined();
  });

  test('a sign that is seen already is refused', () => {
    expect(() => outlook(inferExactly(small), 'spark')).toThrow(
      expect.objectContaining({ code: 'seen-twice' }),
    );
    const twice = [
      { sign: 'paint', outcome: 'gone' },
      { sign: 'paint', outcome: 'gone' },
    ];
    expect(() => prospects(inferExactly(small), [twice])).toThrow(
      expect.objectContaining({ code: 'seen-twice', place: 'outcomes[0][1]' }),
    );
  });

  test('an unknown sign or outcome is refused by name', () => {
    expect(() => outlook(inferExactly(small), 'rust')).toThrow(
      expect.objectContaining({ code: 'unknown', value: 'rust' }),
    );
    expect(() => prospects(inferExactly(small), [[{ sign: 'paint', outcome: 'blue' }]])).toThrow(
      expect.objectContaining({ code: 'unknown', place: 'outcomes[0][0].outcome' }),
    );
  });
});

describe('information', () => {
  test('about each fault is the fall of its entropy, counted over every state', () => {
    for (const { seed, network, evidence } of networks.slice(0, 25)) {
      const inference = inferExactly(network);
      for (const sign of unseen(network)) {
        const got = informationBits(inference, outlook(inference, sign.id));
        const outcomes = sign.outcomes.map((outcome) =>
          byFractions(seeing(network, [{ sign: sign.id, outcome }]), false),
        );
        for (const [f, { id }] of network.faults.entries()) {
          const after = outcomes.reduce(
            (h, o) => (o.evidence === 0 ? h : h + (o.evidence / evidence) * entropyBits(o.posterior[id]!)),
            0,
          );
          expect(got[f], `seed ${seed} ${sign.id} ${id}`).toBeCloseTo(
            entropyBits(inference.posterior[f]!) - after,
            5,
          );
        }
      }
    }
  });

  test('of a sign without causes is nought', () => {
    const inference = inferExactly(small);
    for (const bits of informationBits(inference, outlook(inference, 'paint')))
      expect(bits).toBeCloseTo(0, 14);
  });
});
