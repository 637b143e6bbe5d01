import { group, n, scatter, stroke, times } from './ink.mjs';

export const wide = 1200;
export const high = 900;

const gradient = (id, stops, more = 'x1="0" y1="0" x2="0" y2="1"') =>
  `<linearGradient id="${id}" ${more}>${stops.map(([at, tone, o = 1]) => `<stop offset="${at}" stop-color="${tone}" stop-opacity="${o}"/>`).join('')}</linearGradient>`;
const ball = (id, stops, more = 'cx="0.38" cy="0.32" r="0.8"') =>
  `<radialGradient id="${id}" ${more}>${stops.map(([at, tone, o = 1]) => `<stop offset="${at}" stop-color="${tone}" stop-opacity="${o}"/>`).join('')}</radialGradient>`;
const across = 'x1="0" y1="0" x2="1" y2="0"';

/** Shading that every picture shares; the light falls from the upper left. */
const shading = group(
  gradient('metal-v', [
    [0, '#e9e6dd'],
    [0.35, '#cbc7bd'],
    [1, '#97948c'],
  ]),
  gradient(
    'metal-h',
    [
      [0, '#a8a59d'],
      [0.3, '#efece4'],
      [0.6, '#c4c0b6'],
      [1, '#85827b'],
    ],
    across,
  ),
  ball('metal-ball', [
    [0, '#f3f0e9'],
    [0.5, '#c7c3b9'],
    [1, '#888580'],
  ]),
  gradient('steel-v', [
    [0, '#dfe1e0'],
    [0.5, '#a9acac'],
    [1, '#74787a'],
  ]),
  gradient(
    'steel-h',
    [
      [0, '#7c8082'],
      [0.32, '#e8eae9'],
      [0.62, '#aeb1b1'],
      [1, '#6a6e70'],
    ],
    across,
  ),
  gradient('paint-v', [
    [0, '#4a8b9d'],
    [0.35, '#2a6b7f'],
    [1, '#164756'],
  ]),
  gradient(
    'paint-h',
    [
      [0, '#1a4f5f'],
      [0.3, '#4a8b9d'],
      [0.65, '#276477'],
      [1, '#133f4c'],
    ],
    across,
  ),
  ball('paint-ball', [
    [0, '#5a9cad'],
    [0.45, '#2a6b7f'],
    [1, '#13404e'],
  ]),
  gradient('black-v', [
    [0, '#565a5f'],
    [0.3, '#3a3d41'],
    [1, '#222427'],
  ]),
  gradient(
    'black-h',
    [
      [0, '#2a2c2f'],
      [0.3, '#5a5e63'],
      [0.7, '#35383c'],
      [1, '#1d1f21'],
    ],
    across,
  ),
  ball('black-ball', [
    [0, '#63676c'],
    [0.5, '#383b3f'],
    [1, '#1c1e20'],
  ]),
  gradient('burnt-v', [
    [0, '#8a7d73'],
    [0.4, '#6a5c53'],
    [1, '#3f3733'],
  ]),
  gradient('sheet-v', [
    [0, '#fbf8ef'],
    [1, '#e4dccb'],
  ]),
  gradient('fade-down', [
    [0, '#000', 0.4],
    [1, '#000', 0],
  ]),
  gradient('fade-up', [
    [0, '#000', 0],
    [1, '#000', 0.4],
  ]),
  gradient('dust-down', [
    [0, '#cbb892', 0.9],
    [1, '#cbb892', 0],
  ]),
  ball(
    'vignette',
    [
      [0.55, '#1c1508', 0],
      [1, '#1c1508', 0.5],
    ],
    'cx="0.5" cy="0.48" r="0.78"',
  ),
  ball(
    'lamp',
    [
      [0, '#fff8e6', 0.3],
      [1, '#fff8e6', 0],
    ],
    'cx="0.3" cy="0.2" r="0.75"',
  ),
  [2, 4, 8, 16, 30].map(
    (by) =>
      `<filter id="blur-${by}" x="-60%" y="-60%" width="220%" height="220%"><feGaussianBlur stdDeviation="${by}"/></filter>`,
  ),
);

/** One picture: everything between the ground it lies on and the edge that darkens. */
export function picture(ground, ...parts) {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}" height="${high}" viewBox="0 0 ${wide} ${high}"><defs>${shading}</defs>
${group(ground, parts)}
<rect width="${wide}" height="${high}" fill="url(#lamp)"/><rect width="${wide}" height="${high}" fill="url(#vignette)"/></svg>`;
}

const edge = 668;

/** A wall with tools on it and the bench before it; what stands on the bench stands at about y = 760. */
export function bench(seed) {
  return group(
    `<rect width="${wide}" height="${edge}" fill="#ddd5c3"/>`,
    `<g filter="url(#blur-4)" opacity="0.5">${wallTools()}</g>`,
    `<rect y="${edge - 90}" width="${wide}" height="90" fill="url(#fade-up)" opacity="0.35"/>`,
    boards(seed),
  );
}

function wallTools() {
  const hook = (x, y) => `<circle cx="${x}" cy="${y}" r="7" fill="#a79c86"/>`;
  const wrench = (x, y, l) =>
    `<g transform="translate(${x} ${y})"><path d="M-16-14A20 20 0 1 0 16-14L10 2H-10Z" fill="#b9ae99"/><rect x="-9" y="0" width="18" height="${l}" fill="#b9ae99"/><circle cy="${l + 14}" r="19" fill="#b9ae99"/><circle cy="${l + 14}" r="9" fill="#ddd5c3"/></g>`;
  return group(
    [70, 140, 205].map((x, i) => wrench(x, 90 + i * 4, 210 - i * 42)),
    [1010, 1075, 1135].map((x, i) => wrench(x, 100, 120 + i * 40)),
    [70, 140, 205, 1010, 1075, 1135].map((x) => hook(x, 62)),
    `<rect x="0" y="44" width="${wide}" height="14" fill="#c3b79f"/>`,
  );
}

function boards(seed) {
  const { between } = scatter(seed);
  const grain = times(46, () => {
    const y = between(edge + 8, high);
    const x = between(-100, wide);
    const long = between(120, 520);
    return stroke(
      `M${n(x)} ${n(y)}q${n(long / 2)} ${n(between(-7, 7))} ${n(long)} ${n(between(-3, 3))}`,
      '#7b6544',
      between(1, 2.6),
      between(0.12, 0.34),
    );
  });
  const joints = [742, 838].map((y) => stroke(`M-10 ${y}H${wide + 10}`, '#5d4b31', 3, 0.65));
  const knots = times(5, () => {
    const [x, y] = [between(40, wide - 40), between(edge + 30, high - 20)];
    return times(
      3,
      (i) =>
        `<ellipse cx="${n(x)}" cy="${n(y)}" rx="${n(16 - i * 5)}" ry="${n(6 - i * 1.8)}" fill="none" stroke="#6d5636" stroke-width="1.6" opacity="0.4"/>`,
    );
  });
  return group(
    `<rect y="${edge}" width="${wide}" height="${high - edge}" fill="#bda67f"/>`,
    `<rect y="${edge}" width="${wide}" height="${high - edge}" fill="url(#fade-up)" opacity="0.7"/>`,
    grain,
    knots,
    joints,
    `<rect y="${edge}" width="${wide}" height="26" fill="url(#fade-down)" opacity="0.5"/>`,
    stroke(`M-10 ${edge}H${wide + 10}`, '#5d4b31', 3, 0.8),
  );
}

/** A bench mat seen from above, with a weave and old stains. */
export function mat(seed, tone = '#cfc6b4') {
  const { between } = scatter(seed);
  const weave = [
    times(75, (i) => stroke(`M${i * 16} 0V${high}`, '#8d8168', 1, 0.13)),
    times(57, (i) => stroke(`M0 ${i * 16}H${wide}`, '#fff', 1, 0.2)),
  ];
  const stains = times(
    7,
    () =>
      `<ellipse cx="${n(between(0, wide))}" cy="${n(between(0, high))}" rx="${n(between(50, 150))}" ry="${n(between(40, 110))}" fill="#6f6049" opacity="${n(between(0.04, 0.1))}" filter="url(#blur-16)"/>`,
  );
  return group(`<rect width="${wide}" height="${high}" fill="${tone}"/>`, weave, stains);
}

/** Painted sheet metal or a casting that fills the picture. */
export function wall(fill) {
  return `<rect width="${wide}" height="${high}" fill="${fill}"/>`;
}

/** The soft shadow of a thing that stands on the bench or lies on the mat. */
export function shadow(x, y, rx, ry, strength = 0.45) {
  return `<ellipse cx="${n(x)}" cy="${n(y)}" rx="${n(rx)}" ry="${n(ry)}" fill="#1a1409" opacity="${n(strength)}" filter="url(#blur-16)"/>`;
}
export const shadowOf = (d, dx = 14, dy = 18, strength = 0.4) =>
  `<path d="${d}" transform="translate(${dx} ${dy})" fill="#1a1409" opacity="${strength}" filter="url(#blur-8)"/>`;
