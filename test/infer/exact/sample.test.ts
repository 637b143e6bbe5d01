import { expect, test } from 'vitest';
import { drawStates } from '../../../src/infer/exact/sample.js';
import { type ExactInference, inferExactly, type Network, readNetwork } from '../../../src/infer/index.js';
import { byFractions } from '../by-fractions.js';
import { randomNetwork, seeded } from '../random-network.js';

const draws = 4000;
const possible: { seed: number; network: Network; inference: ExactInference }[] = [];
for (let seed = 1; possible.length < 40; seed += 1) {
  const network = readNetwork(randomNetwork(seed, { faults: 8, signs: 6 }));
  if (byFractions(network, false).evidence > 0)
    possible.push({ seed, network, inference: inferExactly(network) });
}

const stateOf = (network: Network, row: Uint8Array): string =>
  network.faults
    .flatMap((f, i) => (row[i] === 1 ? [f.id] : []))
    .sort()
    .join(' ');

/** Pearson’s statistic less its degrees of freedom, in its standard deviations; states expected under 5 times are one. */
function misfit(network: Network, rows: readonly Uint8Array[]): number {
  const counts = new Map<string, number>();
  for (const row of rows) counts.set(stateOf(network, row), (counts.get(stateOf(network, row)) ?? 0) + 1);
  const joint = [...byFractions(network).joint];
  const cells = joint.map(([ids, p]) => ({
    seen: counts.get(ids.split(' ').sort().join(' ')) ?? 0,
    wanted: p * rows.length,
  }));
  const common = cells.filter((c) => c.wanted >= 5);
  const rare = cells.filter((c) => c.wanted < 5);
  const pooled = { seen: sum(rare.map((c) => c.seen)), wanted: sum(rare.map((c) => c.wanted)) };
  const all = pooled.wanted > 0.5 ? [...common, pooled] : common;
  expect(sum(cells.map((c) => c.seen))).toBe(rows.length);
  const statistic = sum(all.map((c) => (c.seen - c.wanted) ** 2 / c.wanted));
  const degrees = Math.max(1, all.length - 1);
  return (statistic - degrees) / Math.sqrt(2 * degrees);
}

const sum = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0);

test('joint states come as often as the exact posterior says', () => {
  let worst = 0;
  for (const { seed, network, inference } of possible) {
    const rows = drawStates(inference.reasoner, draws, seeded(1000 + seed));
    const off = misfit(network, rows);
    expect(off, `seed ${seed}`).toBeLessThan(6);
    worst = Math.max(worst, off);
  }
  // forty of them: one or two standard deviations must turn up, or the measure is blind
  expect(worst).toBeGreaterThan(0.5);
});

test('a fault that was confirmed is in every draw, one that was excluded in none', () => {
  let checked = 0;
  for (const { network, inference } of possible) {
    const rows = drawStates(inference.reasoner, 50, seeded(7));
    for (const { fault, present } of network.known) {
      const place = inference.faults.indexOf(fault);
      for (const row of rows) expect(row[place]).toBe(present ? 1 : 0);
      checked += 1;
    }
  }
  expect(checked).toBeGreaterThan(5);
});

test('what was asked of the network in between changes no draw', () => {
  const { network } = possible.find((p) => p.inference.reasoner.circuits.length > 0)!;
  const rows = (disturb: boolean) => {
    const { reasoner } = inferExactly(network);
    if (disturb) for (const circuit of reasoner.circuits) circuit.memory.cell.fill(0.5, 1);
    return drawStates(reasoner, 20, seeded(3));
  };
  expect(rows(true)).toEqual(rows(false));
});
