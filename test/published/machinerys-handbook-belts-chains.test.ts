import { openBelt } from '../../src/driven/belt.js';
import { chainPitches, mostElongation, rollerChains } from '../../src/driven/chain.js';
import { near, published, same } from '../support/published.js';

const handbook = published('Machinery’s Handbook, belts and chains');

/** The handbook's own series: L = 2C + 1.57(D + d) + (D − d)²/4C, good to its printed figures. */
handbook('open belt by the usual series', 'from memory, recomputed', () =>
  (
    [
      [10, 6, 20],
      [24, 12, 40],
      [7.4, 11, 42.4],
      [5, 5, 15],
    ] as const
  ).map(([one, other, centers]) => {
    const series = 2 * centers + (Math.PI / 2) * (one + other) + (one - other) ** 2 / (4 * centers);
    const { lengthMm } = openBelt({ oneMm: one * 25.4, otherMm: other * 25.4, centersMm: centers * 25.4 });
    return near(`${one} and ${other} in at ${centers} in`, lengthMm / 25.4, series, 0.01);
  }),
);

published('ASME B29.1, roller chains')('pitch by number, in', 'from memory', () =>
  (
    [
      [25, 0.25],
      [35, 0.375],
      [40, 0.5],
      [41, 0.5],
      [50, 0.625],
      [60, 0.75],
      [80, 1],
    ] as const
  ).map(([number, pitch]) => same(`No. ${number}`, rollerChains[number], pitch)),
);

handbook('chain length in pitches', 'from memory, recomputed', () => [
  near('equal sprockets of 20 at 30 pitches', chainPitches(20, 20, 30), 80, 1e-9),
  near('17 and 51 at 40 pitches', chainPitches(17, 51, 40), 114.73, 5e-3),
]);

published('chain makers’ renewal rule')('elongation at which a chain is done', 'common practice', () => [
  near('ordinary sprockets', mostElongation(40), 0.03, 1e-12),
  near('100 teeth', mostElongation(100), 0.02, 1e-12),
]);
