import { geopotentialM, standardAir, standardAirAtMapHeight } from '../../src/engine/atmosphere.js';
import { near, published } from '../support/published.js';

type Row = readonly [m: number, kelvin: number, pascal: number, kgPerM3: number];

const rows = (of: typeof standardAir, table: readonly Row[], half: readonly [number, number, number]) =>
  table.flatMap(([m, kelvin, pascal, kgPerM3]) => {
    const air = of(m);
    return [
      near(`${m} m, K`, air.kelvin, kelvin, half[0]),
      near(`${m} m, Pa`, air.pascal, pascal, half[1]),
      near(`${m} m, kg/m³`, air.kgPerM3, kgPerM3, half[2]),
    ];
  });

const icao = published('ICAO Doc 7488 / ISO 2533, standard atmosphere');
icao('sea level', 'seen', () => rows(standardAir, [[0, 288.15, 101_325, 1.225]], [0.005, 0.5, 5e-6]));

icao('by geopotential height', 'from memory, recomputed', () =>
  rows(
    standardAir,
    [
      [500, 284.9, 95_460.8, 1.16727],
      [1000, 281.65, 89_874.6, 1.11164],
      [1500, 278.4, 84_556.0, 1.05807],
      [2000, 275.15, 79_495.2, 1.00649],
      [2500, 271.9, 74_682.5, 0.95686],
      [3000, 268.65, 70_108.5, 0.90912],
      [3500, 265.4, 65_764.1, 0.86323],
      [4000, 262.15, 61_640.2, 0.81913],
      [5000, 255.65, 54_019.9, 0.73612],
      [6000, 249.15, 47_181.0, 0.6597],
      [7000, 242.65, 41_060.7, 0.5895],
      [8000, 236.15, 35_599.8, 0.52517],
      [9000, 229.65, 30_742.4, 0.46635],
      [10_000, 223.15, 26_436.3, 0.41271],
      [11_000, 216.65, 22_632.1, 0.36392],
    ],
    [0.005, 0.06, 6e-6],
  ),
);

// Pa and kg/m³ printed to four or five figures
const ussa = published('US Standard Atmosphere 1976');
ussa('by geometric height', 'seen', () =>
  rows(
    standardAirAtMapHeight,
    [
      [2000, 275.154, 79_501, 1.0066],
      [4000, 262.17, 61_660, 0.81935],
    ],
    [0.005, 1, 6e-5],
  ),
);
ussa('more heights, geometric', 'from memory, recomputed', () =>
  rows(
    standardAirAtMapHeight,
    [
      [1000, 281.651, 89_876, 1.1117],
      [3000, 268.659, 70_121, 0.90925],
      [5000, 255.676, 54_048, 0.73643],
      [6000, 249.187, 47_217, 0.66011],
      [8000, 236.215, 35_651, 0.52579],
      [10_000, 223.252, 26_499, 0.41351],
    ],
    [0.005, 1.1, 6e-5],
  ),
);
ussa('the two heights differ by 12.7 Pa and 1.4 m at 3000 m', 'calculated', () => [
  near('Pa', standardAirAtMapHeight(3000).pascal - standardAir(3000).pascal, 12.66, 0.05),
  near('m', 3000 - geopotentialM(3000), 1.4, 0.05),
]);

/** Thousands of feet, inches of mercury at 0 °C, °C, as a pilot's handbook prints its table of the standard atmosphere. */
const pilots: readonly (readonly [number, number, number])[] = [
  [0, 29.92, 15],
  [1, 28.86, 13],
  [2, 27.82, 11],
  [3, 26.82, 9.1],
  [4, 25.84, 7.1],
  [5, 24.89, 5.1],
  [6, 23.98, 3.1],
  [7, 23.09, 1.1],
  [8, 22.22, -0.9],
  [9, 21.38, -2.8],
  [10, 20.57, -4.8],
];
// printed by some editions a unit of the last place higher
published("Pilot's Handbook of Aeronautical Knowledge, table of the standard atmosphere")(
  'inches of mercury and °C by thousands of feet',
  'from memory, recomputed',
  () =>
    pilots.flatMap(([thousands, inHg, celsius]) => {
      const air = standardAir(thousands * 304.8);
      return [
        near(`${thousands} 000 ft, inHg`, air.pascal / 3386.389, inHg, 0.0101),
        near(`${thousands} 000 ft, °C`, air.kelvin - 273.15, celsius, 0.051),
      ];
    }),
);
