import { at, blurred, box, clipped, color, group, n, round, scatter, shape, stroke, times } from './ink.mjs';
import { mat, picture, shadow, shadowOf } from './scene.mjs';
import { blotches, specks } from './things.mjs';

/** The exhaust valve under the loupe: its seat band as it was found, or after lapping. */
export function exhaustValve({ lapped = false } = {}) {
  return picture(
    mat(lapped ? 73 : 71, '#c6bdaa'),
    holder(),
    standing(lapped),
    lapped ? lappingThings() : loupe(),
  );
}

function holder() {
  return group(
    shadow(430, 800, 300, 50, 0.5),
    shape('M210 640H650L700 790H160Z', { fill: '#b08d5c' }),
    shape('M160 790H700V846H160Z', { fill: '#8f6f45' }),
    times(7, (i) =>
      stroke(
        `M${n(196 - i * 5)} ${n(668 + i * 19)}Q430 ${n(660 + i * 19)} ${n(664 + i * 5)} ${n(672 + i * 19)}`,
        '#6d5232',
        2.4,
        0.45,
      ),
    ),
    round(430, 704, 58, { ry: 24, fill: '#2b2016' }),
  );
}

const top = 330;

const neck = `M218 ${top + 96}C330 ${top + 136} 398 ${top + 190} 402 ${top + 320}V706Q430 720 458 706V${top + 320}C462 ${top + 190} 530 ${top + 136} 642 ${top + 96}Z`;

/** The valve head from a little above: crown, margin, face with its band, neck and stem. */
function standing(lapped) {
  return group(
    shape(neck, { fill: 'url(#steel-h)' }),
    !lapped &&
      clipped('neck', neck, [
        `<path d="${neck}" fill="url(#burnt-v)" opacity="0.75"/>`,
        blotches(701, 230, top + 90, 400, 200, 22, '#1f1a16', [16, 44], 0.7),
        specks(702, 230, top + 90, 400, 230, 170, ['#1f1a16', '#9c8a75'], [1.4, 5], 0.7),
        `<rect x="390" y="${top + 330}" width="80" height="80" fill="url(#steel-h)" opacity="0.85"/>`,
      ]),
    face(lapped),
    crown(lapped),
  );
}

const faceOutline = `M152 ${top + 24}A278 104 0 0 0 708 ${top + 24}L642 ${top + 96}A212 80 0 0 1 218 ${top + 96}Z`;

/** A ring on the face between two ellipses; `width` says how wide it is at each turn, seen from the front. */
function band(width, middle) {
  const point = (i, offset) => {
    const turn = (i / 48) * Math.PI;
    const t = middle + offset * width(i / 48);
    const [rx, ry, down] = [278 - 66 * t, 104 - 24 * t, 24 + 72 * t];
    return `${n(430 - rx * Math.cos(turn))} ${n(top + down + ry * Math.sin(turn))}`;
  };
  const there = times(49, (i) => point(i, -1));
  const back = times(49, (i) => point(48 - i, 1));
  return `M${[...there, ...back].join('L')}Z`;
}

function face(lapped) {
  const even = () => 0.15;
  const uneven = (t) => (t > 0.58 && t < 0.74 ? 0.03 : 0.1 + 0.2 * Math.abs(Math.sin(t * 5.2)));
  return group(
    shape(faceOutline, { fill: lapped ? 'url(#steel-h)' : '#77695c' }),
    clipped('face', faceOutline, [
      !lapped && blotches(703, 160, top + 40, 540, 150, 16, '#2b241e', [14, 40], 0.6),
      `<path d="${band(lapped ? even : uneven, lapped ? 0.48 : 0.52)}" fill="${lapped ? '#a7adae' : '#cfccc3'}" stroke="${color.ink}" stroke-width="1.6"/>`,
      lapped && `<path d="${band(() => 0.05, 0.44)}" fill="#e9ebea" opacity="0.8"/>`,
      !lapped && burntGap(),
      !lapped && specks(704, 170, top + 50, 520, 150, 130, ['#2b241e', '#4a3d33'], [1.4, 4.6], 0.75),
    ]),
    stroke(`M218 ${top + 96}A212 80 0 0 0 642 ${top + 96}`, color.ink, 2.4, 0.9),
  );
}

/** Where it did not close: the band breaks off and the gas has blown past. */
function burntGap() {
  return group(
    blurred(
      4,
      shape(
        `M500 ${top + 122}Q560 ${top + 100} 620 ${top + 70}L598 ${top + 150}Q548 ${top + 176} 510 ${top + 182}Z`,
        { fill: '#120e0b', width: 0, more: 'opacity="0.8"' },
      ),
    ),
    stroke(`M520 ${top + 130}l26 38M552 ${top + 118}l22 42M584 ${top + 100}l16 36`, '#090706', 5, 0.8),
    times(9, (i) =>
      round(520 + i * 10, top + 128 + ((i * 29) % 34), 3 + (i % 3), { fill: '#0d0a08', width: 0 }),
    ),
  );
}

function crown(lapped) {
  const d = `M152 ${top}A278 104 0 0 1 708 ${top}A278 104 0 0 1 152 ${top}Z`;
  return group(
    shape(`M152 ${top}V${top + 24}A278 104 0 0 0 708 ${top + 24}V${top}Z`, {
      fill: lapped ? 'url(#steel-h)' : '#8b7c6d',
    }),
    shape(d, { fill: lapped ? '#b9bcbb' : '#8f8171' }),
    clipped('crown', d, [
      `<path d="${d}" fill="url(#steel-h)" opacity="${lapped ? 0.6 : 0.2}"/>`,
      !lapped && blotches(705, 170, top - 90, 520, 180, 18, '#3a3028', [20, 56], 0.6),
      !lapped && blotches(706, 230, top - 70, 400, 130, 9, '#d2c3ab', [16, 44], 0.5),
      !lapped &&
        specks(707, 160, top - 96, 540, 190, 190, ['#221b15', '#d2c3ab', '#5c4d40'], [1.4, 5.4], 0.7),
      lapped &&
        times(5, (i) =>
          round(430, top, 250 - i * 44, {
            ry: 93 - i * 16,
            fill: 'none',
            width: 0,
            more: `stroke="#8d9091" stroke-width="2" opacity="0.6"`,
          }),
        ),
    ]),
    stroke(`M184 ${top - 22}A262 92 0 0 1 430 ${top - 94}`, '#fffdf7', 6, lapped ? 0.9 : 0.4),
    round(430, top, 13, { ry: 5, fill: '#3b3632', width: 2 }),
  );
}

/** A loupe with the worst place of the band in it. */
function loupe() {
  const d = 'M762 330a196 196 0 1 0 392 0a196 196 0 1 0-392 0Z';
  const { between } = scatter(708);
  return group(
    shadowOf(d, 16, 24, 0.4),
    stroke('M1092 500L1186 700', color.ink, 52),
    stroke('M1092 500L1186 700', '#3a3d41', 44),
    stroke('M1086 504L1178 700', '#6c7076', 8, 0.8),
    shape(d, { fill: '#6f6256' }),
    clipped('glass', d, [
      blotches(709, 760, 140, 400, 390, 26, '#2b241e', [24, 58], 0.55),
      shape('M740 250Q860 236 930 300L944 372Q852 330 740 352Z', { fill: '#d6d3ca', width: 2 }),
      shape('M1020 342Q1100 300 1180 318V442Q1100 420 1044 436Z', { fill: '#d6d3ca', width: 2 }),
      stroke('M756 284Q860 268 926 330M1040 376Q1100 344 1160 354', '#fffdf7', 7, 0.8),
      blurred(
        4,
        shape('M916 250Q990 236 1052 290L1062 470Q984 500 918 452Z', {
          fill: '#120e0b',
          width: 0,
          more: 'opacity="0.85"',
        }),
      ),
      times(70, () =>
        round(between(900, 1070), between(240, 470), between(3, 11), {
          ry: between(3, 8),
          fill: '#0a0706',
          width: 0,
          more: `opacity="${n(between(0.4, 0.9))}"`,
        }),
      ),
      specks(710, 770, 140, 380, 390, 120, ['#b7a68f', '#1f1915'], [1.6, 5], 0.7),
      `<path d="M790 210Q850 150 950 146Q850 196 806 300Z" fill="#fff" opacity="0.35"/>`,
    ]),
    round(958, 330, 196, { fill: 'none', width: 0, more: `stroke="${color.ink}" stroke-width="28"` }),
    round(958, 330, 196, { fill: 'none', width: 0, more: 'stroke="#b89a5a" stroke-width="21"' }),
    round(958, 330, 200, { fill: 'none', width: 0, more: 'stroke="#ecd9a4" stroke-width="5" opacity="0.8"' }),
  );
}

/** The lapping stick and what it was done with. */
function lappingThings() {
  const stick = 'M850 700L1010 226Q1034 196 1060 206Q1084 220 1078 254L930 728Z';
  return group(
    shadowOf(stick, 16, 22, 0.4),
    shape(stick, { fill: '#b08d5c' }),
    stroke('M880 690L1030 238', '#d9bd8c', 10, 0.7),
    shape('M812 712Q830 678 890 694Q956 714 958 752Q946 790 888 778Q816 760 812 712Z', {
      fill: 'url(#black-ball)',
    }),
    stroke('M834 716Q850 700 890 708', '#7b8087', 6, 0.8),
    shadow(1044, 590, 92, 70, 0.35),
    round(1040, 566, 90, { ry: 84, fill: 'url(#steel-v)' }),
    round(1040, 560, 74, { ry: 68, fill: '#5b5d5c', width: 2.6 }),
    blotches(711, 980, 500, 120, 120, 9, '#2f3130', [14, 40], 0.7),
    stroke('M1000 540Q1040 512 1082 548', '#9ea1a0', 7, 0.6),
    at(
      790,
      250,
      group(
        box(-64, -40, 128, 80, { r: 8, fill: 'url(#sheet-v)', width: 2.4 }),
        stroke('M-46-16H40M-46 2H46M-46 20H20', '#9fb6bc', 4),
      ),
      { turn: -8 },
    ),
  );
}
