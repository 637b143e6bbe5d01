import { meanNoiseRange, noiseRangeBelow } from '../../src/gauge/noise-range.js';
import { near, published } from '../support/published.js';

/** The factor d2 of a control chart for 2 to 25 readings: the mean range of so many, in standard deviations. */
const d2 = [
  1.128, 1.693, 2.059, 2.326, 2.534, 2.704, 2.847, 2.97, 3.078, 3.173, 3.258, 3.336, 3.407, 3.472, 3.532,
  3.588, 3.64, 3.689, 3.735, 3.778, 3.819, 3.858, 3.895, 3.931,
];

published('ASTM STP 15D, control chart factors')('d2 for 2 to 25 readings', 'from memory', () =>
  d2.map((value, i) => near(`${i + 2} readings`, meanNoiseRange(i + 2), value, 5.1e-4)),
);

/** Upper points of the studentized range at infinite degrees of freedom, 2 to 20 readings. */
const upper = {
  0.95: [
    2.77, 3.31, 3.63, 3.86, 4.03, 4.17, 4.29, 4.39, 4.47, 4.55, 4.62, 4.68, 4.74, 4.8, 4.85, 4.89, 4.93, 4.97,
    5.01,
  ],
  0.99: [
    3.64, 4.12, 4.4, 4.6, 4.76, 4.88, 4.99, 5.08, 5.16, 5.23, 5.29, 5.35, 5.4, 5.45, 5.49, 5.54, 5.57, 5.61,
    5.65,
  ],
} as const;

/** The range that n errors stay within with this probability. */
function rangeWithin(part: number, n: number): number {
  let [low, high] = [0, 20];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (noiseRangeBelow(middle, n) < part) low = middle;
    else high = middle;
  }
  return low;
}

const biometrika = published('Biometrika Tables for Statisticians');
for (const part of [0.95, 0.99] as const) {
  biometrika(`studentized range at infinite degrees of freedom, ${part}`, 'from memory', () =>
    upper[part].map((q, i) => near(`${i + 2} readings`, rangeWithin(part, i + 2), q, 5.1e-3)),
  );
}
