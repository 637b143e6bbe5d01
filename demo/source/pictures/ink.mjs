/** The drawing hand: numbers kept short, colors of the house, a seeded scatter, and shapes that every picture uses. */

/** Paper and ink, one accent, warm grays; rust and straw only where dirt is the subject. */
export const color = {
  paper: '#f4efe4',
  sheet: '#fffdf7',
  ink: '#26282b',
  soft: '#575e68',
  rule: '#d8d0bf',
  accent: '#1d5c70',
  accentLight: '#4f93a6',
  accentDark: '#123c4a',
  metalLight: '#efece4',
  metal: '#c4c0b6',
  metalDark: '#8d8a83',
  iron: '#4a4d51',
  rust: '#8f553f',
  rustDark: '#5e3526',
  straw: '#c29a4c',
  soot: '#2b2623',
  mark: '#f3eddc',
};

/** Two digits are finer than a pixel, and every machine writes them alike. */
export const n = (value) => String(Math.round(value * 100) / 100);

/** Joins shapes; what is false or missing draws nothing. */
export const group = (...parts) => parts.flat(9).filter(Boolean).join('\n');

/** A repeatable scatter: the same seed gives the same leaves in the same places. */
export function scatter(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return { next, between: (low, high) => low + (high - low) * next() };
}

export const times = (count, draw) => Array.from({ length: count }, (_, i) => draw(i));

const line = (width) =>
  `stroke="${color.ink}" stroke-width="${n(width)}" stroke-linejoin="round" stroke-linecap="round"`;

export function shape(d, { fill = 'none', width = 3, more = '' } = {}) {
  return `<path d="${d}" fill="${fill}" ${width > 0 ? line(width) : ''} ${more}/>`;
}

export function box(x, y, w, h, { r = 6, fill = 'url(#metal-v)', width = 3, more = '' } = {}) {
  return `<rect x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}" rx="${n(r)}" fill="${fill}" ${width > 0 ? line(width) : ''} ${more}/>`;
}

export function round(x, y, rx, { ry = rx, fill = 'url(#metal-ball)', width = 3, more = '' } = {}) {
  return `<ellipse cx="${n(x)}" cy="${n(y)}" rx="${n(rx)}" ry="${n(ry)}" fill="${fill}" ${width > 0 ? line(width) : ''} ${more}/>`;
}

/** A stroke of one tone, without an ink line round it. */
export function stroke(d, tone, width, opacity = 1) {
  return `<path d="${d}" fill="none" stroke="${tone}" stroke-width="${n(width)}" stroke-linejoin="round" stroke-linecap="round" opacity="${n(opacity)}"/>`;
}

export const at = (x, y, drawn, { turn = 0, scale = 1 } = {}) =>
  `<g transform="translate(${n(x)} ${n(y)}) rotate(${n(turn)}) scale(${n(scale)})">${drawn}</g>`;

export const faded = (opacity, ...parts) => `<g opacity="${n(opacity)}">${group(parts)}</g>`;
export const blurred = (by, ...parts) => `<g filter="url(#blur-${by})">${group(parts)}</g>`;
export const clipped = (id, d, ...parts) =>
  `<clipPath id="${id}"><path d="${d}"/></clipPath><g clip-path="url(#${id})">${group(parts)}</g>`;

/** A round bar or tube along a path, lit along its middle. */
export function tube(d, width, [dark, middle, light] = ['#30353b', '#4d545c', '#7d848c']) {
  return group(
    stroke(d, color.ink, width + 5),
    stroke(d, dark, width),
    stroke(d, middle, width * 0.62),
    stroke(d, light, width * 0.2, 0.9),
  );
}

export const bright = ['#8d8a83', '#c9c5bb', '#f4f1ea'];
export const black = ['#1f2124', '#34373b', '#5d6166'];
export const rubber = ['#232427', '#303236', '#4a4d52'];

/** Strokes of the digits on a 4 × 6 grid: no type face is needed, so the picture does not hang on the fonts of a machine. */
const digits = {
  0: 'M2 0C.6 0 0 1.4 0 3S.6 6 2 6 4 4.6 4 3 3.4 0 2 0Z',
  1: 'M.8 1.2 2.2 0V6',
  2: 'M.2 1.6C.2.4 1 0 2 0c1.2 0 1.9.7 1.9 1.6C3.9 3 .2 4.6.1 6H4',
  3: 'M.3 1C.7.3 1.2 0 2 0c1 0 1.7.6 1.7 1.4S3 2.8 1.6 2.8C3.2 2.8 4 3.5 4 4.4 4 5.4 3.2 6 2 6 1.1 6 .4 5.6 0 5',
  4: 'M3 6V0L0 4.2H4',
  5: 'M3.6 0H.8L.5 2.6C1 2.3 1.5 2.2 2 2.2 3.2 2.2 4 3 4 4.1S3.2 6 2 6C1.1 6 .4 5.6 0 5',
  6: 'M3.4.4C1.4.2 0 1.8 0 4 0 5.2.8 6 2 6s2-.8 2-1.9S3.2 2.3 2 2.3.2 3 .1 3.9',
  7: 'M0 0H4L1.4 6',
  8: 'M2 0C1 0 .4.6.4 1.4S1 2.8 2 2.8s1.6.6 1.6 1.4M2 0C3 0 3.6.6 3.6 1.4S3 2.8 2 2.8.1 3.4.1 4.4.9 6 2 6s1.9-.6 1.9-1.6',
  9: 'M.6 5.6C2.6 5.8 4 4.2 4 2 4 .8 3.2 0 2 0S0 .8 0 1.9.8 3.7 2 3.7s1.8-.7 1.9-1.6',
};

/** A number drawn by hand, `high` pixels tall, its middle at x, y. */
export function number(value, x, y, high, tone, width = high / 7) {
  const scale = high / 6;
  const signs = String(value).split('');
  const start = x - (signs.length * 5.4 - 1.4) * scale * 0.5;
  return signs
    .map((sign, i) => {
      const place = `translate(${n(start + i * 5.4 * scale)} ${n(y - high / 2)}) scale(${n(scale)})`;
      return `<path transform="${place}" d="${digits[sign]}" fill="none" stroke="${tone}" stroke-width="${n(width / scale)}" stroke-linecap="round" stroke-linejoin="round"/>`;
    })
    .join('');
}
