import { cobweb, engineFeet, frameBehind, railsBefore, tankEnd } from './frame.mjs';
import { at, box, clipped, color, group, n, number, round, shape, stroke, times } from './ink.mjs';
import { bench, picture, shadow } from './scene.mjs';
import { blotches, bolt, chaff, fins, leaves, runs, screw, specks, tag } from './things.mjs';

/** The pump set seen on its recoil starter: as it came in, or as it leaves. */
export function pumpFront({ clean = false } = {}) {
  const dirty = !clean;
  return picture(
    bench(clean ? 11 : 7),
    shadow(600, 800, 420, 42, 0.6),
    frameBehind(dirty),
    headBehind(dirty),
    muffler(dirty),
    airCleaner(dirty),
    tankEnd({ dirty, cap: 652 }),
    crankcase(dirty),
    engineFeet(dirty),
    fanCover(dirty),
    recoil(dirty),
    railsBefore(dirty),
    dirty && cobweb(),
    dirty ? onTheBench() : tidyBench(),
    tag(930, 236, number(17, 0, 66, 42, color.ink, 6.5), { turn: 7, knot: [-22, -52] }),
  );
}

function headBehind() {
  return group(fins(400, 330, 150, 130, 7), box(430, 322, 110, 14, { r: 3 }));
}

function muffler(dirty) {
  const slots = times(5, (row) =>
    times(3, (column) =>
      box(327 + column * 30, 352 + row * 24, 20, 10, { r: 5, fill: '#231f1d', width: 1.6 }),
    ),
  );
  return group(
    box(308, 330, 116, 150, { r: 18, fill: dirty ? 'url(#burnt-v)' : 'url(#black-v)' }),
    box(318, 340, 96, 130, { r: 12, fill: dirty ? '#7b6a5f' : '#4a4e53', width: 2 }),
    slots,
    screw(326, 336, 7, 10),
    screw(408, 474, 7, 40),
    dirty && blotches(51, 314, 340, 100, 130, 10, color.rust, [10, 30], 0.7),
    dirty && specks(52, 312, 336, 108, 140, 120, ['#5e3526', '#b0745a', '#3a2a22'], [1, 3.4], 0.8),
  );
}

function airCleaner(dirty) {
  return group(
    box(772, 344, 130, 132, { r: 16, fill: 'url(#black-h)' }),
    box(784, 356, 106, 108, { r: 12, fill: '#34373b', width: 2 }),
    times(4, (i) => stroke(`M796 ${378 + i * 22}H878`, '#5b5f65', 4)),
    round(838, 340, 13, { fill: 'url(#steel-v)', width: 2 }),
    shape('M816 338Q816 322 836 334Q858 322 860 338Q858 350 838 343Q818 350 816 338Z', {
      fill: 'url(#steel-v)',
      width: 2.4,
    }),
    dirty && `<rect x="774" y="346" width="126" height="60" rx="14" fill="url(#dust-down)"/>`,
    dirty && specks(53, 776, 348, 122, 122, 80, ['#cbb892', '#8d7a52'], [1, 3], 0.6),
  );
}

const crankcaseOutline = 'M410 560H790L806 640V700H394V640Z';

function crankcase(dirty) {
  return group(
    shape(crankcaseOutline, { fill: 'url(#metal-v)' }),
    stroke('M414 606H786M402 652H798', '#7d7a73', 3, 0.6),
    stroke('M414 610H786M402 656H798', '#fbfaf5', 2, 0.7),
    [424, 500, 690, 778].map((x) => stroke(`M${x} 660V690`, '#86837b', 6, 0.55)),
    group(
      round(756, 672, 21, { fill: 'url(#black-ball)' }),
      box(747, 650, 18, 44, { r: 8, fill: 'url(#black-h)', width: 2.4 }),
    ),
    bolt(462, 674, 11),
    bolt(600, 678, 8, { turn: 30 }),
    dirty &&
      clipped('case-dirt', crankcaseOutline, [
        blotches(54, 400, 600, 400, 100, 14, '#4d3c25', [18, 56], 0.6),
        runs(55, 430, 640, 330, 8, 60, '#3a2c19'),
        specks(59, 400, 570, 400, 130, 120, ['#6b5737', '#d9c8a1', '#3f321f'], [1, 3], 0.6),
      ]),
  );
}

const cover =
  'M424 470C418 380 470 322 560 318C610 300 690 312 736 352C790 398 800 500 772 570C744 634 660 662 590 654C496 648 432 590 424 470Z';

function fanCover(dirty) {
  const bolts = [
    [462, 392],
    [716, 366],
    [766, 556],
    [470, 580],
  ].map(([x, y], i) => bolt(x, y, 9, { turn: 10 + i * 17 }));
  return group(
    `<path d="${cover}" transform="translate(8 12)" fill="#1a1409" opacity="0.45" filter="url(#blur-8)"/>`,
    shape(cover, { fill: 'url(#paint-ball)' }),
    stroke('M446 470C444 396 486 346 566 338C612 322 680 332 722 366', '#a9d0d9', 6, 0.5),
    stroke('M440 470C440 580 500 636 592 640C656 644 730 620 758 566', '#0c313c', 6, 0.5),
    bolts,
    stopSwitch(),
    dirty &&
      clipped('cover-dirt', cover, [
        `<rect x="420" y="310" width="380" height="200" fill="url(#dust-down)" opacity="0.8"/>`,
        blotches(56, 430, 560, 340, 90, 12, '#5d4a2d', [24, 70], 0.55),
        specks(57, 424, 314, 370, 340, 230, ['#d9c8a1', '#5f4c2c', '#8d7a52'], [1, 3.2], 0.6),
        runs(58, 470, 330, 250, 7, 150, '#bda880'),
      ]),
  );
}

function stopSwitch() {
  return group(
    box(700, 592, 54, 34, { r: 6, fill: 'url(#black-v)', width: 2.4 }),
    box(706, 597, 42, 24, { r: 4, fill: '#a5402f', width: 1.8 }),
    stroke('M714 609h10', '#f1d9d0', 3),
    round(738, 609, 5, { fill: 'none', width: 0, more: 'stroke="#f1d9d0" stroke-width="2.4"' }),
  );
}

const hub = [598, 482];

function recoil(dirty) {
  const [x, y] = hub;
  const slot = (i, r1, r2, half) => {
    const turn = (i * 360) / 14;
    return at(
      x,
      y,
      shape(
        `M${n(-half)} ${n(-r1)}L${n(-half * 1.6)} ${n(-r2)}Q0 ${n(-r2 - 10)} ${n(half * 1.6)} ${n(-r2)}L${n(half)} ${n(-r1)}Q0 ${n(-r1 + 7)} ${n(-half)} ${n(-r1)}Z`,
        { fill: '#15272d', width: 2 },
      ),
      { turn },
    );
  };
  const gap = 'M598 482m-112 0a112 112 0 1 0 224 0a112 112 0 1 0 -224 0Z';
  return group(
    round(x + 6, y + 10, 136, { fill: '#0a1a20', width: 0, more: 'opacity="0.5" filter="url(#blur-8)"' }),
    round(x, y, 134, { fill: 'url(#paint-ball)' }),
    round(x, y, 120, { fill: 'none', width: 2, more: 'opacity="0.6"' }),
    times(14, (i) => slot(i, 62, 100, 7)),
    dirty &&
      clipped('slots', gap, [
        chaff(61, 500, 390, 190, 190, 60),
        leaves(62, [
          [530, 420, 40],
          [640, 414, 46],
          [676, 500, 40],
          [540, 560, 44],
          [610, 574, 38],
          [500, 482, 36],
          [660, 556, 42],
        ]),
      ]),
    [20, 140, 260].map((turn) =>
      bolt(x + 122 * Math.cos((turn * Math.PI) / 180), y + 122 * Math.sin((turn * Math.PI) / 180), 8, {
        turn,
      }),
    ),
    round(x, y, 44, { fill: 'url(#black-ball)' }),
    round(x, y, 30, { fill: 'none', width: 2, more: 'opacity="0.5"' }),
    screw(x, y, 10, 30),
    rope(dirty),
    dirty && specks(63, x - 130, y - 130, 260, 260, 130, ['#d9c8a1', '#8d7a52', '#5f4c2c'], [1, 2.6], 0.5),
  );
}

function rope(dirty) {
  const d = 'M700 428C724 408 742 400 770 396';
  return group(
    box(690, 416, 26, 28, { r: 6, fill: 'url(#black-v)', width: 2.4 }),
    stroke(d, color.ink, 10),
    stroke(d, dirty ? '#b8a98a' : '#d9d2c0', 6),
    dirty &&
      ['M742 402l6-14', 'M748 400l10-8', 'M746 401l-3 13', 'M752 399l4 12'].map((frayed) =>
        stroke(frayed, '#d6c8a8', 2),
      ),
    shape('M768 380Q800 364 838 374Q848 392 838 408Q800 416 770 408Z', { fill: 'url(#black-v)' }),
    stroke('M782 384Q806 376 830 382', '#7b8087', 4, 0.8),
  );
}

function onTheBench() {
  return group(
    leaves(71, [
      [232, 806, 52],
      [180, 842, 44],
      [470, 828, 46],
      [742, 822, 50],
      [986, 812, 48],
      [1040, 850, 40],
    ]),
    chaff(72, 200, 800, 860, 70, 34),
    specks(73, 220, 790, 800, 90, 130, ['#6b5737', '#3f321f', '#8d7a52'], [1.2, 4], 0.6),
  );
}

function tidyBench() {
  const rag = 'M984 822L1042 776 1152 790 1142 838 1066 862Z';
  return group(
    `<path d="${rag}" transform="translate(4 10)" fill="#1a1409" opacity="0.4" filter="url(#blur-8)"/>`,
    shape(rag, { fill: '#ece6d8', width: 2 }),
    stroke(
      'M1002 828L1056 784M1024 838L1086 786M1048 848L1118 790M1016 800L1130 832M998 814L1104 850',
      '#a9bfc4',
      4,
      0.7,
    ),
    stroke('M1066 862L1042 776', '#b9b09b', 2.4),
    shadow(126, 850, 50, 10, 0.4),
    box(94, 776, 64, 74, { r: 6, fill: 'url(#steel-h)' }),
    box(94, 796, 64, 34, { r: 0, fill: 'url(#sheet-v)', width: 1.8 }),
    round(126, 776, 32, { ry: 10, fill: '#c9b27a' }),
    round(126, 776, 24, { ry: 7, fill: '#b3934a', width: 1.5 }),
  );
}
