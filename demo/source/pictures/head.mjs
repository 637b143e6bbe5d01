import {
  at,
  blurred,
  box,
  clipped,
  color,
  group,
  n,
  number,
  round,
  scatter,
  shape,
  stroke,
  times,
} from './ink.mjs';
import { mat, picture, shadowOf } from './scene.mjs';
import { blotches, bolt, coil, screw, specks } from './things.mjs';

/** Hole places of the head on paper, in the order in which the joint names them: seen from the wrench. */
export const headHoles = [
  [-264, -172],
  [0, -190],
  [264, -172],
  [264, 172],
  [0, 190],
  [-264, 172],
];
const [cx, cy] = [600, 450];

const casting =
  'M-330-226H330Q356-226 356-200V200Q356 226 330 226H-330Q-356 226-356 200V-200Q-356-226-330-226Z';

const finEdges = () =>
  group(
    times(9, (i) => box(-392, -212 + i * 48, 44, 26, { r: 5, fill: 'url(#metal-h)', width: 2 })),
    times(9, (i) => box(348, -212 + i * 48, 44, 26, { r: 5, fill: 'url(#metal-h)', width: 2 })),
  );

/** The underside as it came off: chamber, valves and plug thread under carbon. */
export function headWithCarbon() {
  return picture(
    mat(61, '#c4bcab'),
    at(
      cx,
      cy,
      group(
        shadowOf(casting, 22, 30, 0.5),
        finEdges(),
        shape(casting, { fill: 'url(#metal-v)' }),
        machined(),
        headHoles.map(([x, y]) => hole(x, y, 20)),
        shape('M262-64Q290-64 290-36V36Q290 64 262 64Q234 64 234 36V-36Q234-64 262-64Z', { fill: '#1d1c1a' }),
        at(-8, 0, group(fireRing(), chamber()), { scale: 0.82 }),
      ),
      { turn: -3 },
    ),
    flakes(),
  );
}

function machined() {
  const { between } = scatter(611);
  return clipped('machined', casting, [
    times(34, (i) =>
      stroke(`M-356 ${n(-220 + i * 13)}H356`, i % 2 ? '#fff' : '#7d7a73', 1.6, between(0.06, 0.22)),
    ),
    specks(612, -350, -220, 700, 440, 130, ['#5f5a50', '#e9e6dd'], [1, 3], 0.5),
    blotches(613, 120, -120, 220, 260, 8, '#6a5a42', [20, 60], 0.5),
  ]);
}

const hole = (x, y, r) =>
  group(
    round(x, y, r + 3, { fill: '#8d8a83', width: 2 }),
    round(x, y, r, { fill: '#191a1b', width: 2.4 }),
    stroke(`M${x - r + 5} ${y + 6}A${r} ${r} 0 0 0 ${x + r - 6} ${y + 9}`, '#d9d5cb', 3, 0.6),
  );

const fireRing = () =>
  group(
    round(-40, 0, 206, { fill: 'none', width: 0, more: 'stroke="#5a554c" stroke-width="16" opacity="0.55"' }),
    round(-40, 0, 206, { fill: 'none', width: 1.6 }),
    round(-40, 0, 194, { fill: 'none', width: 1.6, more: 'opacity="0.7"' }),
    blurred(4, stroke('M150 40Q190 54 232 40', '#241e19', 16, 0.55)),
  );

const chamberOutline = 'M-206-36Q-204-132-92-142H34Q122-134 126-44V42Q120 132 30 142H-96Q-204 132-206 36Z';

function chamber() {
  return group(
    shape(chamberOutline, { fill: '#2e2924' }),
    clipped('chamber', chamberOutline, [
      blotches(614, -200, -140, 320, 280, 18, '#0f0d0b', [26, 58], 0.8),
      blotches(615, -190, -130, 300, 260, 12, '#6a5642', [10, 32], 0.55),
      crusts(616, -206, -142, 332, 284, 160),
    ]),
    valve(-104, -8, 78, 617, false),
    valve(54, 14, 62, 618, true),
    plugHole(),
    stroke('M-196-50Q-190-124-94-132H20', '#8a7f70', 4, 0.5),
  );
}

function valve(x, y, r, seed, exhaust) {
  const d = `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
  return group(
    round(x, y, r + 9, { fill: '#151311', width: 2.4 }),
    shape(d, { fill: exhaust ? '#8a7a69' : '#4a4139', width: 2.6 }),
    clipped(`valve-${seed}`, d, [
      blotches(seed, x - r, y - r, 2 * r, 2 * r, 12, exhaust ? '#c9b79c' : '#1b1714', [14, 32], 0.6),
      crusts(seed + 4, x - r, y - r, 2 * r, 2 * r, exhaust ? 26 : 70),
    ]),
    stroke(`M${x - r * 0.8} ${y - r * 0.3}A${r} ${r} 0 0 1 ${x} ${n(y - r * 0.86)}`, '#d8cbb8', 4, 0.5),
    round(x, y, 7, { fill: '#2b2622', width: 1.8 }),
  );
}

function crusts(seed, x, y, w, h, count) {
  const { between } = scatter(seed);
  return times(count, (i) => {
    const [px, py, r] = [between(x, x + w), between(y, y + h), between(3, 13)];
    const points = times(6, (k) => {
      const turn = (k * Math.PI) / 3;
      const at = r * between(0.55, 1.1);
      return `${n(px + at * Math.cos(turn))} ${n(py + at * 0.8 * Math.sin(turn))}`;
    });
    return `<path d="M${points.join('L')}Z" fill="${['#16130f', '#40372d', '#0c0a08', '#574a3c'][i % 4]}" opacity="${n(between(0.4, 0.9))}"/>`;
  });
}

const plugHole = () =>
  group(
    round(-38, 102, 31, { fill: '#191613', width: 2.6 }),
    times(4, (i) =>
      round(-38, 102, 27 - i * 5, {
        fill: 'none',
        width: 0,
        more: 'stroke="#6a5d4e" stroke-width="2" opacity="0.8"',
      }),
    ),
  );

const flakes = () =>
  group(
    crusts(619, 240, 726, 640, 90, 34),
    specks(620, 220, 716, 700, 120, 120, ['#16130f', '#40372d'], [1, 4], 0.8),
    shape('M930 800L1112 706L1126 728L948 824Z', { fill: '#8a5f38', width: 2.6 }),
    shape('M868 818Q882 796 932 796L952 826Q912 850 868 842Q856 834 868 818Z', {
      fill: '#c7a86a',
      width: 2.6,
    }),
    stroke('M886 812L880 838M900 806L896 844M914 803L914 842M928 802L934 836', '#7d6238', 3, 0.8),
  );

/** The head back on: six bolts with a line of paint across each, numbered in the maker's order. */
export function headTorqued(order) {
  return picture(
    mat(67, '#b9b4a8'),
    block(),
    at(
      cx,
      cy,
      group(
        shadowOf(casting, 16, 24, 0.5),
        finEdges(),
        shape(casting, { fill: 'url(#metal-v)' }),
        stroke('M-340-204H320', '#fffdf7', 6, 0.7),
        rockerBox(),
        headHoles.map(([x, y], i) => marked(x, y, order.indexOf(i + 1) + 1)),
        plug(),
      ),
      { turn: 0 },
    ),
    wrench(),
  );
}

const block = () =>
  group(
    box(150, 120, 900, 660, { r: 30, fill: '#8b877e' }),
    times(14, (i) => stroke(`M168 ${150 + i * 46}H1032`, '#5f5c55', 14, 0.5)),
    blotches(621, 150, 130, 900, 640, 10, '#3b382f', [40, 110], 0.35),
  );

function rockerBox() {
  const rim = 'M-176-112H176Q196-112 196-92V92Q196 112 176 112H-176Q-196 112-196 92V-92Q-196-112-176-112Z';
  return group(
    shape(rim, { fill: '#6b6860' }),
    box(-178, -94, 356, 188, { r: 14, fill: '#4b4943', width: 2.6 }),
    [-86, 86].map((x, i) => rocker(x, i)),
    [
      [-180, -98],
      [180, -98],
      [180, 98],
      [-180, 98],
    ].map(([x, y]) => round(x, y, 9, { fill: '#191a1b', width: 2 })),
  );
}

function rocker(x, i) {
  return group(
    coil(x, 78, x, 22, 31, 4, 9),
    round(x, 30, 25, { fill: 'url(#metal-ball)', width: 2.4 }),
    shape(`M${x - 22}-70Q${x}-96 ${x + 22}-70L${x + 30}-6L${x + 15} 44H${x - 15}L${x - 30}-6Z`, {
      fill: 'url(#steel-h)',
      width: 2.8,
    }),
    bolt(x, -22, 18, { turn: 8 + i * 22, washer: 1.25 }),
    round(x, -72, 10, { fill: '#8d8a83', width: 2 }),
    round(x, -72, 4, { fill: '#26282b', width: 0 }),
  );
}

/** A line of paint from the bolt head onto the casting, and its place in the order. */
function marked(x, y, place) {
  const outward = Math.sign(x) || 0;
  const [nx, ny] = outward === 0 ? [66, 0] : [-outward * 74, Math.sign(y) * 2];
  return group(
    bolt(x, y, 27, { turn: 20 + place * 23 }),
    blurred(2, stroke(`M${x + 4} ${y - 4}L${x + 44} ${y - 30}`, '#f6f1e2', 8, 0.6)),
    stroke(`M${x + 3} ${y - 3}L${x + 44} ${y - 30}`, '#f6f1e2', 6, 0.95),
    number(place, x + nx, y + ny, 44, color.accent, 7),
  );
}

const plug = () =>
  group(
    round(150, 228, 40, { ry: 26, fill: '#191a1b', width: 2.6 }),
    shape('M128 224H172L176 300H124Z', { fill: '#f2eee2' }),
    stroke('M126 244H174M125 262H175M124 280H176', '#b7b1a2', 3.4),
    box(138, 298, 24, 30, { r: 5, fill: 'url(#steel-h)' }),
    screw(-310, 0, 13, 20),
    screw(310, 0, 13, 65),
  );

function wrench() {
  return at(
    0,
    0,
    group(
      blurred(8, stroke('M1180 270L860 640', '#1a1409', 40, 0.4)),
      at(
        864,
        622,
        group(
          round(0, 0, 52, { fill: 'url(#steel-v)' }),
          round(0, 0, 36, { fill: 'url(#metal-ball)', width: 2.4 }),
          box(-18, -18, 36, 36, { r: 4, fill: '#3b3e42', width: 2.4 }),
          round(22, -30, 7, { fill: '#26282b', width: 0 }),
          box(44, -20, 260, 40, { r: 12, fill: 'url(#steel-v)' }),
          box(300, -26, 200, 52, { r: 14, fill: 'url(#black-v)' }),
          times(14, (i) => stroke(`M${316 + i * 11}-22V22`, '#5d6166', 3, 0.8)),
          times(9, (i) => stroke(`M${128 + i * 18}-16v${i % 4 === 0 ? 20 : 11}`, color.ink, 2.4, 0.8)),
        ),
        { turn: -49 },
      ),
    ),
  );
}
