import { centersFor, openBelt, wrapFactor } from '../../src/driven/belt.js';
import { near, published } from '../support/published.js';

const shigley = published('Mechanical Engineering Design, 9th ed., chapter 17');

// the book's centers come from the series, which is 0.01 in short here
shigley('example 17-4: B112 on 7.4 and 11 in', 'from memory', () => {
  const centers = centersFor(113.8 * 25.4, 7.4 * 25.4, 11 * 25.4) / 25.4;
  const wrap =
    (openBelt({ oneMm: 7.4 * 25.4, otherMm: 11 * 25.4, centersMm: 42.4 * 25.4 }).wrapDegrees * Math.PI) / 180;
  return [
    near('centers, in', centers, 42.4, 0.05),
    near('wrap, rad', wrap, 3.057, 5e-4),
    near('exp(0.5123·wrap)', Math.exp(0.5123 * wrap), 4.788, 1e-3),
  ];
});

// the printed table rounds to two figures
shigley('table 17-13: arc of contact, V-pulleys', 'from memory', () =>
  (
    [
      [180, 1],
      [174.3, 0.99],
      [166.5, 0.97],
      [162.7, 0.96],
      [156.9, 0.94],
      [151, 0.93],
      [145.1, 0.91],
      [139, 0.89],
      [132.8, 0.87],
      [126.5, 0.85],
      [120, 0.82],
      [113.3, 0.8],
      [106.3, 0.77],
      [98.9, 0.73],
      [91.1, 0.7],
    ] as const
  ).map(([wrap, k]) => near(`${wrap}°`, wrapFactor(wrap), k, 7e-3)),
);
