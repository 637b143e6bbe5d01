import { NetworkError } from './error.js';
import { stateSteps } from './exact/levels.js';
import { gradingOf } from './exact/model.js';
import { givenPresent, type Reasoner, type Variant, vary } from './exact/reasoner.js';
import { withFactors } from './exact/weights.js';
import type { ExactInference } from './infer.js';
import { checkReading, type Reading, type Sign } from './network.js';

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
 * readings of several signs at once are products of differences. Runs that several outcomes share are made once, and
 * where one fault alone has a part in them, one run with that fault present serves them all (`mixed`).
 *
 * Error: about 1e-15 in `probability`, and about 1e-15 / `probability` in each posterior.
 *
 * @throws NetworkError `seen-twice` for a sign that is seen already or stands twice in an outcome
 */
export function prospects(inference: ExactInference, outcomes: readonly Outcome[]): Prospect[] {
  const runs = runsOf(inference);
  return outcomes.map((outcome, o) => runs.prospect(outcome, `outcomes[${o}]`));
}

/** The prospects of all outcomes of one sign, in its order. Their probabilities sum to 1. */
export function outlook(inference: ExactInference, signId: string): Prospect[] {
  const sign = runsOf(inference).signs.get(signId);
  if (!sign) throw new NetworkError('unknown', `no sign "${signId}"`, { place: 'sign', value: signId });
  return prospects(
    inference,
    sign.outcomes.map((outcome) => [{ sign: signId, outcome }]),
  );
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

/** What a run says of each fault, and of all ceilings together as a multiple of the evidence. */
type Ran = Pick<Variant, 'share' | 'posterior'>;

/** One question after another is put to an inference: what was run for one serves the next. */
const kept = new WeakMap<ExactInference, Runs>();

function runsOf(inference: ExactInference): Runs {
  const runs = kept.get(inference) ?? new Runs(inference);
  kept.set(inference, runs);
  return runs;
}

class Runs {
  private readonly made = new Map<string, Ran>();
  private readonly place: ReadonlyMap<string, number>;
  readonly signs: ReadonlyMap<string, Sign>;
  private readonly seen: ReadonlySet<string>;

  constructor(private readonly inference: ExactInference) {
    this.place = new Map(inference.faults.map((id, i) => [id, i]));
    this.signs = new Map(inference.network.signs.map((s) => [s.id, s]));
    this.seen = new Set(inference.network.seen.map((r) => r.sign));
  }

  prospect(outcome: Outcome, place: string): Prospect {
    let terms: Term[] = [{ times: 1, ceilings: [] }];
    const taken = new Set<string>();
    for (const [i, reading] of outcome.entries()) {
      const sign = this.signs.get(reading.sign);
      checkReading(sign, reading, `${place}[${i}]`);
      if (taken.has(reading.sign) || this.seen.has(reading.sign)) {
        throw new NetworkError('seen-twice', `"${reading.sign}" is seen already`, {
          place: `${place}[${i}]`,
        });
      }
      taken.add(reading.sign);
      const steps = ceilingsOf(sign, reading);
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

  private run(all: readonly Ceiling[]): Ran {
    const ceilings = all.filter((c) => !c.open);
    const key = ceilings.map((c) => `${c.sign.id}\u0000${c.level}`).join('\u0001');
    const before = this.made.get(key);
    if (before) return before;
    const made = this.runWith(ceilings);
    this.made.set(key, made);
    return made;
  }

  private runWith(ceilings: readonly Ceiling[]): Ran {
    const { reasoner } = this.inference;
    const factors = ceilings.flatMap((c) => this.factors(c)).filter(({ factor }) => factor !== 1);
    const leak = ceilings.reduce((p, { sign, level }) => p * within(sign.leak, level), 1);
    const faults = new Set(factors.map((f) => f.fault));
    const [one] = faults;
    const varied =
      one === undefined || faults.size > 1
        ? vary(reasoner, withFactors(reasoner.weights, factors), { faults, gathering: -1 })
        : mixed(
            reasoner,
            one,
            factors.reduce((p, f) => p * f.factor, 1),
          );
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

/**
 * A likelihood of one fault alone: every answer is the mixture of those with and without the fault, so one run a fault
 * serves all signs that it alone may cause.
 */
function mixed(reasoner: Reasoner, fault: number, factor: number): Ran {
  const p = reasoner.posterior[fault]!;
  const more = (factor - 1) * p;
  const share = 1 + more;
  if (more === 0 || share <= 0) return { share: Math.max(0, share), posterior: reasoner.posterior };
  const given = givenPresent(reasoner, fault).posterior;
  return { share, posterior: reasoner.posterior.map((q, f) => (q + more * given[f]!) / share) };
}

function within(masses: readonly number[], level: number): number {
  let sum = 0;
  for (let k = 0; k <= level; k += 1) sum += masses[k]!;
  return sum;
}

/** A reading as a sum over ceilings: the weight of each grade less that of the next one up. */
function ceilingsOf(sign: Sign, reading: Reading): Term[] {
  const { gradeOf, weight } = gradingOf(sign, reading);
  return [...weight].map((w, grade) => ({
    times: w - (weight[grade + 1] ?? 0),
    ceilings: [ceiling(sign, gradeOf.lastIndexOf(grade))],
  }));
}

function ceiling(sign: Sign, level: number): Ceiling {
  const all = (masses: readonly number[]): boolean => Math.abs(within(masses, level) - 1) < 1e-13;
  const open =
    all(sign.leak) && sign.causes.every((c) => ('function' in c ? c.outcome.every(all) : all(c.outcome)));
  return { sign, level, open };
}
