import { type Cycle, cycleHz, rpmOfCycle } from './engine-kind.js';
import { cycleEvidence, linesOf } from './evidence.js';
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
  /** evidence that a tenth of all speeds exceed: what chance gives in this sound */
  readonly chance: number;
  /** orders of the best that stand out, in lines of full salience */
  readonly lines: number;
}

const gridStep = 0.002;
/** Speeds nearer than this are one and the same. */
const sameSpeed = 0.06;

/** Every plausible speed weighed against all lines at once; the path's own rate is one among them. */
export function choose(witnesses: readonly Salience[], pathHz: number, cycle: Cycle): Choice {
  const low = cycleHz(cycle, cycle.lowRpm) / pathHz;
  const high = cycleHz(cycle, cycle.highRpm) / pathHz;
  const count = Math.ceil(Math.log(high / low) / gridStep) + 1;
  const candidates = Array.from({ length: count }, (_, i) => {
    const ratio = low * Math.exp(i * gridStep);
    const rpm = rpmOfCycle(cycle, ratio * pathHz);
    return { ratio, rpm, evidence: cycleEvidence(witnesses, ratio, cycle) };
  });
  const ranked = [...candidates].sort((a, b) => b.evidence - a.evidence);
  const best = ranked[0]!;
  return {
    best,
    rivals: apart(ranked),
    chance: ranked[Math.floor(count / 10)]!.evidence,
    lines: linesOf(witnesses, best.ratio, cycle),
  };
}

function apart(ranked: readonly Candidate[]): readonly Candidate[] {
  const kept: Candidate[] = [];
  for (const candidate of ranked) {
    if (kept.every(({ ratio }) => Math.abs(Math.log(ratio / candidate.ratio)) > sameSpeed))
      kept.push(candidate);
    if (kept.length > 6) break;
  }
  return kept.slice(1);
}
