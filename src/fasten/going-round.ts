import type { Point } from '../worksheet/index.js';
import { wrapAngle } from './plane.js';

/** A hole (0-based) and its angle from the first hole, in the direction in which the holes are numbered. */
export interface Place {
  readonly hole: number;
  readonly angleRad: number;
}

const halfTurn = Math.PI;

/**
 * The holes in the order in which one meets them going round a center, beginning with `start`.
 *
 * The direction is that of the numbering: the lowest-numbered hole that is not straight across lies in the first
 * half turn. So the answer depends only on the pattern and its numbers, not on how the face is turned, mirrored or
 * whether y points up.
 */
export function goRound(points: readonly Point[], center: Point, start: number): readonly Place[] {
  const angles = points.map(({ xMm, yMm }) => Math.atan2(yMm - center.yMm, xMm - center.xMm));
  const from = angles[start]!;
  const turns = angles.map((angle) => wrapAngle(angle - from));
  const guide = turns.findIndex(
    (turn, hole) => hole !== start && Math.min(turn, Math.abs(turn - halfTurn), 2 * halfTurn - turn) > 1e-6,
  );
  const backward = guide >= 0 && turns[guide]! > halfTurn;
  return turns
    .map((turn, hole) => ({ hole, angleRad: backward ? wrapAngle(-turn) : turn }))
    .sort((a, b) => a.angleRad - b.angleRad || a.hole - b.hole);
}

/** The angles between neighbors all the way round, rad. */
export function gaps(places: readonly Place[]): readonly number[] {
  return places.map(({ angleRad }, i) => (places[i + 1]?.angleRad ?? 2 * Math.PI) - angleRad);
}
