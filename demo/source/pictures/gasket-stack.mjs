import { at, blurred, box, clipped, group, n, round, shape, stroke, times } from './ink.mjs';
import { mat, picture, shadowOf } from './scene.mjs';
import { blotches, leaf, specks } from './things.mjs';

const outline =
  'M-118-58Q-150-58-150-26V26Q-150 58-118 58H-84Q-60 104 0 104Q60 104 84 58H118Q150 58 150 26V-26Q150-58 118-58H84Q60-104 0-104Q-60-104-84-58Z';
const studs = [-112, 112];

/** Carburetor, gasket, insulator, gasket, in the order in which they came off the studs; the slot decides which gasket is which. */
export function gasketStack() {
  return picture(
    mat(53, '#c9c2b4'),
    tape(),
    at(226, 250, flange(), { turn: -4 }),
    at(600, 250, gasket(false, 601), { turn: 3 }),
    at(976, 254, insulator(), { turn: -2 }),
    at(930, 650, gasket(true, 602), { turn: -4 }),
    at(420, 650, studsInPort(), { turn: 2 }),
    arrows(),
    leaf(88, 828, 54, 320, '#a87a45'),
  );
}

function tape() {
  return group(
    shape('M40 426L1150 414L1156 446L44 458Z', { fill: '#ded6c3', width: 0, more: 'opacity="0.8"' }),
    stroke('M70 441L1130 430', '#9b917b', 2.5, 0.6),
    times(12, (i) => stroke(`M${96 + i * 90} ${n(433 - i * 0.9)}v14`, '#9b917b', 2.5, 0.6)),
  );
}

function thick(drawn, d, strength = 0.45) {
  return group(shadowOf(d, 10, 16, strength), drawn);
}

function flange() {
  return thick(
    group(
      carburetorBehind(),
      shape(outline, { fill: 'url(#metal-ball)' }),
      stroke('M-138-30Q-136-46-116-46H-80Q-56-90 0-92', '#fbfaf5', 5, 0.8),
      round(0, 0, 62, { fill: '#1d1f21' }),
      round(0, 4, 50, { fill: '#3a3d41', width: 2 }),
      shape('M-50 0Q0-30 50 4Q0 36-50 0Z', { fill: '#c7a860', width: 2.4 }),
      studs.map((x) => round(x, 0, 19, { fill: '#17191b', width: 2.4 })),
      round(-18, 82, 6, { fill: '#17191b', width: 1.6 }),
      clipped('flange', outline, [
        specks(603, -150, -104, 300, 208, 110, ['#6b5737', '#a8702a', '#4a2a10'], [1.2, 4], 0.6),
      ]),
    ),
    outline,
  );
}

/** What shows of the carburetor behind its flange: throttle lever above, bowl below. */
function carburetorBehind() {
  return group(
    shadowOf('M-76 60H76V120Q76 158 0 160Q-76 158-76 120Z', 8, 12, 0.4),
    shape('M-76 60H76V120Q76 158 0 160Q-76 158-76 120Z', { fill: 'url(#metal-h)' }),
    stroke('M-74 112Q0 126 74 112', '#6d6a64', 3, 0.7),
    shape('M-14-90V-146H14V-90Z', { fill: 'url(#steel-h)', width: 2.6 }),
    shape('M-24-138L62-168Q78-170 78-156Q78-146 66-142L-20-116Z', { fill: 'url(#steel-v)', width: 2.6 }),
    round(64, -156, 5, { fill: '#17191b', width: 1.6 }),
  );
}

function gasket(hasSlot, seed) {
  const hole = 'M-62 0A62 62 0 1 0 62 0A62 62 0 1 0-62 0Z';
  const slot = 'M52 40L92 74Q98 82 90 88Q82 94 76 88L38 54Z';
  const openings = `${hole}${studs.map((x) => `M${x - 19} 0a19 19 0 1 0 38 0a19 19 0 1 0-38 0Z`).join('')}${hasSlot ? slot : ''}`;
  return group(
    `<path d="${outline}${openings}" transform="translate(6 9)" fill="#1a1409" fill-rule="evenodd" opacity="0.4" filter="url(#blur-4)"/>`,
    shape(outline + openings, { fill: hasSlot ? '#7d776b' : '#8b857a', more: 'fill-rule="evenodd"' }),
    clipped(`gasket-${seed}`, outline, [
      blotches(seed, -140, -96, 280, 192, 9, '#3a2a18', [16, 50], 0.5),
      specks(seed + 10, -146, -100, 292, 200, 120, ['#b4ad9e', '#4d473c', '#c8c2b5'], [0.8, 2.4], 0.7),
    ]),
    shape(openings, { fill: 'none', width: 2.6 }),
    `<path d="${openings}" fill="#c9c2b4" stroke="#26282b" stroke-width="2.6"/>`,
    stroke('M-136-28Q-134-44-116-44H-82Q-58-88 0-90', '#c9c4b8', 3, 0.6),
  );
}

function insulator() {
  const side = 'M-150 26V62Q-150 94-118 94H-84Q-60 140 0 140Q60 140 84 94H118Q150 94 150 62V26Z';
  return thick(
    group(
      shape(side, { fill: '#44251f' }),
      shape(outline, { fill: '#7a463a' }),
      stroke('M-138-30Q-136-46-116-46H-80Q-56-90 0-92', '#b98272', 5, 0.8),
      round(0, 0, 62, { fill: '#241512' }),
      stroke('M-56 22A60 60 0 0 0 50 34', '#8d5a4c', 5, 0.7),
      studs.map((x) => round(x, 0, 19, { fill: '#17110f', width: 2.4 })),
      shape('M52 40L92 74Q98 82 90 88Q82 94 76 88L38 54Z', { fill: '#241512', width: 2.4 }),
      clipped('insulator', outline, [
        blotches(604, -140, -90, 280, 180, 7, '#2b1814', [16, 44], 0.5),
        specks(605, -146, -100, 292, 200, 70, ['#b98272', '#2b1814'], [1, 3], 0.6),
      ]),
    ),
    `${outline}${side}`,
    0.5,
  );
}

function studsInPort() {
  const face = 'M-210-132H210V150H-210Z';
  return group(
    shadowOf(face, 12, 18, 0.4),
    box(-210, -132, 420, 282, { r: 22, fill: 'url(#metal-v)' }),
    times(5, (i) => stroke(`M-200 ${-108 + i * 58}H-160M160 ${-108 + i * 58}H200`, '#6d6a64', 8, 0.6)),
    round(0, 6, 64, { fill: '#191b1d' }),
    shape('M-40-24Q0-46 42-20Q56 18 30 44Q-8 56-38 36Q-58 8-40-24Z', { fill: '#c8463a', width: 2.6 }),
    stroke('M-20-16Q8-6 18 26M10-26Q-18 4-8 36', '#8e2f27', 4, 0.8),
    shape('M26 40L70 96L58 106L12 48Z', { fill: '#c8463a', width: 2.4 }),
    studs.map((x) =>
      group(
        round(x, 6, 26, { fill: '#8d8a83', width: 2.4 }),
        round(x, 6, 18, { fill: 'url(#steel-v)', width: 2.4 }),
        round(x, 6, 11, { fill: 'none', width: 1.4 }),
        round(x - 5, 0, 4, { fill: '#fff', width: 0, more: 'opacity="0.7"' }),
      ),
    ),
    clipped('port-face', face, [
      blotches(606, -200, -120, 400, 260, 10, '#5d4a2d', [18, 50], 0.4),
      specks(607, -205, -128, 410, 272, 110, ['#6b5737', '#d9c8a1'], [1, 3.4], 0.6),
    ]),
  );
}

/** Chalk on the mat: the order in which the stack lies, and the slot. */
function arrows() {
  const chalk = (d) => group(blurred(2, stroke(d, '#fffdf4', 8, 0.55)), stroke(d, '#fffdf4', 4.5, 0.9));
  return group(
    chalk('M404 250H424M414 240L426 250L414 260'),
    chalk('M782 250H802M792 240L804 250L792 260'),
    chalk('M1120 372Q1160 440 1112 520M1138 504L1110 523L1106 490'),
    chalk('M742 652H682M696 640L680 652L696 664'),
    chalk('M1128 800Q1088 812 1048 762M1048 790L1044 758L1074 768'),
  );
}
