import type { BenchTask } from '../../../catalog/index.js';
import type { Stage } from '../../entry.js';
import type { Answers } from '../answers.js';
import { gate } from '../stages/gates.js';

/** A piece of work left on a job. Times are wall-clock minutes. */
export interface Piece {
  readonly id: string;
  readonly stage: Stage;
  readonly label: string;
  readonly minutes: number;
  /** no hands needed */
  readonly passive: boolean;
  /** where it lies meanwhile */
  readonly place?: 'soak' | 'ultrasonic';
  readonly after: readonly string[];
  /** minutes between what it comes after and itself: cooling */
  readonly lag?: number;
  readonly earliest?: number;
  /** why it cannot begin sooner, in words */
  readonly waitsFor?: string;
  /** with it the job is finished */
  readonly last?: true;
}

/** The work of one job while it is being gathered, stage by stage. */
export interface Draft {
  readonly answers: Answers;
  /** wall-clock minute */
  readonly now: number;
  readonly today: string;
  readonly pieces: Piece[];
  /** what holds the job up, in words */
  readonly waits: string[];
  readonly takenAs: string[];
}

export function put(
  draft: Draft,
  piece: Pick<Piece, 'id' | 'stage' | 'label' | 'minutes'> & Partial<Piece>,
): void {
  if (piece.minutes > 0) draft.pieces.push({ passive: false, after: ends(draft), ...piece });
}

/** Pieces that nothing comes after yet: what the next one comes after. */
export function ends({ pieces }: Draft, among: (piece: Piece) => boolean = () => true): string[] {
  const those = pieces.filter(among);
  const used = new Set(those.flatMap(({ after }) => after));
  return those.filter(({ id }) => !used.has(id)).map(({ id }) => id);
}

/** Ordering goes beside the work at the bench, which only waits for what has not come. */
export const notOrdering = ({ stage }: Piece): boolean => stage !== 'parts';

/** By the rules that take no inference: the safety faults bar only the hand-over. */
export function isClosed({ answers }: Draft, stage: Stage): boolean {
  const { state } = gate(answers, answers.listedRules, stage);
  return state === 'done' || state === 'not-needed';
}

/** The middles of the catalog’s spans for the parts of the job that make up a piece of work. */
export function usualMinutes({ answers }: Draft, task: BenchTask): number {
  const spans = answers.catalog.stageParts
    .filter(({ planned }) => planned === task)
    .flatMap(({ activeMinutes }) => activeMinutes.slice(0, 1));
  return spans.reduce((sum, { from, to }) => sum + (from + to) / 2, 0);
}
