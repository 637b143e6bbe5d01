import {
  black,
  box,
  bright,
  clipped,
  color,
  group,
  n,
  number,
  round,
  shape,
  stroke,
  times,
  tube,
} from './ink.mjs';
import { bench, picture, shadow } from './scene.mjs';
import { blotches, bolt, chaff, fins, runs, screw, specks, tag } from './things.mjs';

/** The second machine: a side-valve mower from its left, with grass on it and a bent blade tip under the deck. */
export function mowerSide() {
  return picture(
    bench(83),
    shadow(560, 806, 430, 40, 0.6),
    handle(),
    deckFar(),
    engine(),
    deck(),
    wheel(292, 736, 62),
    wheel(840, 728, 72),
    blade(),
    tag(1012, 330, number(18, 0, 66, 42, color.ink, 6.5), { turn: 7, knot: [-32, -58] }),
    chaff(831, 200, 780, 800, 90, 46),
    specks(832, 200, 784, 820, 96, 150, ['#6f7d4a', '#4d5a33', '#8d7a52'], [1.4, 4], 0.7),
  );
}

function handle() {
  return group(
    tube('M800 640L1010 250Q1024 222 1052 214L1120 196', 20, bright),
    tube('M986 292L1086 258', 12, black),
    stroke('M980 300C930 420 900 470 842 520', '#26282b', 7),
    stroke('M980 300C930 420 900 470 842 520', '#4a4d52', 3),
    shape('M1096 186L1168 168Q1182 168 1184 182Q1184 196 1172 202L1102 222Z', { fill: 'url(#black-v)' }),
    bolt(902, 452, 11),
    bolt(828, 588, 11, { turn: 40 }),
  );
}

const deckFar = () => shape('M300 640Q320 596 400 590H760Q840 596 866 640Z', { fill: '#123c4a' });

const deckOutline = 'M214 712Q214 640 300 622L380 606H770Q880 616 920 700L926 744H214Z';

function deck() {
  return group(
    `<path d="${deckOutline}" transform="translate(6 10)" fill="#1a1409" opacity="0.4" filter="url(#blur-8)"/>`,
    shape(deckOutline, { fill: 'url(#paint-v)' }),
    stroke('M240 690Q250 650 312 640L390 624H766Q850 632 888 690', '#8fc0cc', 5, 0.5),
    stroke('M216 724H924', '#0c313c', 7, 0.7),
    [360, 560, 744].map((x, i) => bolt(x, 650, 10, { turn: i * 25 })),
    clipped('deck', deckOutline, [
      blotches(833, 220, 680, 700, 64, 16, '#5f6d3a', [24, 60], 0.7),
      blotches(834, 380, 606, 400, 30, 8, '#6f7d4a', [16, 46], 0.6),
      chaff(835, 230, 690, 680, 54, 90),
      runs(836, 420, 620, 330, 6, 90, '#b9a87e'),
      specks(837, 214, 606, 710, 138, 190, ['#6f7d4a', '#c8a55b', '#8f553f'], [1.2, 4], 0.7),
    ]),
  );
}

function engine() {
  return group(
    box(470, 556, 270, 54, { r: 8 }),
    shape('M458 452H752L764 560H446Z', { fill: 'url(#metal-v)' }),
    fins(330, 452, 136, 104, 6, { upright: true }),
    box(300, 446, 34, 116, { r: 6 }),
    [
      [316, 466],
      [316, 504],
      [316, 542],
    ].map(([x, y], i) => bolt(x, y, 9, { turn: i * 20 })),
    shape('M300 486H262Q244 488 236 500L214 508', { width: 9 }),
    stroke('M300 486H262Q244 488 236 500L214 508', '#3a3d41', 6),
    box(232, 474, 44, 24, { r: 6, fill: 'url(#black-v)', width: 2.4 }),
    shroud(),
    tank(),
    carburetor(),
    stroke('M276 486C236 440 250 402 330 398C392 396 420 412 430 430', color.ink, 10),
    stroke('M276 486C236 440 250 402 330 398C392 396 420 412 430 430', '#34373b', 6),
    clipped('engine-dirt', 'M300 446H770V610H300Z', [
      blotches(838, 320, 470, 440, 130, 14, '#4d3c25', [18, 56], 0.5),
      blotches(839, 330, 450, 140, 110, 10, '#6f7d4a', [12, 34], 0.7),
      runs(840, 470, 470, 270, 6, 90, '#241a10'),
      specks(841, 310, 452, 450, 150, 150, ['#6f7d4a', '#d9c8a1', '#3f321f'], [1, 3.4], 0.6),
    ]),
    chaff(842, 330, 446, 136, 112, 50),
  );
}

const shroudOutline = 'M432 452V392Q436 330 520 312H690Q770 326 780 392V452Z';

function shroud() {
  return group(
    shape(shroudOutline, { fill: 'url(#paint-v)' }),
    stroke('M452 440V396Q458 346 530 330H680', '#a9d0d9', 6, 0.5),
    shape('M520 312Q524 268 604 264Q686 268 690 312Z', { fill: 'url(#black-v)' }),
    times(8, (i) => stroke(`M${540 + i * 18} 304V${n(284 - 5 * Math.sin((i / 7) * Math.PI))}`, '#121416', 5)),
    stroke('M690 300C740 292 800 300 846 330', color.ink, 9),
    stroke('M690 300C740 292 800 300 846 330', '#b8a98a', 5),
    shape('M836 322L872 318Q884 330 876 344L842 350Z', { fill: 'url(#black-v)', width: 2.6 }),
    screw(462, 432, 8, 20),
    screw(754, 432, 8, 60),
    clipped('shroud', shroudOutline, [
      `<rect x="432" y="312" width="348" height="80" fill="url(#dust-down)"/>`,
      blotches(843, 440, 400, 330, 50, 9, '#5d4a2d', [18, 50], 0.5),
      specks(844, 436, 316, 340, 136, 120, ['#d9c8a1', '#6f7d4a'], [1, 3.4], 0.6),
    ]),
  );
}

function tank() {
  return group(
    box(664, 448, 150, 78, { r: 20, fill: 'url(#paint-v)' }),
    box(726, 430, 40, 22, { r: 5, fill: 'url(#black-h)' }),
    stroke('M682 464H780', '#a9d0d9', 5, 0.5),
    runs(845, 700, 452, 90, 5, 60, '#5f4a22'),
  );
}

function carburetor() {
  return group(
    box(540, 470, 96, 76, { r: 12, fill: 'url(#black-h)' }),
    times(3, (i) => stroke(`M556 ${488 + i * 20}H620`, '#5b5f65', 4)),
    box(634, 488, 36, 42, { r: 5, fill: 'url(#metal-v)' }),
    round(650, 538, 15, { ry: 11, fill: 'url(#metal-ball)', width: 2.4 }),
  );
}

function wheel(x, y, r) {
  return group(
    round(x + 4, y + 6, r, { fill: '#1a1409', width: 0, more: 'opacity="0.4" filter="url(#blur-4)"' }),
    round(x, y, r, { fill: 'url(#black-ball)' }),
    times(20, (i) => {
      const turn = (i * Math.PI) / 10;
      return stroke(
        `M${n(x + (r - 12) * Math.cos(turn))} ${n(y + (r - 12) * Math.sin(turn))}L${n(x + (r - 3) * Math.cos(turn + 0.08))} ${n(y + (r - 3) * Math.sin(turn + 0.08))}`,
        '#17191b',
        5,
        0.9,
      );
    }),
    round(x, y, r * 0.6, { fill: 'url(#metal-ball)' }),
    round(x, y, r * 0.42, { fill: 'none', width: 2, more: 'opacity="0.5"' }),
    bolt(x, y, r * 0.17, { turn: r }),
    blotches(846 + x, x - r, y, 2 * r, r * 0.8, 7, '#6f7d4a', [8, 24], 0.7),
  );
}

/** The tip of the blade shows below the deck, nicked and turned up. */
function blade() {
  return group(
    shape('M520 752H662L692 742L700 732L708 742L690 766H520Z', { fill: 'url(#steel-v)', width: 2.6 }),
    shape('M560 744H606V776H560Z', { fill: 'url(#metal-v)', width: 2.4 }),
    bolt(583, 774, 10, { turn: 0 }),
    stroke('M636 764l8-9 6 10 9-8', color.ink, 2.4),
    specks(847, 520, 746, 180, 24, 40, ['#8f553f', '#5e3526'], [1, 3], 0.8),
  );
}
