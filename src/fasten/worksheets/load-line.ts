import { of, to } from '../../quantity/index.js';
import { curve, type Picture, picture, spaced } from '../../worksheet/index.js';
import { clampForTorque, clampRange } from '../torque.js';

/**
 * Clamp load over torque: straight lines through nothing, for the friction taken and for the scatter of ±25 % that a
 * torque wrench leaves, with the setting marked and the proof load of the bolt where it is known.
 */
export function loadLine(given: {
  readonly torqueNm: number;
  readonly nutFactor: number;
  readonly majorMm: number;
  readonly proofN?: number;
}): Picture {
  const { torqueNm, nutFactor, majorMm, proofN } = given;
  const clampAt = (inLb: number) =>
    inLb === 0 ? 0 : clampForTorque({ torqueNm: of(inLb, 'in-lb').si, nutFactor, majorMm }) / of(1, 'lbf').si;
  const set = to(of(torqueNm, 'N·m'), 'in-lb');
  const xs = spaced(0, 1.4 * set, 29);
  const share = (end: 0 | 1) => clampRange(1)[end];
  return picture({
    title: 'Clamp load over torque',
    says: 'The same torque clamps by a quarter more or less from bolt to bolt, because friction differs.',
    x: { label: 'torque', unit: 'in-lb' },
    y: { label: 'clamp load', unit: 'lbf' },
    curves: [
      curve('with the friction taken', xs, clampAt),
      curve('least slippery bolt', xs, (x) => share(0) * clampAt(x)),
      curve('most slippery bolt', xs, (x) => share(1) * clampAt(x)),
    ],
    marks: [{ x: set, y: clampAt(set), label: 'setting' }],
    ...(proofN !== undefined && {
      bands: [{ axis: 'y' as const, from: proofN / of(1, 'lbf').si, label: 'beyond the proof load' }],
    }),
  });
}
