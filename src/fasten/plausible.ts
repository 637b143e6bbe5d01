import { of, type PlausibleBounds, type Quantity, requirePlausible } from '../quantity/index.js';
import { boltLoads, type Strength, strengthOf, unknownGrade } from './grades.js';
import { plugTorqueExtremes } from './spark-plug.js';
import type { ThreadForm } from './thread-form.js';
import { threadWords } from './threads.js';
import { torqueForClamp } from './torque.js';

export interface TorqueBounds {
  readonly lowNm: number;
  readonly highNm: number;
  readonly because: string;
}

const slipperiest = 0.12;
const roughest = 0.3;
const strongestGrade = { inch: 'SAE 8', metric: '12.9' } as const;

/** The strongest bolt of the system; numbered inch screws, which SAE J429 leaves out, are given the same figures. */
function strongest(form: ThreadForm): Strength {
  const atListedSize = form.system === 'inch' ? { ...form, majorMm: Math.max(form.majorMm, 6.35) } : form;
  return strengthOf(strongestGrade[form.system], atListedSize);
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
  const strong = boltLoads(form, strongest(form)).proofN;
  const bolt = {
    lowNm: torqueForClamp({ clampN: weak / 4, nutFactor: slipperiest, majorMm }),
    highNm: torqueForClamp({ clampN: strong, nutFactor: roughest, majorMm }),
  };
  const printed = plugTorqueExtremes(form);
  if (!printed) return { ...bolt, because: `a ${threadWords(form)} bolt` };
  const plug = { lowNm: printed.lowNm / 2, highNm: printed.highNm * 1.5 };
  const plugOnly = form.majorMm >= 14;
  return {
    lowNm: plugOnly ? plug.lowNm : Math.min(plug.lowNm, bolt.lowNm),
    highNm: plugOnly ? plug.highNm : Math.max(plug.highNm, bolt.highNm),
    because: plugOnly ? `a ${threadWords(form)} spark plug` : `a ${threadWords(form)} bolt or spark plug`,
  };
}

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
