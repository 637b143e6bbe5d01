import { expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { learnedFromCounts } from '../../src/diagnose/index.js';

/** Gelman, Carlin, Stern, Rubin: "Bayesian Data Analysis", estimating a probability from binomial data, from memory. */
test('Bayesian Data Analysis: 437 girls in 980 births of placenta previa give 0.446 ± 0.016, interval 0.415 to 0.477', () => {
  const catalog = builtInCatalog();
  const half = { ...catalog.faults.find((f) => f.id === 'coil-dead')!, presentPer100: 50 };
  // a uniform prior is Beta(1, 1): a catalog that says one half with the weight of two machines
  const counts = [{ architecture: 'side-valve' as const, fault: 'coil-dead', present: 437, absent: 543 }];
  const [answer] = learnedFromCounts({ ...catalog, faults: [half] }, counts, 2).frequencies;
  expect(answer!.learned).toBeCloseTo(0.446, 3);
  expect(answer!.halfWidth / 1.96).toBeCloseTo(0.016, 3);
  expect(answer!.learned - answer!.halfWidth).toBeCloseTo(0.415, 3);
  expect(answer!.learned + answer!.halfWidth).toBeCloseTo(0.477, 3);
});
