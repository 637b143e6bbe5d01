import { NetworkError } from './error.js';
import { stateSteps } from './exact/levels.js';
import { gradingOf } from './exact/model.js';
import { type Variant, vary } from './exact/reasoner.js';
import { withFactors } from './exact/weights.js';
import type { ExactInference } from './infer.js';
import { checkReading, type Network, type Reading, type Sign } from './network.js';

/** One way in which a check may come out: readings of signs not yet seen, all at once. */
export type Outcome = readonly Reading[];

export interface Prospect {
  /** probability of these readings given what is seen; for weights, of their likelihood */
  readonly probability: number;
  /**
   * Probability of each fault if it comes out so. Undefined when `probability` is below `leastProbability`:
   * too rare to tell from never by the differences used here; `infer` with the reading added can.
   */
  readonly posterior: Float64Array | undefined;
}

/** Below this a prospect has no posterior. */
export const leastProbability = 1e-7;

/**
 * What each of several outcomes would say of every fault, before any of them is seen.
 *
 * Method. "No worse than grade k" is a plain factor of each fault that may cause the sign, so the network as it
 * stands is run again with other numbers and no larger tables; "just k" is the difference of two such runs, and
 * readings of several signs at once are products of differences. Runs that several outcomes share are made once.
 *
 * Error: about 1e-15 in `probability`, and about 1e-15 / `probability` in each posterior.
 *
 * @throws NetworkError `seen-twice` for a sign that is seen already or stands twice in an outcome
 */
export function prospects(inference: ExactInference, outcomes: readonly Outcome[]): Prospect[] {
  const runs = new Runs(inference);
  return outcomes.map((outcome, o) => runs.prospect(outcome, `outcomes[${o}]`));
}

/** The prospects of all outcomes of one sign, in its order. Their probabilities sum to 1. */
export function outlook(inference: ExactInference, signId: string): Prospect[] {
  const sign = findSign(inference.network, signId, 'sign');
  return prospects(
    inference,
    sign.outcomes.map((outcome) => [{ sign: signId, outcome }]),
  );
}

function findSign(network: Network, id: string, place: string): Sign {
  const sign = network.signs.find((s) => s.id === id);
  if (!sign) throw new NetworkError('unknown', `no sign "${id}"`, { place, value: id });
  return sign;
}

/** All causes of a sign together stay within a place of its order. */
interface Ceiling {
  readonly sign: Sign;
  readonly level: number;
  /** no ceiling at all: everything stays within it */
  readonly open: boolean;
}

interface Term {
  readonly times: number;
  readonly ceilings: readonly Ceiling[];
}

class Runs {
  private readonly made = new Map<string, Variant>();
  private readonly place: ReadonlyMap<string, number>;

  constructor(private readonly inference: ExactInference) {
    this.place = new Map(inference.faults.map((id, i) => [id, i]));
  }

  prospect(outcome: Outcome, place: string): Prospect {
    let terms: Term[] = [{ times: 1, ceilings: [] }];
    const taken = new Set(this.inference.network.seen.map((r) => r.sign));
    for (const [i, reading] of outcome.entries()) {
      checkReading(this.inference.network, reading, `${place}[${i}]`);
      if (taken.has(reading.sign)) {
        throw new NetworkError('seen-twice', `"${reading.sign}" is seen already`, {
          place: `${place}[${i}]`,
        });
      }
      taken.add(reading.sign);
      const steps = ceilingsOf(findSign(this.inference.network, reading.sign, place), reading);
      terms = terms.flatMap((t) =>
        steps.map((s) => ({ times: t.times * s.times, ceilings: [...t.ceilings, ...s.ceilings] })),
      );
    }
    return this.sum(terms);
  }

  private sum(terms: readonly Term[]): Prospect {
    const joint = new Float64Array(this.inference.faults.length);
    let probability = 0;
    for (const { times, ceilings } of terms) {
      const { share, posterior } = this.run(ceilings);
      probability += times * share;
      if (share > 0) for (let f = 0; f < joint.length; f += 1) joint[f]! += times * share * posterior[f]!;
    }
    probability = Math.max(0, probability);
    if (probability < leastProbability) return { probability, posterior: undefined };
    return { probability, posterior: joint.map((j) => Math.min(1, Math.max(0, j / probability))) };
  }

  private run(all: readonly Ceiling[]): Variant {
    const ceilings = all.filter((c) => !c.open);
    const key = ceilings.map((c) => `${c.sign.id}\u0000${c.level}`).join('\u0001');
    const before = this.made.get(key);
    if (before) return before;
    const made = this.runWith(ceilings);
    this.made.set(key, made);
    return made;
  }

  private runWith(ceilings: readonly Ceiling[]): Variant {
    const { reasoner } = this.inference;
    const factors = ceilings.flatMap((c) => this.factors(c));
    const leak = ceilings.reduce((p, { sign, level }) => p * within(sign.leak, level), 1);
    const varied = vary(reasoner, withFactors(reasoner.weights, factors), {
      faults: factors.map((f) => f.fault),
      gathering: -1,
    });
    return { ...varied, share: varied.share * leak };
  }

  private factors({ sign, level }: Ceiling): { fault: number; factor: number }[] {
    return sign.causes.flatMap((c) => {
      if (!('function' in c)) return [{ fault: this.place.get(c.fault)!, factor: within(c.outcome, level) }];
      const levels = this.inference.reasoner.model.levels.of.get(c.function)!;
      const steps = stateSteps(c.outcome.map((masses) => within(masses, level)));
      return levels.map((fault, l) => ({ fault, factor: steps[l]! }));
    });
  }
}

const within = (masses: readonly number[], level: number): number =>
  masses.slice(0, level + 1).reduce((a, b) => a + b, 0);

/** A reading as a sum over ceilings: the weight of each grade less that of the next one up. */
function ceilingsOf(sign: Sign, reading: Reading): Term[] {
  const { gradeOf, weight } = gradingOf(sign, reading);
  return [...weight].map((w, grade) => ({
    times: w - (weight[grade + 1] ?? 0),
    ceilings: [ceiling(sign, gradeOf.lastIndexOf(grade))],
  }));
}

function ceiling(sign: Sign, level: number): Ceiling {
  const masses = [sign.leak, ...sign.causes.flatMap((c) => ('function' in c ? c.outcome : [c.outcome]))];
  return { sign, level, open: masses.every((m) => Math.abs(within(m, level) - 1) < 1e-13) };
}
