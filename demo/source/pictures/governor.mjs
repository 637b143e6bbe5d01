import {
  blurred,
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
import { picture, shadowOf, wall } from './scene.mjs';
import { blotches, bolt, coil, fins, specks, wire } from './things.mjs';

/** The governor lever close up: the spring hooks in the third hole, the thin damper lies round the link. */
export function governorSpring() {
  return picture(wall('#a7a297'), behind(), carburetor(), lever(), spring(), link(), marks(), dirt());
}

function behind() {
  return group(
    `<rect width="1200" height="900" fill="url(#metal-v)"/>`,
    fins(-20, 520, 1240, 400, 8),
    `<rect width="1200" height="900" fill="#1a1409" opacity="0.28"/>`,
    blotches(501, 0, 480, 1200, 400, 14, '#4d3c25', [60, 150], 0.45),
  );
}

function carburetor() {
  const body = 'M-20 120H250Q300 120 304 170V430Q300 470 250 474H-20Z';
  return group(
    shadowOf(body, 18, 26, 0.55),
    shape(body, { fill: 'url(#metal-v)' }),
    stroke('M-20 176H280', '#fbfaf5', 6, 0.6),
    round(170, 300, 74, { fill: 'url(#metal-ball)' }),
    round(170, 300, 30, { fill: 'url(#steel-v)', width: 2.6 }),
    shape('M150 300L172 236Q250 214 316 236L322 262Q240 246 200 268L186 316Z', {
      fill: 'url(#steel-h)',
      width: 3,
    }),
    round(304, 250, 9, { fill: '#1d1f21', width: 2 }),
    bolt(60, 420, 22, { turn: 20 }),
    specks(502, 0, 126, 300, 340, 120, ['#6b5737', '#d9c8a1', '#4a2a10'], [1.4, 4], 0.6),
  );
}

const arm = 'M742 980L692 190Q690 118 744 112Q800 108 806 180L866 980Z';
const holes = [
  [748, 168],
  [754, 258],
  [760, 348],
  [766, 438],
];

function lever() {
  return group(
    shadowOf(arm, 24, 22, 0.6),
    shape(arm, { fill: 'url(#steel-h)' }),
    stroke('M716 196L760 900', '#f6f6f3', 6, 0.6),
    holes.map(([x, y], i) =>
      group(
        round(x, y, 21, { fill: '#17191b', width: 2.6 }),
        i === 2 && stroke(`M${x - 19} ${y + 8}A21 21 0 0 0 ${x + 12} ${y + 17}`, '#f8f7f2', 4, 0.9),
      ),
    ),
    clipped('arm', arm, [
      blotches(503, 700, 500, 150, 380, 12, color.rust, [18, 50], 0.5),
      specks(504, 690, 110, 180, 780, 190, ['#8f553f', '#5e3526', '#d9c8a1'], [1.2, 4], 0.6),
    ]),
  );
}

function spring() {
  return group(
    blurred(4, stroke('M330 620L700 392', '#1a1409', 40, 0.4)),
    coil(372, 590, 676, 408, 24, 15, 9, bright),
    wire('M676 408Q706 388 724 366Q742 342 764 346Q778 350 774 366', 9),
    wire('M372 590Q344 612 318 612Q288 606 292 634Q298 656 320 646', 9),
    tube('M300 700V640', 18, bright),
    shape('M250 690H360L372 760H238Z', { fill: 'url(#steel-v)', width: 3 }),
    bolt(306, 726, 18, { turn: 10 }),
  );
}

function link() {
  return group(
    blurred(4, stroke('M316 262L742 180', '#1a1409', 12, 0.4)),
    wire('M304 250V226Q306 214 320 214L724 148Q748 144 748 168V196', 9),
    coil(380, 206, 668, 158, 13, 22, 3.4, bright),
    wire('M668 158Q690 150 712 162Q730 172 746 172', 3.6),
  );
}

/** Numbered on a strip of tape before anything was unhooked, with a ring round the one in use. */
function marks() {
  const tape = 'M866 110L934 106L962 484L952 492L944 482L934 494L922 484L912 495L902 485L892 496L882 488Z';
  return group(
    `<path d="${tape}" transform="translate(5 7)" fill="#1a1409" opacity="0.35" filter="url(#blur-4)"/>`,
    shape(tape, { fill: 'url(#sheet-v)', width: 2 }),
    holes.map(([, y], i) => number(i + 1, 904 + i * 4, y, 48, color.ink, 6)),
    round(913, 348, 39, { fill: 'none', width: 0, more: `stroke="${color.accent}" stroke-width="6"` }),
    stroke('M868 352Q840 358 800 352M812 340L798 352L814 362', color.accent, 6),
  );
}

function dirt() {
  return group(
    blotches(505, 860, 600, 320, 260, 9, '#3f321f', [40, 110], 0.4),
    specks(506, 320, 520, 860, 360, 200, ['#d9c8a1', '#5f4c2c', '#c8a55b'], [1.4, 4], 0.5),
    times(5, (i) =>
      stroke(
        `M${n(920 + i * 40)} ${n(690 + ((i * 37) % 90))}l${n(36 - i * 12)} ${n(14 + i * 5)}`,
        '#c8a55b',
        4,
        0.9,
      ),
    ),
  );
}
