import type { ExactInference } from '../../infer/index.js';
import { outlook, type Prospect } from '../../infer/index.js';
import type { Machine, MachineCheck } from '../machine/machine.js';
import { found, type Stakes } from './stakes.js';
import { weighedFaults } from './weighed.js';

/** What one outcome would do. */
export interface OutcomeProspect {
  readonly sign: string;
  /** the outcome's id, or `clears` / `still shows` for a repeat */
  readonly outcome: string;
  readonly probability: number;
  /** faults whose probability it moves most, by their catalog id */
  readonly moves: readonly { readonly fault: string; readonly from: number; readonly to: number }[];
}

export interface CheckValue {
  readonly check: MachineCheck;
  /** what the ranking goes by: how much nearer the faults that matter come to being found, in faults */
  readonly gain: number;
  /** minutes of needless and of missed work that it is expected to save */
  readonly saves: number;
  readonly outcomes: readonly OutcomeProspect[];
}

const shape = { power: 1.25, knees: [0.25, 0.5], kneeWeighs: 0.6, foundWeighs: 0.25 };

/**
 * How far a fault of this probability is settled, to the good: p^1.25, plus 0.6 of what p stands above 0.25 and above
 * 0.5 as parts of what is left there, plus a quarter of p once it is found.
 *
 * Any rise of certainty counts by the first term, a rare fault that comes up nearly as much as a common one; the knees
 * reward what brings a fault to the point and take the reward back when it goes wrong; the last stands for the
 * repair. Chosen among some forty candidates by minutes to the last fault found and by wrong repairs on simulated
 * machines (`bench/advice.ts`); the better ones lie within 3 % of each other. Bits of information, which reward the
 * clearing of faults that hardly anyone has, came out half as slow again.
 */
export function settled(p: number): number {
  const near = shape.knees.reduce((sum, knee) => sum + Math.max(0, (p - knee) / (1 - knee)), 0);
  return p ** shape.power + shape.kneeWeighs * near + (p >= found ? shape.foundWeighs * p : 0);
}

/** The minutes lost on average by the better of repairing and leaving. */
export function lossAt(p: number, { missed, needless }: Stakes): number {
  return Math.min(p * missed, (1 - p) * needless);
}

interface Weighed {
  readonly id: string;
  readonly at: number;
  readonly stakes: Stakes;
  /** how much its being found counts beside that of others */
  readonly counts: number;
}

/** What the machine came for is looked for first: a fault behind an open complaint counts so many times. */
const complaintCounts = 2;

const valued = new WeakMap<ExactInference, (check: MachineCheck) => CheckValue>();

/** What each check is worth; of the faults only those that matter are weighed. A check is valued once an inference. */
export function valuer(machine: Machine, inference: ExactInference): (check: MachineCheck) => CheckValue {
  const before = valued.get(inference);
  if (before) return before;
  const value = valuerFor(machine, inference);
  const known = new Map<MachineCheck, CheckValue>();
  const made = (check: MachineCheck): CheckValue => {
    const worth = known.get(check) ?? value(check);
    known.set(check, worth);
    return worth;
  };
  valued.set(inference, made);
  return made;
}

function valuerFor(machine: Machine, inference: ExactInference) {
  const place = new Map(inference.faults.map((id, i) => [id, i]));
  const weighed = weighedFaults(machine, inference).map(({ id, now, stakes, complained }) => ({
    id,
    at: place.get(now)!,
    stakes,
    counts: complained ? complaintCounts : 1,
  }));
  return (check: MachineCheck): CheckValue => {
    const outcomes = check.signs.flatMap((sign) => {
      const names = machine.network.signs.find((s) => s.id === sign)!.outcomes;
      return outlook(inference, sign).map((p, k) => ({ sign, outcome: String(names[k]), prospect: p }));
    });
    const scored = outcomes.map((o) => ({ ...o, ...score(inference, weighed, o.prospect) }));
    return {
      check,
      gain: Math.max(
        0,
        scored.reduce((sum, o) => sum + o.gain, 0),
      ),
      saves: Math.max(
        0,
        scored.reduce((sum, o) => sum + o.saves, 0),
      ),
      outcomes: scored.map(({ sign, outcome, prospect, moves }) => ({
        sign,
        outcome,
        probability: prospect.probability,
        moves,
      })),
    };
  };
}

const mostMoves = 3;
const leastMove = 0.02;

function score(inference: ExactInference, weighed: readonly Weighed[], { probability, posterior }: Prospect) {
  if (!posterior) return { gain: 0, saves: 0, moves: [] };
  let gain = 0;
  let saves = 0;
  const moves: { fault: string; from: number; to: number }[] = [];
  for (const { id, at, stakes, counts } of weighed) {
    const from = inference.posterior[at]!;
    const to = posterior[at]!;
    if (from === to) continue;
    gain += counts * (settled(to) - settled(from));
    saves += lossAt(from, stakes) - lossAt(to, stakes);
    if (Math.abs(to - from) >= leastMove) moves.push({ fault: id, from, to });
  }
  moves.sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from));
  return { gain: probability * gain, saves: probability * saves, moves: moves.slice(0, mostMoves) };
}
