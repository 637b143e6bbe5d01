import { describe, expect, test } from 'vitest';
import {
  chanceTogether,
  evidenceWeights,
  inferExactly,
  type Known,
  type Network,
  outlook,
  readNetwork,
} from '../../src/infer/index.js';
import { byFractions } from './by-fractions.js';
import { randomNetwork, seeded } from './random-network.js';
import { small } from './small-network.js';

/** Summed over every state that is as said. */
function counted(network: Network, states: readonly Known[]): number {
  let sum = 0;
  for (const [present, p] of byFractions(network).joint) {
    const there = new Set(present.split(' '));
    if (states.every((s) => there.has(s.fault) === s.present)) sum += p;
  }
  return sum;
}

describe('the chance that several faults stand as said', () => {
  test('is the sum over every such state, whatever was asked before', () => {
    let compared = 0;
    for (let seed = 1; seed <= 50; seed += 1) {
      const network = readNetwork(randomNetwork(seed, { faults: 8 }));
      if (byFractions(network, false).evidence === 0) continue;
      const inference = inferExactly(network);
      const next = seeded(seed);
      const unseen = network.signs.filter((s) => !network.seen.some((r) => r.sign === s.id));
      for (let round = 0; round < 4; round += 1) {
        const states = network.faults
          .filter(() => next() < 0.4)
          .map(({ id }) => ({ fault: id, present: next() < 0.5 }));
        const got = chanceTogether(inference, states);
        expect(Math.abs(got - counted(network, states)), `seed ${seed}, ${round}`).toBeLessThan(1e-12);
        compared += 1;
        // each leaves the working memory in another state
        if (round === 0) evidenceWeights(inference);
        else for (const sign of unseen) outlook(inference, sign.id);
      }
    }
    expect(compared).toBeGreaterThan(120);
  });

  test('of none is 1, of a known one against what is known 0', () => {
    const inference = inferExactly({ ...small, known: [{ fault: 'wet-plug', present: true }] });
    expect(chanceTogether(inference, [])).toBe(1);
    expect(chanceTogether(inference, [{ fault: 'wet-plug', present: true }])).toBe(1);
    expect(chanceTogether(inference, [{ fault: 'wet-plug', present: false }])).toBe(0);
  });

  test('of a fault that is not there is refused', () => {
    const ask = () => chanceTogether(inferExactly(small), [{ fault: 'gremlin', present: true }]);
    expect(ask).toThrow(expect.objectContaining({ code: 'unknown', place: 'states[0]' }));
  });
});
