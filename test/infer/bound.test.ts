import { describe, expect, test } from 'vitest';
import {
  type BoundedInference,
  infer,
  inferExactly,
  type Limits,
  type Network,
  readNetwork,
} from '../../src/infer/index.js';
import { campaign } from '../support/campaign.js';
import { byFractions } from './by-fractions.js';
import { randomNetwork, seeded } from './random-network.js';

const dense = { faults: 12, signs: 10, causes: 0.5, links: 0.2 } as const;
/** so few cells that all of these networks are too wide */
const cells = 40;
const networks: { seed: number; network: Network }[] = [];
for (let seed = 1001; networks.length < campaign(20, 60); seed += 1) {
  const network = readNetwork(randomNetwork(seed, dense));
  if (byFractions(network, false).evidence === 0) continue;
  if (inferExactly(network).size.cells > cells) networks.push({ seed, network });
}

function bounded(network: Network, limits: Partial<Limits>): BoundedInference {
  const inference = infer(network, { maxCells: cells, boundCells: cells, ...limits });
  if (inference.kind !== 'bounded') throw new Error('the limits leave room for an exact answer');
  return inference;
}

const widest = (b: BoundedInference): number => Math.max(...b.high.map((h, f) => h - b.low[f]!));

function expectHolds(b: BoundedInference, network: Network, seed: number): void {
  const want = byFractions(network, false);
  for (const [f, { id }] of network.faults.entries()) {
    expect(b.low[f], `seed ${seed} ${id}`).toBeLessThanOrEqual(want.posterior[id]!);
    expect(b.high[f], `seed ${seed} ${id}`).toBeGreaterThanOrEqual(want.posterior[id]!);
    expect(b.posterior[f]).toBe((b.low[f]! + b.high[f]!) / 2);
  }
  expect(b.evidenceLow, `seed ${seed}`).toBeLessThanOrEqual(want.evidence);
  expect(b.evidenceHigh, `seed ${seed}`).toBeGreaterThanOrEqual(want.evidence);
}

describe('bounds where the tables would grow too large', () => {
  test('hold for every fault and for the evidence, however few branches are taken', () => {
    for (const { seed, network } of networks) {
      for (const branches of [1, 4, 16]) expectHolds(bounded(network, { branches }), network, seed);
    }
  });

  test('close in as branches are added, and meet in the end', () => {
    for (const { seed, network } of networks.slice(0, 30)) {
      const few = widest(bounded(network, { branches: 2 }));
      const all = bounded(network, { branches: 5000 });
      expectHolds(all, network, seed);
      expect(widest(all), `seed ${seed}`).toBeLessThanOrEqual(few);
      expect(widest(all), `seed ${seed}`).toBeLessThan(1e-9);
    }
  });

  test('hold where cut causes pile up beyond the range of a double', () => {
    const next = seeded(5);
    const faults = Array.from({ length: 6 }, (_, i) => ({ id: `f${i}`, prior: 0.02 + 0.1 * next() }));
    const signs = Array.from({ length: 320 }, (_, s) => {
      const causes = faults.map((f) => ({ fault: f.id, outcome: [0.9, 0.1] }));
      return { id: `s${s}`, outcomes: ['no', 'yes'], leak: [0.95, 0.05], causes };
    });
    const seen = signs.map((s, i) => ({ sign: s.id, outcome: i % 2 === 0 ? 'yes' : 'no' }));
    const b = bounded(readNetwork({ faults, signs, seen }), {
      branches: 300,
      boundCells: 9_000,
      maxCells: 9_000,
    });
    const want = byNumberPresent(
      faults.map((f) => f.prior),
      160,
      160,
    );
    expect(b.logEvidenceLow).toBeLessThanOrEqual(want.log);
    expect(b.logEvidenceHigh).toBeGreaterThanOrEqual(want.log);
    for (const [f, p] of want.posterior.entries()) {
      expect(b.low[f]).toBeLessThanOrEqual(p);
      expect(b.high[f]).toBeGreaterThanOrEqual(p);
    }
    expect(widest(b)).toBeLessThan(0.01);
  });

  test('are told apart from an exact answer, with what that would have taken', () => {
    const { network } = networks[0]!;
    const b = bounded(network, {});
    expect(b.wanted.cells).toBeGreaterThan(b.wanted.limit);
    expect(b.size.cells).toBeLessThanOrEqual(b.wanted.cells);
    expect(infer(network).kind).toBe('exact');
    expect(inferExactly(network, { maxCells: b.wanted.cells }).size.cells).toBe(b.wanted.cells);
  });

  test('what cannot be is refused here too', () => {
    const network = readNetwork(randomNetwork(1, dense));
    const signs = [...network.signs, { id: 'never', outcomes: ['no', 'yes'], leak: [1, 0], causes: [] }];
    const seen = [...network.seen, { sign: 'never', outcome: 'yes' }];
    expect(() => infer({ ...network, signs, seen }, { maxCells: 1, boundCells: 1 })).toThrow(
      expect.objectContaining({ code: 'impossible' }),
    );
  });
});

/** Signs that all faults show alike: what is seen depends on the number of faults present only. */
function byNumberPresent(
  priors: readonly number[],
  yes: number,
  no: number,
): { log: number; posterior: number[] } {
  const states = Array.from({ length: 2 ** priors.length }, (_, code) =>
    priors.map((_, f) => (code >> f) % 2 === 1),
  );
  const logs = states.map((state) => {
    const clear = 0.95 * 0.9 ** state.filter((on) => on).length;
    const prior = state.reduce((sum, on, f) => sum + Math.log(on ? priors[f]! : 1 - priors[f]!), 0);
    return prior + yes * Math.log(1 - clear) + no * Math.log(clear);
  });
  const top = Math.max(...logs);
  const weights = logs.map((l) => Math.exp(l - top));
  const total = weights.reduce((a, b) => a + b, 0);
  const of = (f: number): number => weights.reduce((sum, w, s) => sum + (states[s]![f] ? w : 0), 0) / total;
  return { log: top + Math.log(total), posterior: priors.map((_, f) => of(f)) };
}
