import { at, blurred, box, clipped, color, group, n, number, round, shape, stroke, times } from './ink.mjs';
import { mat, picture } from './scene.mjs';
import { blotches, specks } from './things.mjs';

const outline =
  'M-190-206H190Q222-206 222-174V174Q222 206 190 206H-190Q-222 206-222 174V-174Q-222-206-190-206Z';
const bore = 'M-178 0A142 142 0 1 0 106 0A142 142 0 1 0-178 0Z';
const bolts = [
  [-186, -170],
  [10, -178],
  [186, -170],
  [186, 170],
  [10, 178],
  [-186, 170],
];
const circle = ([x, y], r) => `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0${-2 * r} 0Z`;
const gallery = 'M166-58Q190-58 190-36V36Q190 58 166 58Q142 58 142 36V-36Q142-58 166-58Z';
const oilReturn = [166, 106];

/** Old and new laid side by side: the one that came lacks the oil return beside the push rods. */
export function headGaskets() {
  return picture(
    mat(79, '#cdc5b5'),
    at(316, 360, gasket({ old: true, seed: 801, returns: true }), { turn: -3 }),
    at(860, 366, gasket({ old: false, seed: 802, returns: false }), { turn: 2 }),
    pointer(),
    rule(),
  );
}

function gasket({ old, seed, returns }) {
  const openings = [
    bore,
    gallery,
    ...bolts.map((b) => circle(b, 21)),
    ...(returns ? [circle(oilReturn, 15)] : []),
  ].join('');
  return group(
    `<path d="${outline}${openings}" transform="translate(8 12)" fill="#1a1409" fill-rule="evenodd" opacity="0.45" filter="url(#blur-4)"/>`,
    shape(outline + openings, { fill: old ? '#5b554b' : '#86898b', more: 'fill-rule="evenodd"' }),
    `<clipPath id="sheet-${seed}"><path d="${outline}${openings}" clip-rule="evenodd"/></clipPath>`,
    `<g clip-path="url(#sheet-${seed})">${group(old ? worn(seed) : fresh(seed))}</g>`,
    ring(old),
    bolts.map(([x, y]) =>
      round(x, y, 25, {
        fill: 'none',
        width: 0,
        more: `stroke="${old ? '#8a8173' : '#b9bcbd'}" stroke-width="5" opacity="0.7"`,
      }),
    ),
    returns &&
      round(...oilReturn, 19, {
        fill: 'none',
        width: 0,
        more: 'stroke="#8a8173" stroke-width="4" opacity="0.7"',
      }),
  );
}

const fresh = (seed) => [
  specks(seed, -222, -206, 444, 412, 420, ['#b7babb', '#5c5f61', '#a4a7a8'], [0.8, 2.2], 0.7),
  stroke('M-206-180V170M-200-192H180', '#cfd2d3', 5, 0.6),
];

const worn = (seed) => [
  blotches(seed, -222, -206, 444, 412, 26, '#2a241d', [24, 58], 0.55),
  blotches(seed + 4, -200, -190, 400, 380, 12, '#8f7d62', [12, 40], 0.5),
  specks(seed + 5, -222, -206, 444, 412, 260, ['#221d17', '#a3967f', '#c2b8a5'], [1, 3.4], 0.7),
  blurred(4, stroke('M88 52Q120 78 150 60M92 70Q124 96 150 80', '#0e0b09', 22, 0.85)),
];

function ring(old) {
  const d = 'M-178 0A142 142 0 1 0 106 0A142 142 0 1 0-178 0Z';
  return group(
    stroke(d, color.ink, 22),
    stroke(d, old ? '#7d705e' : '#c9ccce', 18),
    stroke(d, old ? '#a3967f' : '#f2f3f3', 5, 0.8),
    old && clipped('ring-burn', 'M20 20H130V170H20Z', [stroke(d, '#1a1512', 18, 0.85)]),
    old && stroke('M84 84l16 12M70 104l14 16', '#0b0907', 4),
  );
}

/** A pencil laid so that its point shows the place where the hole should be. */
function pointer() {
  return at(
    1028,
    478,
    group(
      blurred(4, stroke('M14 20L120 128', '#1a1409', 20, 0.4)),
      shape('M0 0L30 16L16 30Z', { fill: '#e6d3a8', width: 2.4 }),
      shape('M0 0L10 5L5 10Z', { fill: color.ink, width: 1 }),
      shape('M30 16L150 136L136 150L16 30Z', { fill: '#c8973a', width: 2.4 }),
      stroke('M24 24L142 142', '#e9c47a', 4, 0.8),
      shape('M150 136L162 148L148 162L136 150Z', { fill: '#b9bcbd', width: 2.2 }),
      round(-10, -10, 27, {
        fill: 'none',
        width: 0,
        more: `stroke="${color.accent}" stroke-width="4" stroke-dasharray="9 8"`,
      }),
    ),
  );
}

function rule() {
  return at(
    70,
    700,
    group(
      `<rect x="6" y="10" width="1040" height="92" rx="6" fill="#1a1409" opacity="0.4" filter="url(#blur-8)"/>`,
      box(0, 0, 1040, 92, { r: 6, fill: 'url(#steel-v)' }),
      stroke('M6 6H1034', '#fff', 3, 0.7),
      times(221, (i) =>
        stroke(
          `M${n(16 + i * 4.6)} 3v${i % 10 === 0 ? 34 : i % 5 === 0 ? 25 : 15}`,
          color.ink,
          i % 10 === 0 ? 2.4 : 1.1,
        ),
      ),
      times(22, (i) => number(i, 16 + i * 46 + (i === 0 ? 8 : 0), 56, 19, color.ink, 2.4)),
      specks(803, 10, 8, 1020, 80, 60, ['#8f553f', '#6c6f70'], [1, 2.6], 0.5),
    ),
    { turn: -1.2 },
  );
}
