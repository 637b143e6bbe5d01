import { type Cycle, cycleHz, expected, rpmOfCycle } from './engine-kind.js';
import { cycleEvidence, linesOf, parityOf, shareOf } from './evidence.js';
import type { Salience } from './salience.js';

/** A cycle rate that could explain what is heard. */
export interface Candidate {
  /** cycles per turn of the path that the orders are counted in */
  readonly ratio: number;
  readonly rpm: number;
  readonly evidence: number;
}

export interface Choice {
  readonly best: Candidate;
  /** other speeds, the strongest first */
  readonly rivals: readonly Candidate[];
  /** the highest evidence of any speed, be it not the one chosen */
  readonly highest: number;
  /** evidence that a tenth of all speeds exceed: what chance gives in this sound */
  readonly chance: number;
  /** orders of the best that stand out, in lines of full salience */
  readonly lines: number;
  /** share of what stands out that is an order of the best */
  readonly share: number;
}

const gridStep = 0.004;
/** Round the best of the grid speeds are weighed as finely as this. */
const fineStep = 0.001;
const looksCloser = 16;
/** Speeds nearer than this are one and the same. */
const sameSpeed = 0.06;

const closeBy = [-2, -1, 1, 2].map((steps) => steps * fineStep);

const byEvidence = (candidates: readonly Candidate[]): readonly Candidate[] =>
  [...candidates].sort((a, b) => b.evidence - a.evidence);

/** Every plausible speed weighed against all lines at once; the path's own rate is one among them. */
export function choose(witnesses: readonly Salience[], pathHz: number, cycle: Cycle): Choice {
  const low = cycleHz(cycle, cycle.lowRpm) / pathHz;
  const high = cycleHz(cycle, cycle.highRpm) / pathHz;
  const count = Math.ceil(Math.log(high / low) / gridStep) + 1;
  const candidateAt = (ratio: number): Candidate => {
    const rpm = rpmOfCycle(cycle, ratio * pathHz);
    return { ratio, rpm, evidence: expected(cycle, rpm) * cycleEvidence(witnesses, ratio, cycle) };
  };
  const grid = Array.from({ length: count }, (_, i) => candidateAt(low * Math.exp(i * gridStep)));
  const onGrid = byEvidence(grid);
  const closer = onGrid
    .slice(0, looksCloser)
    .flatMap(({ ratio }) => closeBy.map((away) => candidateAt(ratio * Math.exp(away))));
  const ranked = byEvidence([...onGrid, ...closer]);
  let best = ranked[0]!;
  while (isTwoCycles(witnesses, best.ratio, cycle)) {
    const twice = candidateAt(2 * best.ratio);
    if (twice.ratio > high || twice.evidence < leastShare * best.evidence) break;
    best = twice;
  }
  return {
    best,
    rivals: apart(best, ranked),
    highest: ranked[0]!.evidence,
    chance: onGrid[Math.floor(count / 10)]!.evidence,
    lines: linesOf(witnesses, best.ratio, cycle),
    share: shareOf(witnesses, best.ratio, cycle),
  };
}

/** Even orders that sound while the odd ones hold less than this share of them: set on recordings of engines. */
const silentOdd = { share: 0.06, leastEven: 0.15 };
/** Twice as fast must at least be thinkable. */
const leastShare = 0.1;

/** Unlike cylinders sound at every order of their cycle; where all the odd orders are silent it is twice the cycle. */
function isTwoCycles(witnesses: readonly Salience[], ratio: number, cycle: Cycle): boolean {
  if (cycle.cylinders < 3) return false;
  const { odd, even } = parityOf(witnesses, ratio, cycle);
  return even > silentOdd.leastEven && odd < silentOdd.share * even;
}

function apart(best: Candidate, ranked: readonly Candidate[]): readonly Candidate[] {
  const kept = [best];
  for (const candidate of ranked) {
    if (kept.every(({ ratio }) => Math.abs(Math.log(ratio / candidate.ratio)) > sameSpeed))
      kept.push(candidate);
    if (kept.length > 6) break;
  }
  return kept.slice(1);
}
