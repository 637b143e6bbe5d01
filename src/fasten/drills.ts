import { mmPerInch } from './thread-form.js';

export interface Drill {
  /** "#7", "F", "5/16 in", "6.8 mm" */
  readonly name: string;
  readonly set: 'number' | 'letter' | 'fraction' | 'metric';
  readonly diameterMm: number;
}

/** #1 to #60, thousandths of an inch ×10. Source: ASME B94.11M, twist drills (from memory). */
const numberTenThousandths = [
  2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695,
  1660, 1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065,
  1040, 1015, 995, 980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430,
  420, 410, 400,
];

/** A to Z, thousandths of an inch. Source: ASME B94.11M, twist drills (from memory). */
const letterThousandths = [
  234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368,
  377, 386, 397, 404, 413,
];

/** "5/16" for 20 sixty-fourths. */
function fraction(sixtyFourths: number): string {
  let [top, bottom] = [sixtyFourths, 64];
  while (top % 2 === 0 && bottom > 1) [top, bottom] = [top / 2, bottom / 2];
  return bottom === 1 ? `${top}` : `${top}/${bottom}`;
}

const count = (n: number) => Array.from({ length: n }, (_, i) => i + 1);

const numberDrills: readonly Drill[] = numberTenThousandths.map((size, i) => ({
  name: `#${i + 1}`,
  set: 'number',
  diameterMm: (size / 10_000) * mmPerInch,
}));

const letterDrills: readonly Drill[] = letterThousandths.map((size, i) => ({
  name: String.fromCharCode(65 + i),
  set: 'letter',
  diameterMm: (size / 1000) * mmPerInch,
}));

/** 1/64 to 1 in by sixty-fourths */
const fractionDrills: readonly Drill[] = count(64).map((n) => ({
  name: `${fraction(n)} in`,
  set: 'fraction',
  diameterMm: (n / 64) * mmPerInch,
}));

/** 0.1 mm steps from 1 to 20 mm, as a shop index holds them */
const metricDrills: readonly Drill[] = count(191).map((n) => ({
  name: `${(9 + n) / 10} mm`,
  set: 'metric',
  diameterMm: (9 + n) / 10,
}));

export const inchDrills: readonly Drill[] = [...fractionDrills, ...numberDrills, ...letterDrills].sort(
  (a, b) => a.diameterMm - b.diameterMm,
);
export const drillSets = { inch: inchDrills, metric: metricDrills } as const;
export type DrillSet = keyof typeof drillSets;

/** The drill of the set nearest to a hole size; of two equally near, the smaller. */
export function nearestDrill(holeMm: number, set: DrillSet): Drill {
  const off = (drill: Drill) => Math.abs(drill.diameterMm - holeMm);
  return drillSets[set].reduce((best, drill) => (off(drill) < off(best) ? drill : best));
}

/** The smallest drill of the set that leaves a hole of at least this size; undefined above the set. */
export function nextDrillUp(holeMm: number, set: DrillSet): Drill | undefined {
  return drillSets[set].find((drill) => drill.diameterMm >= holeMm - 1e-9);
}
