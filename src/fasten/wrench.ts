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

function leverMm(wrenchMm: number, adapterMm: number, angleDeg: number): number {
  within(angleDeg, -180, 180, 'angle', '°');
  const lever = wrenchMm + adapterMm * Math.cos((angleDeg * Math.PI) / 180);
  if (!(lever > 0.05 * wrenchMm)) {
    throw new FastenError(
      'adapter: folded back that far it puts the bolt under the grip of the wrench; no lever is left',
      'adapter',
    );
  }
  return lever;
}

/** The torque that really arrives when a wrench of this accuracy is set, N·m. Example: 100 ± 4 % gives 96 to 104. */
export function appliedInterval(torqueNm: number, accuracyPercent: number): readonly [number, number] {
  positive(torqueNm, 'torque', 'N·m');
  within(accuracyPercent, 0, 50, 'accuracy', '%');
  return [torqueNm * (1 - accuracyPercent / 100), torqueNm * (1 + accuracyPercent / 100)];
}
