import { passes, tighteningSteps } from '../../../fasten/index.js';
import type { Quantity } from '../../../quantity/index.js';
import type { From, Job } from '../../job.js';

/** One act at the wrench: this hole, at this torque, in this pass. */
export interface BoltTurn {
  /** 1-based; the final round is one past the last pass */
  readonly pass: number;
  readonly isRound: boolean;
  readonly hole: number;
  /** its number on screen, in the log, the record and the table: its place in the tightening order, 1-based */
  readonly bolt: number;
  readonly torqueNm: number;
}

export interface TighteningProgress {
  readonly turns: readonly BoltTurn[];
  /** index into turns → the reading that did it */
  readonly done: ReadonlyMap<number, From<'torque'>>;
  /** index of the next turn; undefined when the joint is finished */
  readonly next?: number;
  /** readings that must be looked into: the fastener turned without the torque rising, or the person stopped */
  readonly trouble: readonly From<'torque'>[];
  readonly passes: number;
}

/** Every act at the wrench for a joint, in order: each pass over all holes, then the round at full torque. */
export function boltTurns(
  joint: Pick<From<'joint'>, 'order' | 'around' | 'passes' | 'finalRound' | 'target'>,
): BoltTurn[] {
  const steps = tighteningSteps(
    joint.order,
    passes(joint.target.si, joint.passes, joint.finalRound),
    joint.around,
  );
  return steps.map(({ pass, isRound, hole, torqueNm }) => {
    const bolt = joint.order.indexOf(hole) + 1;
    return { pass, isRound, hole, bolt, torqueNm };
  });
}

/**
 * Where a joint stands. Readings written before the joint was last laid down belong to an earlier plan (another
 * order or torque) and do not count; a bolt that "turned without rising" is trouble until a later click.
 */
export function tightening(job: Job, joint: From<'joint'>): TighteningProgress {
  const turns = boltTurns(joint);
  const done = new Map<number, From<'torque'>>();
  const trouble = new Map<number, From<'torque'>>();
  for (const t of job.torques) {
    if (t.joint !== joint.joint || Date.parse(t.at) < Date.parse(joint.at)) continue;
    if (t.result !== 'clicked') {
      trouble.set(t.hole, t);
      continue;
    }
    trouble.delete(t.hole);
    const index = turns.findIndex((turn) => turn.pass === t.pass && turn.hole === t.hole);
    if (index >= 0) done.set(index, t);
  }
  const next = turns.findIndex((_, i) => !done.has(i));
  return {
    turns,
    done,
    ...(next >= 0 && { next }),
    trouble: [...trouble.values()],
    passes: joint.passes.length + (joint.finalRound ? 1 : 0),
  };
}

/** The turn to show to who stands at `place`: a bolt that somebody has clicked meanwhile, on another device, is done. */
export function turnFrom({ done, turns }: TighteningProgress, place: number): number {
  let open = place;
  while (open < turns.length && done.has(open)) open += 1;
  return open;
}

/** Where every joint of a job stands, by joint. */
export const tighteningOf = (job: Job): ReadonlyMap<string, TighteningProgress> =>
  new Map([...job.joints].map(([id, joint]) => [id, tightening(job, joint)]));

/** What the wrench is set to for a turn, in the unit the target was written in. */
export function turnTorque(joint: Pick<From<'joint'>, 'target'>, turn: BoltTurn): Quantity {
  return { kind: 'torque', si: turn.torqueNm, unit: joint.target.unit };
}
