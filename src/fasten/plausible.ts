import { of, type PlausibleBounds, type Quantity, requirePlausible } from '../quantity/index.js';
import { boltLoads, type Strength, strengthOf, unknownGrade } from './grades.js';
import { plugTorqueExtremes } from './spark-plug.js';
import { stressAreaMm2, type ThreadForm } from './thread-form.js';
import { threadWords } from './threads.js';
import { torqueForClamp } from './torque.js';

export interface TorqueBounds {
  readonly lowNm: number;
  readonly highNm: number;
  readonly because: string;
}

const slipperiest = 0.12;
/** The usual one: bare steel (Handbook of Bolts and Bolted Joints, IFI). */
const usualFactor = 0.2;
/** What holds engines together as a rule (common practice). */
const usualGrade = { inch: 'SAE 5', metric: '8.8' } as const;
const roughest = 0.3;
const strongestGrade = { inch: 'SAE 8', metric: '12.9' } as const;

/** Numbered inch screws, which SAE J429 leaves out, are given the same figures. */
function strengthAtListedSize(grade: string, form: ThreadForm): Strength {
  const atListedSize = form.system === 'inch' ? { ...form, majorMm: Math.max(form.majorMm, 6.35) } : form;
  return strengthOf(grade, atListedSize);
}

/** "an SAE 5 bolt", "a class 8.8 bolt" */
export const boltWords = (grade: string): string =>
  grade.startsWith('SAE') ? `an ${grade} bolt` : `a class ${grade} bolt`;

export interface BoltUnderTorque {
  readonly grade: string;
  /** at which it begins to stretch for good, and at which it breaks */
  readonly stretchesNm: number;
  readonly breaksNm: number;
}

/**
 * The torques at which a bolt of this grade stretches and breaks; the usual grade (8.8, SAE 5) when none is known.
 *
 * Method: T = K·d·F with K 0.20 at proof and at tensile load (Mechanical Engineering Design, 9th ed., Eq. 8-27). Oil
 * brings both down by a tenth, plating by more. Example: M6, 8.8: 14.0 and 19.3 N·m.
 */
export function boltUnderTorque(form: ThreadForm, grade?: string): BoltUnderTorque {
  const strength = strengthAtListedSize(grade ?? usualGrade[form.system], form);
  const { majorMm } = form;
  const at = (mpa: number) =>
    torqueForClamp({ clampN: mpa * stressAreaMm2(form), nutFactor: usualFactor, majorMm });
  return {
    grade: strength.grade,
    stretchesNm: at(strength.proofMpa),
    breaksNm: at(strength.tensileMpa),
  };
}

/**
 * The torques that can be meant for a thread, N·m. Outside them a number carries the wrong unit or the wrong thread.
 *
 * High: the whole proof load of the strongest graded bolt (SAE 8, 12.9) with the roughest published K, 0.30: more
 * would stretch any bolt. Low: a quarter of the proof load of the softest bolt (SAE 1, 4.6) with anti-seize, K 0.12:
 * less would hold nothing. Spark plugs are hollow and seal by a gasket: half the least to 1½ times the most that is
 * printed for them; a thread used for both takes the wider.
 * Source of K: Mechanical Engineering Design, 9th ed., Table 8-15; the shares are trade judgement, no source.
 * Example: 5/16-18 gives 1.8 to 67 N·m (16 to 590 in-lb).
 */
export function torqueBounds(form: ThreadForm): TorqueBounds {
  const { majorMm } = form;
  const weak = boltLoads(form, strengthOf(unknownGrade, form)).proofN;
  const strong = boltLoads(form, strengthAtListedSize(strongestGrade[form.system], form)).proofN;
  const bolt = {
    lowNm: torqueForClamp({ clampN: weak / 4, nutFactor: slipperiest, majorMm }),
    highNm: torqueForClamp({ clampN: strong, nutFactor: roughest, majorMm }),
  };
  const printed = plugTorqueExtremes(form);
  if (!printed) return { ...bolt, because: `a ${threadWords(form)} bolt` };
  const plug = { lowNm: printed.lowNm / 2, highNm: printed.highNm * 1.5 };
  const plugOnly = isPlugThread(form);
  return {
    lowNm: plugOnly ? plug.lowNm : Math.min(plug.lowNm, bolt.lowNm),
    highNm: plugOnly ? plug.highNm : Math.max(plug.highNm, bolt.highNm),
    because: plugOnly ? `a ${threadWords(form)} spark plug` : `a ${threadWords(form)} bolt or spark plug`,
  };
}

/** Threads that only spark plugs have here. */
export const isPlugThread = (form: ThreadForm): boolean =>
  form.majorMm >= 14 && plugTorqueExtremes(form) !== undefined;

const likelyUnits: readonly string[] = ['in-lb', 'ft-lb', 'N·m'];

function plausibleTorque(form: ThreadForm): PlausibleBounds {
  const { lowNm, highNm, because } = torqueBounds(form);
  return { low: of(lowNm, 'N·m'), high: of(highNm, 'N·m'), because, likelyUnits };
}

/**
 * The torque itself when it can be meant for the thread; else a QuantityError with the reason and the likely
 * reading: 140 ft-lb on 5/16-18 is refused, and 140 in-lb named.
 */
export function requirePlausibleTorque<Q extends Quantity>(torque: Q, form: ThreadForm): Q {
  return requirePlausible(torque, plausibleTorque(form));
}
