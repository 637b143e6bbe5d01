import { expectedCompression } from '../../src/engine/cranking/expected.js';
import { published } from '../support/published.js';

const psi = 6894.757;

/** Ranges of the trade for engines in use: they must meet the bands of sound engines, not agree with them. */
function band(
  architecture: 'side-valve' | 'overhead-valve' | 'two-stroke',
  boreMm: number,
  strokeMm: number,
  release: 'none' | 'fitted' = 'none',
) {
  const engine = { architecture, boreMm, strokeMm, release };
  const { lowPa, highPa, likelyPa } = expectedCompression(engine, { by: 'rope' });
  return { low: lowPa / psi, likely: likelyPa / psi, high: highPa / psi };
}

const trade = published('usual compression readings of the trade');

trade(
  'side-valve without release 60 to 90 psi: the band holds all of it; the likely reading up to an eighth over it',
  'common practice',
  () =>
    (
      [
        [65, 62],
        [60.3, 44.5],
      ] as const
    ).flatMap(([boreMm, strokeMm]) => {
      const { low, likely, high } = band('side-valve', boreMm, strokeMm);
      const engine = `${boreMm} × ${strokeMm}`;
      return [
        { what: `${engine} low`, got: low, most: 65 },
        { what: `${engine} high`, got: high, least: 90 },
        { what: `${engine} likely`, got: likely, least: 60, most: (9 / 8) * 90 },
      ];
    }),
);

trade(
  'overhead valve without release 100 to 140 psi, the likely reading among them',
  'common practice',
  () => [
    { what: '68 × 54', got: band('overhead-valve', 68, 54).likely, least: 100, most: 140 },
    { what: '65 × 62', got: band('overhead-valve', 65, 62).likely, least: 100, most: 140 },
  ],
);

trade('two-stroke 90 to 150 psi, the likely reading among them', 'common practice', () => [
  { what: '46 × 34', got: band('two-stroke', 46, 34).likely, least: 90, most: 150 },
]);

trade(
  'with release 35 to 65 (side-valve) and 50 to 90 psi (overhead valve), which the bands meet',
  'common practice',
  () => {
    const sideValve = band('side-valve', 65, 62, 'fitted');
    const overhead = band('overhead-valve', 68, 54, 'fitted');
    return [
      { what: 'side-valve low', got: sideValve.low, most: 65 },
      { what: 'side-valve high', got: sideValve.high, least: 35 },
      { what: 'overhead low', got: overhead.low, most: 90 },
      { what: 'overhead high', got: overhead.high, least: 50 },
    ];
  },
);

published('public manual excerpts on compression, read second-hand')(
  'about 3 hp read 60 to 75 psi, the lowest never under 25: inside the release’s to the tight engine’s band',
  'seen',
  () => {
    const tight = band('side-valve', 60.3, 44.5);
    const releasing = band('side-valve', 60.3, 44.5, 'fitted');
    return [
      { what: 'tight, low', got: tight.low, most: 75 },
      { what: 'tight, high', got: tight.high, least: 60 },
      { what: 'with release, high', got: releasing.high, least: 25 },
    ];
  },
);
