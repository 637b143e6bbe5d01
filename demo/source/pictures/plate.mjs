import {
  at,
  blurred,
  clipped,
  color,
  faded,
  group,
  n,
  round,
  scatter,
  shape,
  stroke,
  times,
} from './ink.mjs';
import { picture, wall } from './scene.mjs';
import { blotches, bolt, runs, screw, specks } from './things.mjs';

const plateOutline = 'M360 330L812 306L826 528L372 552Z';

/** Where the plate should be: a pale patch, two rivets, a rag of foil with nothing left on it to read. */
export function platePlace() {
  return picture(
    wall('url(#paint-v)'),
    coverShape(),
    patch(),
    foil(),
    rivets(),
    scratches(),
    dirt(),
    lampLight(),
  );
}

function coverShape() {
  return group(
    shape('M-40 180Q300 96 620 108Q1000 122 1260 250V-40H-40Z', { fill: '#17495a', width: 0 }),
    stroke('M-40 190Q300 106 620 118Q1000 132 1260 260', '#0c2f3a', 10, 0.9),
    stroke('M-40 203Q300 119 620 131Q1000 145 1260 273', '#9ccad5', 4, 0.7),
    shape('M-40 720Q360 800 760 770Q1040 748 1260 650V960H-40Z', { fill: '#103c4a', width: 0 }),
    stroke('M-40 712Q360 792 760 762Q1040 740 1260 642', '#9ccad5', 4, 0.45),
    stroke('M-40 722Q360 802 760 772Q1040 750 1260 652', '#0a2731', 9, 0.9),
    fan(1010, 470),
    bolt(180, 262, 34, { turn: 18 }),
    bolt(168, 668, 34, { turn: 47 }),
  );
}

function fan(x, y) {
  const slot = (turn) =>
    at(x, y, shape('M-16-104L-26-190Q0-212 26-190L16-104Q0-92-16-104Z', { fill: '#0d232a', width: 3 }), {
      turn,
    });
  return group(
    round(x, y, 236, { fill: 'none', width: 5, more: 'opacity="0.55"' }),
    times(12, (i) => slot(i * 30)),
    round(x, y, 82, { fill: 'url(#black-ball)', width: 4 }),
  );
}

function patch() {
  return group(
    `<path d="${plateOutline}" transform="translate(3 5)" fill="#0b2b35" opacity="0.5" filter="url(#blur-4)"/>`,
    shape(plateOutline, { fill: '#5f97a5', width: 2.4 }),
    clipped('patch', plateOutline, [
      blotches(301, 380, 320, 430, 220, 16, '#b9a87e', [20, 70], 0.6),
      specks(302, 370, 310, 450, 236, 170, ['#2a6b7f', '#cbb892', '#7d6a49'], [1.4, 5], 0.7),
      stroke('M392 352l180 150M430 340l120 190M620 330l-150 200M700 326l80 170', '#7fb0bc', 3, 0.5),
    ]),
  );
}

const scrap =
  'M700 316L808 312L820 440L786 452L768 428L748 470L724 452L716 476L690 440L702 404L684 388L706 362Z';

/** What is left of the foil: worn gray where letters may have been. */
function foil() {
  const { between } = scatter(303);
  const ghosts = times(7, (i) =>
    stroke(
      `M${n(716 + (i % 2) * 8)} ${n(344 + i * 14)}h${n(between(20, 74))}`,
      '#8f9294',
      between(4, 7),
      0.34,
    ),
  );
  return group(
    `<path d="${scrap}" transform="translate(7 10)" fill="#0b1e25" opacity="0.5" filter="url(#blur-4)"/>`,
    shape(scrap, { fill: 'url(#steel-v)', width: 2.6 }),
    clipped('foil', scrap, [
      blurred(2, ghosts),
      specks(304, 684, 312, 136, 160, 90, ['#6c6f70', '#f4f4f1', '#8f553f'], [1, 3], 0.7),
      stroke('M704 430L812 326M716 448L818 362', '#f6f6f3', 3, 0.6),
    ]),
    shape('M684 388L706 362L728 380Q712 396 702 404Z', { fill: '#e2e3e1', width: 2 }),
  );
}

function rivets() {
  const rivet = (x, y) =>
    group(
      round(x + 3, y + 5, 17, { fill: '#0b1e25', width: 0, more: 'opacity="0.5"' }),
      round(x, y, 16, { width: 2.6 }),
      round(x - 4, y - 5, 5, { fill: '#fff', width: 0, more: 'opacity="0.7"' }),
    );
  const hole = (x, y) =>
    group(
      round(x, y, 11, { fill: '#0a1c22', width: 2.4 }),
      blurred(4, round(x, y + 16, 9, { ry: 22, fill: color.rust, width: 0, more: 'opacity="0.7"' })),
    );
  return group(
    rivet(792, 334),
    rivet(804, 496),
    hole(392, 356),
    hole(402, 524),
    runs(305, 380, 536, 40, 3, 120, color.rust),
  );
}

function scratches() {
  const { between } = scatter(306);
  return times(26, () => {
    const [x, y] = [between(60, 860), between(220, 700)];
    return stroke(
      `M${n(x)} ${n(y)}l${n(between(-70, 90))} ${n(between(-30, 40))}`,
      '#8fbac5',
      between(1, 2.4),
      between(0.2, 0.6),
    );
  });
}

function dirt() {
  return group(
    blotches(307, 0, 560, 900, 240, 18, '#5d4a2d', [40, 130], 0.5),
    runs(308, 80, 140, 800, 10, 300, '#bda880'),
    specks(309, 0, 130, 1200, 620, 320, ['#d9c8a1', '#5f4c2c', '#8d7a52'], [1.4, 4.6], 0.55),
    faded(0.9, screw(600, 690, 16, 20)),
  );
}

/** The cone of a flashlight held low, to raise what may be stamped. */
function lampLight() {
  return `<path d="M-60 900L330 300L860 290L900 580Z" fill="#fff6d8" opacity="0.13" filter="url(#blur-30)"/>`;
}
