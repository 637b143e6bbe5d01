import { EngineError, requirePositive } from './error.js';
import { dynamicViscosity, type ViscosityLine, viscosityAt, viscosityLine } from './viscosity.js';

/** A winter grade: the most it may resist cranking, and where. */
export interface WinterGrade {
  readonly crankMPaS: number;
  readonly crankC: number;
  /** at most 60 000 mPa·s for pumping */
  readonly pumpC: number;
  readonly least100: number;
}

export interface SummerGrade {
  readonly least100: number;
  readonly below100: number;
  /** high-shear viscosity at 150 °C, least, mPa·s; of SAE 40 that with 0W, 5W or 10W */
  readonly leastHighShear: number;
}

/** SAE J300, table of 2015; the lower limit of SAE 20 was 5.6 before 2013. */
export const winterGrades = {
  '0W': { crankMPaS: 6200, crankC: -35, pumpC: -40, least100: 3.8 },
  '5W': { crankMPaS: 6600, crankC: -30, pumpC: -35, least100: 3.8 },
  '10W': { crankMPaS: 7000, crankC: -25, pumpC: -30, least100: 4.1 },
  '15W': { crankMPaS: 7000, crankC: -20, pumpC: -25, least100: 5.6 },
  '20W': { crankMPaS: 9500, crankC: -15, pumpC: -20, least100: 5.6 },
  '25W': { crankMPaS: 13000, crankC: -10, pumpC: -15, least100: 9.3 },
} as const satisfies Readonly<Record<string, WinterGrade>>;
export type Winter = keyof typeof winterGrades;

export const summerGrades = {
  '8': { least100: 4, below100: 6.1, leastHighShear: 1.7 },
  '12': { least100: 5, below100: 7.1, leastHighShear: 2 },
  '16': { least100: 6.1, below100: 8.2, leastHighShear: 2.3 },
  '20': { least100: 6.9, below100: 9.3, leastHighShear: 2.6 },
  '30': { least100: 9.3, below100: 12.5, leastHighShear: 2.9 },
  '40': { least100: 12.5, below100: 16.3, leastHighShear: 3.5 },
  '50': { least100: 16.3, below100: 21.9, leastHighShear: 3.7 },
  '60': { least100: 21.9, below100: 26.1, leastHighShear: 3.7 },
} as const satisfies Readonly<Record<string, SummerGrade>>;
export type Summer = keyof typeof summerGrades;

/** Least viscosity at 100 °C of an SAE 20 before 2013: an old can may hold less than a new one must. */
export const leastOfOldSae20 = 5.6;

/**
 * Least high-shear viscosity at 150 °C, mPa·s, of a grade or of a pair such as 10W-40. Source: SAE J300, table of 2015: a 40
 * with 0W, 5W or 10W has 3.5, with a heavier winter grade or alone 3.7. Example: 10W-40: 3.5; 15W-40: 3.7.
 */
export function leastHighShear(summer: Summer, winter?: Winter): number {
  const light = winter === '0W' || winter === '5W' || winter === '10W';
  return summer === '40' && !light ? 3.7 : summerGrades[summer].leastHighShear;
}

/**
 * The high-temperature grades whose range at 100 °C holds this viscosity; 8 to 20 overlap, so there may be two.
 * Source: SAE J300. Empty below 4 and from 26.1 mm²/s up. Example: 10.5: ["30"]; 7.0: ["12", "16", "20"].
 */
export function summerGradesOf(at100: number): readonly Summer[] {
  requirePositive(at100, 'viscosity100');
  return (Object.keys(summerGrades) as Summer[]).filter(
    (grade) => at100 >= summerGrades[grade].least100 && at100 < summerGrades[grade].below100,
  );
}

/**
 * The ISO viscosity class whose range at 40 °C holds this viscosity, if one does: the midpoint ± 10 %.
 * Source: ISO 3448. Example: 31: 32; 39: none, it lies between 32 and 46.
 */
export function isoClassOf(at40: number): number | undefined {
  requirePositive(at40, 'viscosity40');
  return isoClasses.find((middle) => Math.abs(at40 - middle) <= 0.1 * middle * (1 + 1e-12));
}

export const isoClasses = [
  2.2, 3.2, 4.6, 6.8, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200,
] as const;

export interface OilGrade {
  readonly winter?: Winter;
  readonly summer?: Summer;
  /** of an ordinary oil of the grade, mm²/s: trade judgement, no source */
  readonly at40: number;
  readonly at100: number;
  /** outside air, °C, as engine makers' charts commonly have it: common practice */
  readonly leastC: number;
  readonly mostC: number;
  readonly remark: string;
}

/** The grades sold for small air-cooled engines. Viscosities: trade judgement, no source; temperatures: common practice. */
export const oilGrades = {
  '5W-30': {
    ...{ winter: '5W', summer: '30', at40: 63, at100: 10.6, leastC: -30, mostC: 30 },
    remark: 'the one for frost; mineral oils of this grade are used up faster above 10 °C',
  },
  '10W-30': {
    ...{ winter: '10W', summer: '30', at40: 69, at100: 10.6, leastC: -18, mostC: 35 },
    remark: 'above about 27 °C an air-cooled engine uses more of it: check the level oftener',
  },
  '10W-40': {
    ...{ winter: '10W', summer: '40', at40: 97, at100: 14.4, leastC: -18, mostC: 40 },
    remark: 'not on every maker’s list',
  },
  '15W-40': {
    ...{ winter: '15W', summer: '40', at40: 108, at100: 14.5, leastC: -12, mostC: 45 },
    remark: 'a diesel oil as a rule',
  },
  '20W-50': {
    ...{ winter: '20W', summer: '50', at40: 160, at100: 18, leastC: -5, mostC: 50 },
    remark: 'for heat and worn engines',
  },
  'SAE 30': {
    ...{ summer: '30', at40: 95, at100: 10.9, leastC: 4, mostC: 40 },
    remark: 'hard to start below 4 °C',
  },
  'SAE 40': {
    ...{ summer: '40', at40: 145, at100: 14.3, leastC: 15, mostC: 50 },
    remark: 'for heat',
  },
} as const satisfies Readonly<Record<string, OilGrade>>;
export type OilGradeName = keyof typeof oilGrades;

/**
 * The ASTM D341 line of an ordinary oil of the grade, through its usual viscosities at 40 and 100 °C (trade judgement, no
 * source: an oil of one grade may differ by a tenth). Example: 10W-30 at −10 °C: 1630 mm²/s.
 */
export function gradeLine(grade: OilGradeName): ViscosityLine {
  const { at40, at100 } = oilGrades[grade];
  return viscosityLine({ celsius: 40, mm2PerS: at40 }, { celsius: 100, mm2PerS: at100 });
}

export interface CrankingDrag {
  readonly firstMPaS: number;
  readonly secondMPaS: number;
  /** second over first */
  readonly ratio: number;
}

/**
 * How much harder one grade turns than another at a temperature: the ratio of dynamic viscosities.
 *
 * Method: ASTM D341 lines of ordinary oils of the grades; drag in bearings and on the bore is in proportion to
 * viscosity at a given speed. Newtonian: a multigrade thins under the shear of cranking, so that the true ratio favors
 * it more below about −10 °C. Within a factor of 1.5 at −20 °C. Example: 10W-30 against SAE 30 at −10 °C: 2.9 times.
 */
export function crankingDrag(first: OilGradeName, second: OilGradeName, celsius: number): CrankingDrag {
  const at = (grade: OilGradeName) => dynamicViscosity(viscosityAt(gradeLine(grade), celsius), celsius);
  const [firstMPaS, secondMPaS] = [at(first), at(second)];
  return { firstMPaS, secondMPaS, ratio: secondMPaS / firstMPaS };
}

/**
 * The grades whose usual range covers both the coldest start and the hottest day, thinnest first.
 * Common practice: the engine maker's own chart goes before it. Throws EngineError for a range the wrong way round.
 * Example: −15 to 30 °C: 5W-30, 10W-30, 10W-40.
 */
export function gradesFor(coldestC: number, hottestC: number): readonly OilGradeName[] {
  if (!(coldestC <= hottestC))
    throw new EngineError(
      `the coldest start (${coldestC} °C) lies above the hottest day (${hottestC} °C).`,
      'coldest',
      coldestC,
    );
  return (Object.keys(oilGrades) as OilGradeName[])
    .filter((name) => oilGrades[name].leastC <= coldestC && oilGrades[name].mostC >= hottestC)
    .sort((p, q) => oilGrades[p].at40 - oilGrades[q].at40);
}
