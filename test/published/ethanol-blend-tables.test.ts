import { ethanolBlend, stoichiometricAir, waterToleranceE10 } from '../../src/engine/fuel.js';
import { near, published } from '../support/published.js';

// 9.002 with today's atomic masses
published('a public page on ethanol as fuel')('air for ethanol: 9.0078', 'seen', () => [
  near('air per fuel', stoichiometricAir(3, 0.5), 9.0078, 0.01),
]);

// a forum, of low grade: it blends by rules of thumb
published('a public table of air-fuel ratios')('ethanol blends on a base of 14.7', 'seen', () =>
  (
    [
      [0.1, 14.13, 0.04],
      [0.15, 13.8, 0.04],
      [0.85, 9.7, 0.15],
      [1, 9, 0.05],
    ] as const
  ).map(([part, ratio, within]) =>
    near(`part ${part}`, ethanolBlend(part, 14.7).airFuelRatio, ratio, within),
  ),
);

published('US EPA on water in oxygenated gasoline')(
  'E10 at 60 °F: 3.8 teaspoons a US gallon',
  'from memory',
  () => [near('teaspoons', waterToleranceE10(15.56).part * 768, 3.8, 0.1)],
);
