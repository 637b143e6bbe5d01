import { of, showBoth } from '../quantity/index.js';
import { FastenError, positive } from './error.js';
import { appliedInterval } from './wrench.js';

/** A torque wrench as it stands on the shop's list. */
export interface Wrench {
  readonly tool: string;
  readonly name: string;
  readonly minNm: number;
  readonly maxNm: number;
  /** ± percent of reading */
  readonly accuracyPercent: number;
}

export interface WrenchFit {
  readonly wrench: Wrench;
  readonly fit: boolean;
  /** the torque that really arrives, N·m */
  readonly appliedNm: readonly [number, number];
  /** where the torque lies on the wrench: 0 at nothing, 1 at its greatest */
  readonly partOfRange: number;
  readonly why: string;
}

/** A wrench's accuracy is promised from a fifth of its greatest torque upward. ISO 6789-1:2017, ASME B107.300 (from memory). */
const trustedFrom = 0.2;

const torqueWords = (torqueNm: number) => showBoth(of(torqueNm, 'N·m'), 'inch');

function requireWrench({ name, minNm, maxNm }: Wrench): void {
  positive(minNm, 'min', 'N·m');
  if (!(maxNm > minNm)) {
    throw new FastenError(
      `${name}: the greatest torque, ${maxNm} N·m, must lie above the least, ${minNm} N·m`,
      'max',
    );
  }
}

/** In words why a wrench cannot do it, or undefined when it can. */
function refusal(
  wrench: Wrench,
  torqueNm: number,
  wanted: readonly [number, number] | undefined,
): string | undefined {
  const { minNm, maxNm, accuracyPercent } = wrench;
  if (torqueNm > maxNm) return `${torqueWords(torqueNm)} is above its greatest torque, ${torqueWords(maxNm)}`;
  if (torqueNm < minNm) return `${torqueWords(torqueNm)} is below its lowest mark, ${torqueWords(minNm)}`;
  if (torqueNm < trustedFrom * maxNm) {
    return `${torqueWords(torqueNm)} is under 20 % of its greatest torque; its accuracy is promised from ${torqueWords(trustedFrom * maxNm)} upward`;
  }
  const [low, high] = appliedInterval(torqueNm, accuracyPercent);
  if (wanted && (low < wanted[0] || high > wanted[1])) {
    return `±${accuracyPercent} % gives ${torqueWords(low)} to ${torqueWords(high)}, outside the wanted ${torqueWords(wanted[0])} to ${torqueWords(wanted[1])}`;
  }
  return undefined;
}

function judge(wrench: Wrench, torqueNm: number, wanted?: readonly [number, number]): WrenchFit {
  requireWrench(wrench);
  const why = refusal(wrench, torqueNm, wanted);
  const appliedNm = appliedInterval(torqueNm, wrench.accuracyPercent);
  return {
    wrench,
    fit: why === undefined,
    appliedNm,
    partOfRange: torqueNm / wrench.maxNm,
    why:
      why ??
      `gives ${torqueWords(appliedNm[0])} to ${torqueWords(appliedNm[1])} (±${wrench.accuracyPercent} %)`,
  };
}

/** Fit ones first; among them the more exact, then the one nearest to 60 % of its range, then by name. */
function byWorth(a: WrenchFit, b: WrenchFit): number {
  const middle = ({ partOfRange }: WrenchFit) => Math.abs(partOfRange - 0.6);
  return (
    Number(b.fit) - Number(a.fit) ||
    a.wrench.accuracyPercent - b.wrench.accuracyPercent ||
    middle(a) - middle(b) ||
    a.wrench.name.localeCompare(b.wrench.name)
  );
}

/**
 * The shop's wrenches ranked for one torque, each with the torque that really arrives, or the reason against it.
 *
 * A wrench is fit from 20 to 100 % of its range, from its lowest mark up, and when its accuracy keeps the torque
 * inside `wanted` if the engine's sheet gives a range.
 * Example: 15.8 N·m with a 10 to 100 N·m wrench is refused: accuracy is promised from 20 N·m.
 */
export function fitWrench(
  torqueNm: number,
  wrenches: readonly Wrench[],
  wanted?: readonly [number, number],
): readonly WrenchFit[] {
  positive(torqueNm, 'torque', 'N·m');
  return wrenches.map((wrench) => judge(wrench, torqueNm, wanted)).sort(byWorth);
}
