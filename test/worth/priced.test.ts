import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { machineNetwork } from '../../src/diagnose/index.js';
import { infer } from '../../src/infer/index.js';
import { worthIt } from '../../src/worth/index.js';
import { type PricedCase, pricedCases, ratePerHour } from './priced-cases.js';

const catalog = builtInCatalog();

function estimateFor({ facts, repairs }: PricedCase) {
  const machine = machineNetwork(catalog, facts, [], { confirmed: repairs });
  const standing = new Map(machine.faults.map((f) => [machine.now(f.id), f.id]));
  const inference = infer(machine.network);
  const asked = { catalog, architecture: facts.architecture, facts, inference, standing };
  return worthIt({ ...asked, ratePerHour, seed: 1, draws: 2000 });
}

const compared = pricedCases.map((priced) => {
  const { minutes, parts, cost } = estimateFor(priced);
  const quote = (priced.minutes / 60) * ratePerHour + priced.parts;
  return { ...priced, quote, cost: cost!, estimated: { minutes: minutes!.p50, parts: parts!.p50 } };
});

describe('an estimate beside what a mechanic would quote (common practice, from memory)', () => {
  test.each(compared)('$name', ({ held, quote, cost, estimated, minutes, parts }) => {
    const both = `$${Math.round(cost.p50)} (${Math.round(estimated.minutes)} min, $${Math.round(estimated.parts)}) for $${Math.round(quote)} (${minutes} min, $${parts})`;
    if (process.env.WRISTPIN_PRICED && !held)
      console.log(both, `[${Math.round(cost.p05)}, ${Math.round(cost.p95)}]`);
    expect(Math.abs(cost.p50 / quote - 1), both).toBeLessThan(0.35);
  });

  test('has the quote inside the shown range in at least four of five', () => {
    const inside = compared.filter(({ quote, cost }) => cost.p05 <= quote && quote <= cost.p95);
    expect(inside.length / compared.length).toBeGreaterThanOrEqual(0.8);
  });
});
