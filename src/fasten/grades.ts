import { FastenError } from './error.js';
import { sources } from './sources.js';
import { mmPerInch, stressAreaMm2, type ThreadForm } from './thread-form.js';

/** Least strength that a grade or property class promises, for the sizes it is given for. */
export interface Strength {
  /** "SAE 5", "8.8" */
  readonly grade: string;
  readonly system: 'inch' | 'metric';
  /** sizes above this … */
  readonly overMm: number;
  /** … up to and with this */
  readonly upToMm: number;
  readonly proofMpa: number;
  readonly yieldMpa: number;
  readonly tensileMpa: number;
  /** how the bolt head shows it */
  readonly headMark: string;
  readonly note?: string;
  readonly source: string;
}

const mpaPerKsi = 6.894757293168361;
const justUnder = (inches: number) => inches * mmPerInch - 0.001;

function sae(
  grade: string,
  [fromIn, toIn]: readonly [number, number],
  [proofKsi, yieldKsi, tensileKsi]: readonly [number, number, number],
  headMark: string,
  note?: string,
): Strength {
  return {
    grade: `SAE ${grade}`,
    system: 'inch',
    overMm: justUnder(fromIn),
    upToMm: toIn * mmPerInch + 0.001,
    proofMpa: proofKsi * mpaPerKsi,
    yieldMpa: yieldKsi * mpaPerKsi,
    tensileMpa: tensileKsi * mpaPerKsi,
    headMark,
    ...(note && { note }),
    source: sources.saeGrades,
  };
}

function iso(
  grade: string,
  [overMm, upToMm]: readonly [number, number],
  [proofMpa, yieldMpa, tensileMpa]: readonly [number, number, number],
): Strength {
  return {
    grade,
    system: 'metric',
    overMm,
    upToMm,
    proofMpa,
    yieldMpa,
    tensileMpa,
    headMark: `${grade} raised or sunk on the head`,
    source: sources.isoStrength,
  };
}

const noMark = 'no mark';
const shortBolts = 'for bolts up to 6 in long; longer ones are made to the figures of Grade 1';
const small = 1.59;

/**
 * SAE J429 grades (proof, yield, tensile; printed in ksi) and ISO 898-1 property classes (MPa), least values.
 *
 * J429 counts 3/4 in into the smaller size range of Grade 2 and 1 in into that of Grade 5; a Grade 2 row above 3/4 in begins beyond it.
 * Class 8.8 has two rows: the proof stress is 580 MPa up to 16 mm. Hobby charts that print 600 for all sizes are wrong.
 */
export const strengths: readonly Strength[] = [
  sae('1', [0.25, 1.5], [33, 36, 60], noMark),
  sae('2', [0.25, 0.75], [55, 57, 74], noMark, shortBolts),
  sae('2', [0.7501, 1.5], [33, 36, 60], noMark),
  sae('4', [0.25, 1.5], [65, 100, 115], noMark, 'studs only'),
  sae('5', [0.25, 1], [85, 92, 120], 'three short lines at 120°'),
  sae('5', [1.0001, 1.5], [74, 81, 105], 'three short lines at 120°'),
  sae('8', [0.25, 1.5], [120, 130, 150], 'six short lines at 60°'),
  iso('4.6', [small, 39], [225, 240, 400]),
  iso('4.8', [small, 39], [310, 340, 420]),
  iso('5.6', [small, 39], [280, 300, 500]),
  iso('5.8', [small, 39], [380, 420, 520]),
  iso('6.8', [small, 39], [440, 480, 600]),
  iso('8.8', [small, 16], [580, 640, 800]),
  iso('8.8', [16, 39], [600, 660, 830]),
  iso('9.8', [small, 16], [650, 720, 900]),
  iso('10.9', [small, 39], [830, 940, 1040]),
  iso('12.9', [small, 39], [970, 1100, 1220]),
];

export const unknownGrade = 'unknown';
export const gradeNames: readonly string[] = [...new Set(strengths.map(({ grade }) => grade)), unknownGrade];

const holds = ({ overMm, upToMm }: Strength, majorMm: number) => majorMm > overMm && majorMm <= upToMm;

const sizeWords = ({ system, overMm, upToMm }: Strength) =>
  system === 'inch'
    ? `${Number((overMm / mmPerInch).toFixed(2))} to ${Number((upToMm / mmPerInch).toFixed(2))} in`
    : `M${Math.ceil(overMm * 10) / 10} to M${upToMm}`;

/**
 * The strength promised by a grade at a bolt's size.
 *
 * `unknown` stands for an unmarked bolt or one of unknown history: it is taken as the lowest grade of its system
 * (SAE 1, class 4.6), and the answer says so. Numbered inch screws lie below the sizes of SAE J429; for an unknown
 * one the same figures are taken, which no standard promises.
 * Throws FastenError for a grade that is not listed, of the other system, or outside its sizes.
 * Example: SAE 5 at 5/16 in gives proof 586 MPa (85 ksi).
 */
export function strengthOf(grade: string, form: ThreadForm): Strength {
  if (grade === unknownGrade) return lowestStrength(form);
  const rows = strengths.filter((row) => row.grade === grade);
  const first = rows[0];
  if (!first) throw new FastenError(`grade "${grade}" is not one of ${gradeNames.join(', ')}`, 'grade');
  if (first.system !== form.system) {
    throw new FastenError(
      `grade ${grade} is for ${first.system} bolts, and the thread is ${form.system}. Inch heads carry lines (SAE grades), metric heads a number such as 8.8`,
      'grade',
    );
  }
  const row = rows.find((candidate) => holds(candidate, form.majorMm));
  if (!row) {
    throw new FastenError(
      `${first.source.split(',')[0]} gives grade ${grade} for ${rows.map(sizeWords).join(' and ')}; this bolt is ${form.majorMm.toFixed(2)} mm`,
      'grade',
    );
  }
  return row;
}

function lowestStrength({ system, majorMm }: ThreadForm): Strength {
  const row = strengths.find(({ grade }) => grade === (system === 'inch' ? 'SAE 1' : '4.6'));
  if (!row || majorMm > row.upToMm) {
    throw new FastenError(`no grade is listed for a bolt of ${majorMm} mm`, 'grade');
  }
  const below = majorMm <= row.overMm ? '; the standard does not reach down to this size' : '';
  return { ...row, note: `unknown bolt, taken as ${row.grade}, the lowest of its system${below}` };
}

export interface BoltLoads {
  readonly proofN: number;
  readonly yieldN: number;
  readonly tensileN: number;
}

/** Proof, yield and breaking load of a bolt, N: stress × tensile stress area. Example: M8 class 8.8 gives 21 200 N proof. */
export function boltLoads(form: ThreadForm, strength: Strength): BoltLoads {
  const areaMm2 = stressAreaMm2(form);
  return {
    proofN: strength.proofMpa * areaMm2,
    yieldN: strength.yieldMpa * areaMm2,
    tensileN: strength.tensileMpa * areaMm2,
  };
}
