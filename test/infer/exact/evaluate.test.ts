import { describe, expect, test } from 'vitest';
import { runCluster } from '../../../src/infer/exact/cluster-circuit.js';
import { logOf, plainOf, ratio, runBack, type Scaled, times } from '../../../src/infer/exact/evaluate.js';
import { modelOf } from '../../../src/infer/exact/model.js';
import { build, layOut } from '../../../src/infer/exact/reasoner.js';
import { weightsOf } from '../../../src/infer/exact/weights.js';
import { readNetwork } from '../../../src/infer/index.js';
import { randomNetwork } from '../random-network.js';

describe('numbers beyond the range of a double', () => {
  const tiny = (n: number): Scaled =>
    Array.from({ length: n }, () => ({ m: 1e-200, e: 0 })).reduce(times, { m: 1, e: 0 });

  test('keep their logarithm', () => {
    expect(logOf(tiny(10))).toBeCloseTo(-2000 * Math.LN10, 8);
    expect(plainOf(tiny(10))).toBe(0);
    expect(plainOf(tiny(1))).toBeCloseTo(1e-200, 210);
  });

  test('keep their ratio', () => {
    expect(ratio(times(tiny(10), { m: 0.25, e: 0 }), tiny(10))).toBeCloseTo(0.25, 14);
  });

  test('nought stays nought', () => {
    expect(times(tiny(3), { m: 0, e: 0 })).toEqual({ m: 0, e: 0 });
  });
});

describe('slopes', () => {
  test('of the two weights of a fault stand in the ratio in which the answer rises with them', () => {
    let compared = 0;
    for (let seed = 1; seed <= 40; seed += 1) {
      const model = modelOf(readNetwork(randomNetwork(seed, { faults: 8 })));
      const weights = weightsOf(model);
      for (const circuit of build(layOut(model)).circuits) {
        for (const [place, fault] of circuit.cluster.faults.entries()) {
          const now = runCluster(circuit, weights);
          if (now.m === 0) continue;
          runBack(circuit.memory);
          const at = circuit.inputs.state[place]!;
          const slopes = [circuit.memory.slope[at]!, circuit.memory.slope[at + 1]!] as const;
          const absent = weights.absent.with(fault, weights.absent[fault]! + 1);
          const present = weights.present.with(fault, weights.present[fault]! + 1);
          const [a, p] = [{ absent }, { present }].map(
            (w) => ratio(runCluster(circuit, { ...weights, ...w }), now) - 1,
          );
          expect(p! / (a! + p!), `seed ${seed} fault ${fault}`).toBeCloseTo(
            slopes[1] / (slopes[0] + slopes[1]),
            9,
          );
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(80);
  });
});
