import {
  isoClassOf,
  leastHighShear,
  leastOfOldSae20,
  type Summer,
  summerGrades,
  summerGradesOf,
  type Winter,
  winterGrades,
} from '../../src/engine/oil-grades.js';
import { published, same } from '../support/published.js';

const j300 = published('SAE J300, table of 2015');

/** Cranking limit in mPa·s, at °C; pumping limit, °C; least at 100 °C, mm²/s. */
const winter: Readonly<Record<Winter, readonly number[]>> = {
  '0W': [6200, -35, -40, 3.8],
  '5W': [6600, -30, -35, 3.8],
  '10W': [7000, -25, -30, 4.1],
  '15W': [7000, -20, -25, 5.6],
  '20W': [9500, -15, -20, 5.6],
  '25W': [13000, -10, -15, 9.3],
};
j300('winter grades', 'seen', () =>
  Object.entries(winter).flatMap(([name, [crank, at, pump, least]]) => {
    const grade = winterGrades[name as Winter];
    return [
      same(`${name} cranking`, grade.crankMPaS, crank),
      same(`${name} cranking at`, grade.crankC, at),
      same(`${name} pumping`, grade.pumpC, pump),
      same(`${name} least at 100 °C`, grade.least100, least),
    ];
  }),
);

/** Least and below at 100 °C, mm²/s; least under shear at 150 °C, mPa·s. */
const summer: Readonly<Record<Summer, readonly number[]>> = {
  8: [4, 6.1, 1.7],
  12: [5, 7.1, 2],
  16: [6.1, 8.2, 2.3],
  20: [6.9, 9.3, 2.6],
  30: [9.3, 12.5, 2.9],
  40: [12.5, 16.3, 3.5],
  50: [16.3, 21.9, 3.7],
  60: [21.9, 26.1, 3.7],
};
j300('high-temperature grades', 'seen', () =>
  Object.entries(summer).flatMap(([name, [least, below, shear]]) => {
    const grade = summerGrades[name as Summer];
    return [
      same(`${name} least`, grade.least100, least),
      same(`${name} below`, grade.below100, below),
      same(`${name} under shear`, grade.leastHighShear, shear),
    ];
  }),
);

j300('under shear a 40 has 3.5 with 0W, 5W or 10W, and 3.7 with 15W, 20W, 25W or alone', 'seen', () => [
  ...(['0W', '5W', '10W'] as const).map((light) => same(light, leastHighShear('40', light), 3.5)),
  ...(['15W', '20W', '25W'] as const).map((heavy) => same(heavy, leastHighShear('40', heavy), 3.7)),
  same('alone', leastHighShear('40'), 3.7),
  same('10W-30', leastHighShear('30', '10W'), 2.9),
]);

j300('an SAE 20 began at 5.6 before 2013', 'seen', () => [same('mm²/s', leastOfOldSae20, 5.6)]);

j300('12.5 mm²/s is no longer a 30, 16.3 no longer a 40', 'seen', () => [
  same('12.4999', summerGradesOf(12.4999), ['30']),
  same('12.5', summerGradesOf(12.5), ['40']),
  same('16.3', summerGradesOf(16.3), ['50']),
  same('26.1', summerGradesOf(26.1), []),
]);

/** Each class is its middle ± 10 %: inside at both ends, outside a hundredth beyond. */
published('ISO 3448, viscosity classes')('least and most at 40 °C, mm²/s', 'from memory, recomputed', () =>
  (
    [
      [22, 19.8, 24.2],
      [32, 28.8, 35.2],
      [46, 41.4, 50.6],
      [68, 61.2, 74.8],
      [100, 90, 110],
      [150, 135, 165],
      [220, 198, 242],
    ] as const
  ).flatMap(([vg, least, most]) => [
    same(`VG ${vg}, least`, [isoClassOf(least), isoClassOf(least - 0.01) === vg], [vg, false]),
    same(`VG ${vg}, most`, [isoClassOf(most), isoClassOf(most + 0.01) === vg], [vg, false]),
  ]),
);
