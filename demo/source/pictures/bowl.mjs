import { at, blurred, box, clipped, color, group, n, round, scatter, shape, stroke, times } from './ink.mjs';
import { mat, picture, shadowOf } from './scene.mjs';
import { blotches, specks, wire } from './things.mjs';

const cx = 470;
const cy = 440;

/** The carburetor bowl from above with what four winters left in it; float, needle and jet beside it. */
export function bowlWithVarnish() {
  return picture(mat(41), bowl(), floatBeside(), jetBeside(), ring(), rag());
}

function bowl() {
  const outside = `M${cx - 262} ${cy}A262 262 0 1 0 ${cx + 262} ${cy}A262 262 0 1 0 ${cx - 262} ${cy}Z`;
  const inside = `M${cx - 214} ${cy}A214 214 0 1 0 ${cx + 214} ${cy}A214 214 0 1 0 ${cx - 214} ${cy}Z`;
  return group(
    shadowOf(outside, 18, 26, 0.5),
    shape(outside, { fill: 'url(#metal-ball)' }),
    round(cx, cy, 244, { fill: 'none', width: 2, more: 'opacity="0.6"' }),
    stroke(`M${cx - 236} ${cy - 60}A244 244 0 0 1 ${cx - 40} ${cy - 240}`, '#fffdf7', 9, 0.85),
    shape(inside, { fill: '#8a6a34' }),
    clipped('bowl', inside, [varnish(), crust(), shades()]),
    post(),
    drain(),
  );
}

/** Amber where it is thin, nearly black where it pooled. */
function varnish() {
  return group(
    `<radialGradient id="varnish" cx="0.46" cy="0.56" r="0.6"><stop offset="0" stop-color="#3a1f0c"/><stop offset="0.45" stop-color="#6e3f13"/><stop offset="0.8" stop-color="#a8702a"/><stop offset="1" stop-color="#c29a58"/></radialGradient>`,
    `<rect x="${cx - 220}" y="${cy - 220}" width="440" height="440" fill="url(#varnish)"/>`,
    blurred(
      8,
      shape(
        `M${cx - 150} ${cy + 40}Q${cx - 60} ${cy - 60} ${cx + 60} ${cy + 20}T${cx + 170} ${cy + 90}Q${cx + 80} ${cy + 190} ${cx - 60} ${cy + 170}T${cx - 150} ${cy + 40}Z`,
        { fill: '#24130a', width: 0, more: 'opacity="0.75"' },
      ),
    ),
    blotches(402, cx - 200, cy - 200, 400, 400, 26, '#d39a43', [14, 46], 0.5),
    tidelines(),
    stroke(`M${cx - 130} ${cy - 90}Q${cx - 60} ${cy - 150} ${cx + 40} ${cy - 140}`, '#f3d79c', 10, 0.55),
    stroke(`M${cx + 80} ${cy + 60}q40 14 64-20`, '#f3d79c', 7, 0.4),
  );
}

function tidelines() {
  const { between } = scatter(403);
  return times(5, (k) => {
    const r = 196 - k * 19;
    const points = times(40, (i) => {
      const turn = (i * Math.PI) / 20;
      const wobble = r + between(-6, 6);
      return `${n(cx + wobble * Math.cos(turn))} ${n(cy + 6 + wobble * Math.sin(turn))}`;
    });
    return stroke(`M${points.join('L')}Z`, k % 2 ? '#e0b569' : '#4a2a10', 2.4, 0.5);
  });
}

/** Green crust where brass and water met. */
function crust() {
  const { between } = scatter(404);
  const grains = times(210, (i) => {
    const turn = between(-0.3, 2.4);
    const r = between(150, 208) - between(0, 26);
    return `<circle cx="${n(cx + r * Math.cos(turn))}" cy="${n(cy + r * Math.sin(turn))}" r="${n(between(2, 8))}" fill="${['#7fa58a', '#5c8471', '#a9c4ae', '#c9d3b4'][i % 4]}" opacity="${n(between(0.45, 0.95))}"/>`;
  });
  return group(
    grains,
    specks(405, cx - 190, cy - 190, 380, 380, 150, ['#20110a', '#c69b4f', '#7fa58a'], [1.4, 4.6], 0.8),
  );
}

const shades = () =>
  group(
    `<circle cx="${cx}" cy="${cy}" r="216" fill="none" stroke="#120a04" stroke-width="46" opacity="0.4" filter="url(#blur-16)"/>`,
    `<path d="M${cx - 230} ${cy - 230}H${cx + 230}V${cy - 120}Q${cx} ${cy - 220} ${cx - 230} ${cy - 60}Z" fill="#120a04" opacity="0.35" filter="url(#blur-16)"/>`,
  );

function post() {
  return group(
    round(cx + 6, cy + 10, 48, { fill: '#120a04', width: 0, more: 'opacity="0.5" filter="url(#blur-4)"' }),
    round(cx, cy, 44, { fill: '#a48a5a', width: 3 }),
    round(cx, cy, 25, { fill: '#1d150d', width: 2.4 }),
    blotches(406, cx - 36, cy - 36, 72, 72, 6, '#6b8f79', [8, 18], 0.8),
  );
}

function drain() {
  return group(
    shape(`M${cx - 176} ${cy + 190}l-70 66 26 30 76-58Z`, { fill: 'url(#metal-v)' }),
    at(
      cx - 232,
      cy + 262,
      group(box(-24, -18, 48, 36, { r: 5, fill: 'url(#steel-h)' }), stroke('M-8-16V16', color.ink, 5)),
      { turn: -45 },
    ),
  );
}

function floatBeside() {
  const d =
    'M812 196Q812 150 866 150H1002Q1060 150 1060 204V300Q1060 352 1006 352H972V300Q972 262 936 262Q900 262 900 300V352H866Q812 352 812 300Z';
  return at(
    0,
    0,
    group(
      shadowOf(d, 14, 20, 0.45),
      shape(d, { fill: '#d9c9a3' }),
      stroke('M836 190Q842 172 868 172H990', '#f6ecd2', 9, 0.8),
      stroke('M822 300Q830 338 864 340', '#8d744a', 6, 0.5),
      shape('M898 352V392H974V352', { fill: 'url(#steel-v)', width: 2.6 }),
      wire('M868 384H1004', 8),
      shape('M926 392V420H946V392Z', { fill: 'url(#steel-h)', width: 2.4 }),
      shape('M929 420H943V452L936 474L929 452Z', { fill: '#2d2f32', width: 2.4 }),
      clipped('float', d, [
        blotches(407, 820, 160, 230, 180, 10, '#a8702a', [14, 40], 0.7),
        specks(408, 816, 156, 240, 190, 80, ['#6e3f13', '#7fa58a'], [1.2, 3.6], 0.7),
      ]),
    ),
  );
}

function jetBeside() {
  const d = 'M-20-62H20V-38H13V64H-13V-38H-20Z';
  return at(
    930,
    598,
    group(
      shadowOf(d, 10, 14, 0.4),
      shape(d, { fill: '#c7a860', width: 2.6 }),
      stroke('M-8-36V60', '#f0dfae', 4, 0.8),
      times(6, (i) =>
        round(((i % 2) * 2 - 1) * 4, -20 + i * 14, 4.6, { fill: i % 3 ? '#33200f' : '#5c8471', width: 1.4 }),
      ),
      stroke('M-14-50H14', color.ink, 4),
      specks(409, -18, -60, 36, 120, 26, ['#5c8471', '#4a2a10'], [1, 3.4], 0.9),
    ),
    { turn: 58 },
  );
}

function ring() {
  const d = 'M800 742a96 82 0 1 0 192 0a96 82 0 1 0 -192 0';
  return group(
    blurred(
      4,
      `<path d="${d}" fill="none" stroke="#1a1409" stroke-width="13" opacity="0.4" transform="translate(7 10)"/>`,
    ),
    stroke(d, color.ink, 14),
    stroke(d, '#3a3d41', 9),
    stroke(d, '#6c7076', 2.6, 0.8),
    stroke('M974 696l16-10M986 712l15-5', '#b08b55', 3),
  );
}

function rag() {
  const d = 'M1090 640Q1150 596 1260 604V940H1010Q1040 860 1064 800Q1040 720 1090 640Z';
  return group(
    shadowOf(d, -8, 12, 0.35),
    shape(d, { fill: '#e6dfce', width: 2.4 }),
    stroke(
      'M1100 660Q1128 760 1090 900M1150 630Q1170 760 1140 920M1204 620Q1210 770 1190 930',
      '#b7ad97',
      5,
      0.7,
    ),
    blotches(410, 1080, 700, 110, 140, 6, '#7a4a1a', [16, 46], 0.45),
  );
}
