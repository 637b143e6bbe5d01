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

/** Bores and strokes over the class: 100 to 290 cc, and hand-held two-strokes of 23 to 79. */
const fourStrokes = [
  [56, 40],
  [60.3, 44.5],
  [65, 62],
  [68, 54],
  [76, 63],
] as const;
const smallToLarge = [
  [46, 46],
  [87, 67],
] as const;
const twoStrokes = [
  [32, 28],
  [34, 30],
  [38, 30],
  [46, 34],
  [50, 40],
] as const;

const likely = (
  architecture: Parameters<typeof band>[0],
  sizes: readonly (readonly [number, number])[],
  least: number,
  most: number,
  release: 'none' | 'fitted' = 'none',
) =>
  sizes.map(([bore, stroke]) => ({
    ...{ what: `${architecture} ${bore} × ${stroke}`, got: band(architecture, bore, stroke, release).likely },
    ...{ least, most },
  }));

// before, the rope lay on a drum of 42 mm for every size, and a side-valve stood up to an eighth over its range
trade('side-valve without release 60 to 90 psi, the likely reading among them', 'common practice', () =>
  likely('side-valve', fourStrokes, 60, 90),
);
trade('overhead valve without release 100 to 140 psi, the likely reading among them', 'common practice', () =>
  likely('overhead-valve', fourStrokes, 100, 140),
);
trade('two-stroke 90 to 150 psi, the likely reading among them', 'common practice', () =>
  likely('two-stroke', twoStrokes, 90, 150),
);
// before, a hand pulled every engine at 2 m/s whatever its flywheel and friction, and the largest stood a psi over
trade('the largest side-valves, 400 cc, too', 'common practice', () =>
  likely(
    'side-valve',
    [
      [87, 67],
      [81, 77],
    ],
    60,
    90,
  ),
);

// before, every release lifted 0.3 mm whatever the engine's size: 23 psi at 100 cc, 57 at 400
trade(
  'side-valve with release 35 to 65 psi, the likely reading among them, 75 to 400 cc',
  'common practice',
  () => likely('side-valve', [...smallToLarge, ...fourStrokes], 35, 65, 'fitted'),
);
trade('overhead valve with release 50 to 90 psi, the likely reading among them', 'common practice', () =>
  likely('overhead-valve', [...smallToLarge, ...fourStrokes], 50, 90, 'fitted'),
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
