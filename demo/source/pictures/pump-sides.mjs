import {
  black,
  blurred,
  box,
  bright,
  clipped,
  color,
  group,
  number,
  round,
  rubber,
  shape,
  stroke,
  times,
  tube,
} from './ink.mjs';
import { bench, picture, shadow } from './scene.mjs';
import { blotches, bolt, chaff, coil, fins, leaves, runs, screw, specks, tag, web, wire } from './things.mjs';

/** The exhaust side: seen from there, the starter is on the right. */
export function pumpLeft() {
  return side({
    seed: 23,
    drawn: `<g transform="translate(1200 0) scale(-1 1)">${machine(group(headBlock(), mufflerSide()))}</g>`,
    ground: [
      [250, 812, 50],
      [330, 848, 40],
      [640, 836, 48],
      [900, 820, 46],
    ],
    hangs: tag(1006, 250, number(17, 0, 66, 42, color.ink, 6.5), { turn: 6, knot: [-20, -64] }),
  });
}

/** The carburetor side. */
export function pumpRight() {
  return side({
    seed: 29,
    drawn: machine(group(headBlock(), carburetorSide())),
    ground: [
      [280, 816, 48],
      [560, 842, 44],
      [842, 818, 50],
      [960, 846, 42],
    ],
    hangs: tag(194, 250, number(17, 0, 66, 42, color.ink, 6.5), { turn: -5, knot: [20, -62] }),
  });
}

function side({ seed, drawn, ground, hangs }) {
  return picture(
    bench(seed),
    drawn,
    hangs,
    leaves(seed, ground),
    chaff(seed + 1, 240, 790, 760, 70, 30),
    specks(seed + 2, 240, 790, 760, 90, 120, ['#6b5737', '#3f321f', '#8d7a52'], [1.2, 4], 0.6),
  );
}

/** Drawn with the starter on the left; the other side is the same, turned. */
function machine(middle) {
  return group(
    shadow(600, 800, 460, 42, 0.6),
    tube('M214 742V218Q214 164 268 164H926Q980 164 980 218V742', 24, black),
    specks(201, 204, 200, 22, 520, 70, ['#8f553f', '#6b4634', '#a86d50'], [1.5, 4.5], 0.8),
    web(228, 178, 130, 0, 90),
    tankSide(),
    caseSide(),
    pumpSide(),
    middle,
    starterSide(),
    feet(),
  );
}

function tankSide() {
  const d = 'M316 198H682Q726 198 728 240V288Q728 314 700 314H300Q272 314 272 288V240Q274 198 316 198Z';
  return group(
    box(356, 310, 30, 76, { r: 3, fill: 'url(#black-h)' }),
    box(620, 310, 30, 60, { r: 3, fill: 'url(#black-h)' }),
    shape(d, { fill: 'url(#paint-v)' }),
    stroke('M274 262H726', '#0f3541', 5, 0.8),
    stroke('M276 257H724', '#8fc0cc', 2.5, 0.7),
    stroke('M324 214H650', '#bfdde4', 7, 0.5),
    box(446, 182, 44, 20, { r: 3, fill: 'url(#metal-h)' }),
    shape('M424 186Q422 154 436 152H500Q514 154 512 186Z', { fill: 'url(#black-h)' }),
    clipped('tank-side', d, [
      `<rect x="272" y="198" width="456" height="60" fill="url(#dust-down)"/>`,
      runs(203, 320, 262, 360, 9, 54, '#c9b58d'),
      runs(204, 436, 198, 70, 4, 100, '#54401f'),
      specks(205, 280, 204, 440, 106, 110, ['#5f4c2c', '#8d7a52', '#d8c79f'], [1, 3], 0.6),
    ]),
  );
}

const caseOutline = 'M360 520H660L676 560V692H344V560Z';

function caseSide() {
  return group(
    shape(caseOutline, { fill: 'url(#metal-v)' }),
    stroke('M516 524V690', '#6d6a64', 4, 0.7),
    stroke('M520 524V690', '#fbfaf5', 2, 0.6),
    [560, 600, 650].flatMap((y) => [538, 656].map((x) => bolt(x, y, 7, { turn: y }))),
    times(4, (i) => stroke(`M368 ${572 + i * 26}H498`, '#86837b', 4, 0.5)),
    group(
      box(386, 660, 40, 28, { r: 8, fill: 'url(#black-v)' }),
      round(406, 660, 20, { ry: 8, fill: 'url(#black-ball)', width: 2.4 }),
    ),
    bolt(470, 676, 11),
    clipped('case-side', caseOutline, [
      blotches(206, 350, 560, 320, 130, 14, '#4d3c25', [18, 60], 0.6),
      runs(207, 380, 560, 260, 8, 110, '#3a2c19'),
      specks(208, 350, 526, 320, 160, 120, ['#6b5737', '#d9c8a1', '#3f321f'], [1, 3], 0.6),
    ]),
    shape('M330 692H690L708 728H312Z', { fill: 'url(#metal-v)' }),
    [356, 664].map((x) =>
      group(
        box(x - 16, 706, 32, 16, { r: 3, fill: 'url(#steel-h)' }),
        round(x, 706, 11, { ry: 6, fill: 'url(#steel-v)', width: 2 }),
      ),
    ),
    blotches(209, 320, 690, 380, 34, 9, '#6d5a3b', [18, 46], 0.55),
  );
}

function headBlock() {
  return group(
    fins(426, 372, 252, 150, 9),
    box(440, 340, 226, 36, { r: 8 }),
    leaves(211, [
      [470, 430, 42],
      [560, 402, 40],
      [616, 470, 44],
      [500, 494, 40],
      [642, 424, 36],
      [446, 470, 34],
    ]),
    chaff(212, 430, 376, 244, 144, 60),
    specks(213, 426, 372, 252, 150, 90, ['#6b5737', '#c8a55b', '#3f321f'], [1.2, 3.4], 0.7),
  );
}

function mufflerSide() {
  const holes = times(6, (row) =>
    times(9, (column) =>
      box(478 + column * 19 + (row % 2) * 6, 372 + row * 17, 11, 8, { r: 4, fill: '#231f1d', width: 1.2 }),
    ),
  );
  return group(
    `<rect x="464" y="358" width="206" height="132" rx="22" transform="translate(8 12)" fill="#1a1409" opacity="0.5" filter="url(#blur-8)"/>`,
    box(460, 350, 206, 134, { r: 22, fill: 'url(#burnt-v)' }),
    box(470, 360, 186, 114, { r: 16, fill: '#7b6a5f', width: 2 }),
    holes,
    shape('M666 392H704Q716 394 716 408V424H694V414H666', { fill: '#5e3526', width: 2.6 }),
    round(705, 424, 11, { ry: 5, fill: '#191513', width: 2 }),
    screw(478, 366, 7, 10),
    screw(650, 366, 7, 60),
    round(478, 470, 7, { fill: '#231f1d', width: 2 }),
    screw(650, 470, 7, 30),
    blotches(214, 464, 356, 196, 122, 14, color.rust, [14, 40], 0.7),
    specks(215, 462, 352, 200, 128, 190, ['#5e3526', '#b0745a', '#3a2a22'], [1, 3.4], 0.8),
    runs(216, 480, 476, 170, 6, 60, '#5e3526'),
  );
}

function carburetorSide() {
  return group(
    box(438, 356, 130, 122, { r: 14, fill: 'url(#black-h)' }),
    box(450, 368, 106, 98, { r: 10, fill: '#34373b', width: 2 }),
    times(4, (i) => stroke(`M462 ${388 + i * 20}H544`, '#5b5f65', 4)),
    round(503, 352, 12, { fill: 'url(#steel-v)', width: 2 }),
    `<rect x="440" y="358" width="126" height="54" rx="12" fill="url(#dust-down)"/>`,
    box(566, 396, 34, 62, { r: 6, fill: '#5b3b33' }),
    box(598, 388, 60, 78, { r: 10, fill: 'url(#metal-v)' }),
    shape('M604 464H654V500Q652 520 629 522Q606 520 604 500Z', { fill: 'url(#metal-h)' }),
    round(629, 522, 10, { ry: 6, fill: 'url(#steel-v)', width: 2.2 }),
    wire('M634 390V352M634 352L664 346', 6),
    tube('M610 314C606 350 690 350 676 404 668 440 660 430 656 436', 13, rubber),
    lever(),
    specks(221, 600, 390, 60, 130, 50, ['#7c5a33', '#c8a55b', '#4d7a5a'], [1.2, 3], 0.8),
    blotches(222, 604, 486, 54, 40, 5, '#6f7d4a', [8, 20], 0.55),
  );
}

function lever() {
  return group(
    shape('M706 566L690 396Q690 384 702 384Q714 384 714 396L728 566Z', { fill: 'url(#steel-h)', width: 2.6 }),
    bolt(716, 558, 10),
    [404, 424, 444].map((y) => round(702 + (y - 404) * 0.08, y, 4, { fill: '#26282b', width: 0 })),
    coil(642, 400, 692, 424, 6, 9, 3, bright),
  );
}

function starterSide() {
  const d = 'M428 366H352Q330 366 322 392L300 430V566L322 610Q330 634 352 634H428Z';
  return group(
    `<path d="${d}" transform="translate(8 12)" fill="#1a1409" opacity="0.45" filter="url(#blur-8)"/>`,
    shape(d, { fill: 'url(#paint-v)' }),
    shape('M302 424H270Q254 426 252 446V548Q254 568 270 570H302Z', { fill: 'url(#paint-v)' }),
    times(7, (i) => box(260, 440 + i * 17, 34, 8, { r: 4, fill: '#15272d', width: 1.6 })),
    stroke('M352 380H414', '#a9d0d9', 6, 0.5),
    bolt(410, 392, 8),
    bolt(410, 608, 8, { turn: 40 }),
    stroke('M286 440C276 420 268 408 258 400', color.ink, 9),
    stroke('M286 440C276 420 268 408 258 400', '#b8a98a', 5),
    shape('M232 372Q242 364 266 388Q274 400 264 406Q256 412 244 400Q226 384 232 372Z', {
      fill: 'url(#black-v)',
      width: 2.6,
    }),
    clipped('starter-side', d, [
      `<rect x="300" y="366" width="130" height="120" fill="url(#dust-down)" opacity="0.8"/>`,
      blotches(217, 304, 560, 120, 70, 7, '#5d4a2d', [18, 46], 0.55),
      specks(218, 304, 370, 122, 260, 110, ['#d9c8a1', '#5f4c2c', '#8d7a52'], [1, 3], 0.6),
    ]),
    leaves(219, [
      [266, 470, 30],
      [276, 530, 32],
    ]),
  );
}

function pumpSide() {
  const body = 'M690 446H760Q812 446 820 470V650Q812 676 760 676H690Z';
  return group(
    box(672, 486, 34, 160, { r: 4, fill: 'url(#metal-v)' }),
    shape('M712 452V354H786V452Z', { fill: 'url(#metal-h)' }),
    box(700, 338, 98, 22, { r: 5, fill: 'url(#metal-h)' }),
    box(716, 286, 66, 54, { r: 6, fill: 'url(#black-h)' }),
    times(4, (i) => stroke(`M716 ${298 + i * 11}H782`, '#191b1d', 2.4, 0.8)),
    shape(body, { fill: 'url(#metal-v)' }),
    stroke('M748 448V674', '#6d6a64', 4, 0.6),
    [474, 524, 596, 648].map((y) => bolt(732, y, 8, { turn: y })),
    box(818, 502, 40, 116, { r: 5, fill: 'url(#metal-v)' }),
    box(856, 516, 46, 88, { r: 4, fill: 'url(#metal-v)' }),
    times(5, (i) => stroke(`M${862 + i * 8} 517V603`, '#6d6a64', 2.4, 0.7)),
    bolt(780, 660, 10, { turn: 0 }),
    shape('M706 676H800L812 728H694Z', { fill: 'url(#metal-v)' }),
    clipped('pump-side', body, [
      runs(223, 700, 450, 110, 7, 200, '#8fa79a'),
      runs(224, 700, 590, 110, 6, 80, '#8f553f'),
      specks(225, 694, 450, 122, 220, 110, ['#e8e2d2', '#8d7a52', '#5f4c2c'], [1, 3], 0.5),
    ]),
  );
}

function feet() {
  const foot = (x) =>
    group(
      shape(`M${x - 34} 752H${x + 34}L${x + 42} 790H${x - 42}Z`, { fill: 'url(#black-v)' }),
      box(x - 40, 744, 80, 14, { r: 5, fill: rubber[1] }),
    );
  return group(
    foot(280),
    foot(920),
    tube('M190 740H1006', 28, black),
    specks(226, 200, 728, 800, 24, 130, ['#8f553f', '#6b4634', '#b59f74'], [1.5, 5], 0.8),
    blurred(4, stroke('M240 752H960', '#7d6a49', 8, 0.5)),
  );
}
