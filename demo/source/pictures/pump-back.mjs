import { engineFeet, frameBehind, railsBefore, tankEnd } from './frame.mjs';
import { at, box, clipped, color, group, number, round, shape, stroke, times } from './ink.mjs';
import { bench, picture, shadow } from './scene.mjs';
import { blotches, bolt, chaff, leaves, runs, screw, specks, tag } from './things.mjs';

/** The pump set seen on its pump: volute, suction in the middle, discharge on top. */
export function pumpBack() {
  return picture(
    bench(19),
    shadow(600, 800, 420, 42, 0.6),
    frameBehind(true),
    airCleanerEdge(),
    mufflerEdge(),
    tankEnd({ x: 392, w: 404, cap: 540, dirty: true }),
    crankcaseRim(),
    engineFeet(true),
    discharge(),
    volute(),
    suction(),
    railsBefore(true),
    tag(262, 236, number(17, 0, 66, 42, color.ink, 6.5), { turn: -6, knot: [30, -50] }),
    leaves(171, [
      [352, 812, 50],
      [424, 846, 40],
      [806, 838, 46],
      [1010, 826, 52],
    ]),
    chaff(172, 260, 790, 760, 70, 26),
    specks(173, 240, 790, 760, 90, 120, ['#6b5737', '#3f321f', '#8d7a52'], [1.2, 4], 0.6),
  );
}

function airCleanerEdge() {
  return group(
    box(312, 352, 110, 126, { r: 16, fill: 'url(#black-h)' }),
    times(4, (i) => stroke(`M328 ${382 + i * 22}H406`, '#5b5f65', 4)),
    `<rect x="314" y="354" width="106" height="50" rx="14" fill="url(#dust-down)"/>`,
  );
}

function mufflerEdge() {
  return group(
    box(776, 336, 122, 146, { r: 18, fill: 'url(#burnt-v)' }),
    stroke('M790 372H884M790 410H884M790 448H884', '#4b3f38', 5),
    shape('M898 366H926V388H898', { fill: '#5e3526', width: 2.6 }),
    blotches(151, 782, 346, 110, 130, 10, color.rust, [10, 30], 0.7),
    specks(152, 780, 342, 114, 136, 120, ['#5e3526', '#b0745a', '#3a2a22'], [1, 3.4], 0.8),
  );
}

const rim = 'M420 470Q420 330 560 326H650Q784 330 784 470V690H420Z';

function crankcaseRim() {
  return group(
    shape(rim, { fill: 'url(#metal-v)' }),
    clipped('rim-dirt', rim, [
      blotches(153, 420, 340, 370, 340, 14, '#5d4a2d', [24, 60], 0.45),
      specks(154, 424, 334, 356, 350, 140, ['#d9c8a1', '#5f4c2c'], [1, 3], 0.5),
    ]),
  );
}

function discharge() {
  return group(
    shape('M556 402V330H660V402Z', { fill: 'url(#metal-h)' }),
    box(540, 312, 136, 26, { r: 6, fill: 'url(#metal-h)' }),
    shape('M562 312V262H654V312Z', { fill: 'url(#black-h)' }),
    times(4, (i) => stroke(`M562 ${272 + i * 11}H654`, '#191b1d', 2.4, 0.8)),
    box(554, 252, 108, 14, { r: 5, fill: 'url(#black-h)' }),
    round(608, 254, 44, { ry: 9, fill: '#121416', width: 2.4 }),
    shape('M690 372V352H724V372', { fill: 'url(#metal-h)', width: 2.4 }),
    shape('M684 352H730L724 334H690Z', { fill: 'url(#black-h)', width: 2.4 }),
  );
}

const casing =
  'M608 356C512 356 446 424 446 512C446 606 518 672 610 672C704 672 770 604 770 512C770 466 750 420 716 390L656 372Z';

function volute() {
  const around = times(9, (i) => {
    const turn = (i * 40 + 12) * (Math.PI / 180);
    return bolt(608 + 136 * Math.cos(turn), 514 + 136 * Math.sin(turn), 9, { turn: i * 13 });
  });
  return group(
    `<path d="${casing}" transform="translate(8 12)" fill="#1a1409" opacity="0.45" filter="url(#blur-8)"/>`,
    shape(casing, { fill: 'url(#metal-ball)' }),
    stroke('M476 512C476 440 528 388 604 386', '#fbfaf5', 8, 0.7),
    stroke('M500 590C530 640 590 652 640 644', '#6d6a64', 6, 0.45),
    round(608, 514, 112, { fill: 'none', width: 2.4, more: 'opacity="0.55"' }),
    around,
    shape('M588 668H628L622 692H594Z', { fill: 'url(#metal-v)', width: 2.6 }),
    bolt(608, 660, 11, { turn: 0 }),
    clipped('volute-dirt', casing, [
      runs(155, 560, 370, 110, 7, 230, '#8fa79a'),
      runs(156, 520, 560, 180, 8, 110, '#8f553f'),
      blotches(157, 456, 560, 300, 110, 12, '#5d4a2d', [20, 56], 0.5),
      specks(158, 450, 362, 316, 306, 180, ['#e8e2d2', '#8d7a52', '#5f4c2c'], [1, 3], 0.5),
    ]),
  );
}

function suction() {
  const lug = (turn) =>
    at(608, 514, group(box(-16, -98, 32, 30, { r: 8, fill: 'url(#metal-v)', width: 2.6 })), { turn });
  const thread = times(5, (i) =>
    round(608, 514, 66 - i * 4, { fill: 'none', width: 1.8, more: 'opacity="0.5"' }),
  );
  return group(
    [30, 150, 270].map(lug),
    round(608, 514, 80, { fill: 'url(#metal-ball)' }),
    round(608, 514, 69, { fill: '#8d8a83', width: 2.4 }),
    thread,
    round(608, 514, 48, { fill: '#17191b', width: 2.6 }),
    stroke('M572 536Q596 566 638 550', '#3b4247', 6, 0.8),
    stroke('M608 482l22 14-6 28M608 482l-22 12 4 26', '#33383c', 7, 0.9),
    specks(159, 552, 460, 112, 110, 60, ['#8f553f', '#6b4634'], [1, 3], 0.7),
    screw(690, 598, 6, 10),
  );
}
