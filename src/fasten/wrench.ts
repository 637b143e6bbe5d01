import { FastenError, positive, within } from './error.js';

/**
 * What to set on a torque wrench with an adapter, N·m: TW = TA·L/(L + E·cos θ).
 *
 * L from the wrench's square drive to the middle of the grip, E from the drive to the bolt along the adapter, θ
 * between adapter and wrench: 0° straight on, 90° to the side (no change), 180° folded back.
 * Source: common practice of torque wrench makers' sheets. Validity: a wrench that feels the pull at the grip;
 * rigid adapter; the hand on the middle of the grip.
 * Throws when the bolt lies at or behind the grip. Example: L 12 in, E 2 in, 70 in-lb wanted gives 60 in-lb.
 */
export function adapterSetting({
  wantedNm,
  wrenchMm,
  adapterMm,
  angleDeg = 0,
}: {
  wantedNm: number;
  wrenchMm: number;
  adapterMm: number;
  angleDeg?: number | undefined;
}): number {
  positive(wantedNm, 'torque', 'N·m');
  return (wantedNm * positive(wrenchMm, 'wrench', 'mm')) / leverMm(wrenchMm, adapterMm, angleDeg);
}

/** What the bolt gets at a setting, N·m: the inverse of `adapterSetting`. Example: 100 N·m, 500 mm, +150 mm gives 130 N·m. */
export function adapterResult({
  settingNm,
  wrenchMm,
  adapterMm,
  angleDeg = 0,
}: {
  settingNm: number;
  wrenchMm: number;
  adapterMm: number;
  angleDeg?: number | undefined;
}): number {
  positive(settingNm, 'torque', 'N·m');
  return (settingNm * leverMm(wrenchMm, adapterMm, angleDeg)) / positive(wrenchMm, 'wrench', 'mm');
}

function leverMm(wrenchMm: number, adapterMm: number, angleDeg: number): number {
  within(angleDeg, -180, 180, 'angle', '°');
  const lever = wrenchMm + adapterMm * Math.cos((angleDeg * Math.PI) / 180);
  if (!(lever > 0.05 * wrenchMm)) {
    throw new FastenError(
      `adapter: ${adapterMm} mm at ${angleDeg}° puts the bolt under the grip of a ${wrenchMm} mm wrench; no lever is left`,
      'adapter',
    );
  }
  return lever;
}

/**
 * Greatest deviation that a hand torque wrench may have, ± percent of the reading, from 20 to 100 % of its range.
 *
 * - ISO 6789-1:2017: ±4 % for a wrench whose greatest torque is above 10 N·m, ±6 % at or below (the usual types)
 * - ASME B107.300: ±4 % clockwise, ±6 % counterclockwise
 *
 * Both from memory; the 4 and 6 % about 10 N·m also seen in a wrench maker's manual.
 */
export function permittedDeviationPercent(
  standard: 'ISO 6789-1' | 'ASME B107.300',
  wrench: { readonly maxNm: number; readonly counterclockwise?: boolean },
): number {
  positive(wrench.maxNm, 'max', 'N·m');
  if (standard === 'ISO 6789-1') return wrench.maxNm > 10 ? 4 : 6;
  return wrench.counterclockwise ? 6 : 4;
}

/** The torque that really arrives when a wrench of this accuracy is set, N·m. Example: 100 ± 4 % gives 96 to 104. */
export function appliedInterval(torqueNm: number, accuracyPercent: number): readonly [number, number] {
  positive(torqueNm, 'torque', 'N·m');
  within(accuracyPercent, 0, 50, 'accuracy', '%');
  return [torqueNm * (1 - accuracyPercent / 100), torqueNm * (1 + accuracyPercent / 100)];
}
