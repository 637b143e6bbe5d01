import { describe, expect, test } from 'vitest';
import {
  type ExactInference,
  explanations,
  inferExactly,
  type Network,
  readNetwork,
} from '../../src/infer/index.js';
import { byFractions } from './by-fractions.js';
import { randomNetwork } from './random-network.js';
import { small } from './small-network.js';

const possible: { seed: number; network: Network; inference: ExactInference }[] = [];
for (let seed = 1; possible.length < 80; seed += 1) {
  const network = readNetwork(randomNetwork(seed, { faults: 10 }));
  if (byFractions(network, false).evidence > 0)
    possible.push({ seed, network, inference: inferExactly(network) });
}

/** All states over some faults, most probable first. */
function ranked(network: Network, among: readonly string[]): { ids: string; probability: number }[] {
  const sums = new Map<string, number>();
  for (const [ids, p] of byFractions(network).joint) {
    const kept = ids
      .split(' ')
      .filter((id) => among.includes(id))
      .join(' ');
    sums.set(kept, (sums.get(kept) ?? 0) + p);
  }
  const all = [...sums].map(([ids, probability]) => ({ ids, probability }));
  return all.filter((s) => s.probability > 0).sort((a, b) => b.probability - a.probability);
}

function expectRanked(
  inference: ExactInference,
  among: readonly string[],
  count: number,
  seed: number,
): void {
  const want = ranked(inference.network, among);
  const got = explanations(inference, { count, among });
  expect(got.complete, `seed ${seed}`).toBe(true);
  expect(got.list.length, `seed ${seed}`).toBe(Math.min(count, want.length));
  const byIds = new Map(want.map((s) => [s.ids, s.probability]));
  for (const [i, { present, probability }] of got.list.entries()) {
    expect(probability, `seed ${seed} place ${i}`).toBeCloseTo(want[i]!.probability, 13);
    expect(byIds.get([...present].sort().join(' ')), `seed ${seed} place ${i}`).toBeCloseTo(probability, 13);
  }
  expect(new Set(got.list.map((e) => e.present.join(' '))).size).toBe(got.list.length);
  expect(got.othersAtMost, `seed ${seed}`).toBeGreaterThanOrEqual((want[count]?.probability ?? 0) - 1e-15);
}

describe('explanations', () => {
  test('the ten most probable ones are those of counting every state', () => {
    for (const { seed, network, inference } of possible)
      expectRanked(
        inference,
        network.faults.map((f) => f.id),
        10,
        seed,
      );
  });

  test('over some of the faults, the others are summed over', () => {
    for (const { seed, network, inference } of possible) {
      expectRanked(
        inference,
        network.faults.filter((_, i) => i % 2 === 0).map((f) => f.id),
        5,
        seed,
      );
    }
  });

  test('asked for more than there are, all are given and sum to 1', () => {
    const { list, complete, othersAtMost } = explanations(inferExactly(small), { count: 100 });
    expect(list.length).toBe(8);
    expect(complete).toBe(true);
    expect(othersAtMost).toBe(0);
    expect(list.reduce((sum, e) => sum + e.probability, 0)).toBeCloseTo(1, 14);
  });

  test('a search that is stopped says so, and what it gives is still right', () => {
    for (const { network, inference } of possible) {
      const want = ranked(
        network,
        network.faults.map((f) => f.id),
      );
      const got = explanations(inference, { count: 4, maxRuns: 12 });
      for (const [i, { probability }] of got.list.entries())
        expect(probability).toBeCloseTo(want[i]!.probability, 13);
      if (!got.complete)
        expect(got.othersAtMost).toBeGreaterThanOrEqual(want[got.list.length]!.probability - 1e-15);
    }
    const stopped = possible.filter((p) => !explanations(p.inference, { count: 4, maxRuns: 12 }).complete);
    expect(stopped.length).toBeGreaterThan(20);
  });

  test('asking does not change what the network says', () => {
    const inference = inferExactly(small);
    const before = [...inference.posterior];
    explanations(inference, { count: 3 });
    expect([...inference.posterior]).toEqual(before);
    expect([...inferExactly(small).posterior]).toEqual(before);
  });

  test('an unknown fault is refused by name', () => {
    const ask = () => explanations(inferExactly(small), { count: 1, among: ['weak-coil', 'no-such'] });
    expect(ask).toThrow(expect.objectContaining({ code: 'unknown', place: 'among[1]', value: 'no-such' }));
  });
});
