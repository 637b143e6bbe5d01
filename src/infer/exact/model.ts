import { NetworkError } from '../error.js';
import { type Network, outcomeLevel, type Reading, type Sign } from '../network.js';
import { type Levels, levelsOf, stateSteps } from './levels.js';

/** A fault's contribution to a sign, or a link's to the fault at its end: probability of reaching each grade. */
export interface Cause {
  readonly fault: number;
  readonly mass: Float64Array;
}

/**
 * A function's contribution to a sign, by how many of its levels it has reached: probability of reaching each grade. A
 * function at its first state leaves grade 0.
 */
export interface JointCause {
  /** the levels as faults of the model, the first reached first */
  readonly levels: readonly number[];
  readonly mass: readonly Float64Array[];
}

/**
 * A sign that was seen, or the ways in which a linked fault comes about, as grades: neighboring outcomes that the
 * reading does not tell apart are one grade, outcomes worse than anything it allows are left out.
 */
export interface Gathering {
  /** position in `seen`, or -1 for the ways into a fault */
  readonly finding: number;
  /** the linked fault, or -1 for a sign */
  readonly owner: number;
  readonly grades: number;
  readonly causes: readonly Cause[];
  readonly joint: readonly JointCause[];
  /** what it is worth that the causes reach a grade, the leak (or the fault's own prior) taken in; for a linked
   * fault first absent, then present */
  readonly worth: Float64Array;
  /** by grade: the part of `worth` in which the leak goes beyond that grade */
  readonly beyond: Float64Array;
}

/** What a finding says about each fault by itself, without regard to the others. */
export interface PlainPart {
  readonly finding: number;
  readonly fault: number;
  /** likelihood of the finding's plain part when the fault is present; 1 when absent */
  readonly factor: number;
}

/**
 * A network with what was seen, in numbers. Faults go by their position in `network.faults`; behind them stand the
 * levels of the functions, which are faults of the same form (`levelsOf`).
 */
export interface Model {
  readonly network: Network;
  readonly faults: number;
  readonly levels: Levels;
  readonly prior: Float64Array;
  readonly linked: readonly boolean[];
  /** 0 absent, 1 present, -1 not known */
  readonly known: Int8Array;
  readonly gatherings: readonly Gathering[];
  readonly plain: readonly PlainPart[];
  /** by finding: the factor that no fault has a part in */
  readonly constant: Float64Array;
}

export function modelOf(network: Network): Model {
  const at = new Map(network.faults.map((f, i) => [f.id, i]));
  const levels = levelsOf(network, at);
  const faults = network.faults.length + levels.prior.length;
  const prior = Float64Array.of(...network.faults.map((f) => f.prior), ...levels.prior);
  const plain: PlainPart[] = [];
  const constant = new Float64Array(network.seen.length).fill(1);
  const links = network.links.map((l) => ({ from: at.get(l.from)!, to: at.get(l.to)!, p: l.p }));
  const ways = waysInto([...links, ...levels.links], prior);
  const linked = new Array<boolean>(faults).fill(false);
  for (const way of ways) linked[way.owner] = true;
  const signs = signsSeen(network, { at, levels }, plain, constant);
  return {
    network,
    faults,
    levels,
    prior,
    linked,
    known: knownStates(network, at, faults),
    gatherings: [...ways, ...signs],
    plain,
    constant,
  };
}

function knownStates(network: Network, at: ReadonlyMap<string, number>, faults: number): Int8Array {
  const known = new Int8Array(faults).fill(-1);
  for (const { fault, present } of network.known) known[at.get(fault)!] = present ? 1 : 0;
  return known;
}

/** A link between faults of the model, by their positions. */
export interface ModelLink {
  readonly from: number;
  readonly to: number;
  readonly p: number;
}

/** A linked fault is absent when neither its own prior nor any link makes it present. */
function waysInto(links: readonly ModelLink[], priors: Float64Array): Gathering[] {
  const into = new Map<number, Cause[]>();
  for (const { from, to, p } of links) {
    const causes = into.get(to) ?? [];
    causes.push({ fault: from, mass: Float64Array.of(1 - p, p) });
    into.set(to, causes);
  }
  return [...into].map(([owner, causes]) => {
    const prior = priors[owner]!;
    const worth = Float64Array.of(1 - prior, 0, prior, 1);
    return { finding: -1, owner, grades: 2, causes, joint: [], worth, beyond: Float64Array.of(prior, 0) };
  });
}

/** Where the causes of signs stand in the model. */
interface Places {
  readonly at: ReadonlyMap<string, number>;
  readonly levels: Levels;
}

function signsSeen(
  network: Network,
  { at, levels }: Places,
  plain: PlainPart[],
  constant: Float64Array,
): Gathering[] {
  const signs = new Map(network.signs.map((s) => [s.id, s]));
  const gatherings: Gathering[] = [];
  for (const [finding, reading] of network.seen.entries()) {
    const sign = signs.get(reading.sign)!;
    const grading = gradingOf(sign, reading);
    const causes = sign.causes.flatMap((c) =>
      'function' in c ? [] : [{ fault: at.get(c.fault)!, mass: byGrade(c.outcome, grading) }],
    );
    const joint = sign.causes.flatMap((c) =>
      'function' in c
        ? [{ levels: levels.of.get(c.function)!, mass: c.outcome.map((o) => byGrade(o, grading)) }]
        : [],
    );
    if (grading.weight.length === 1) {
      for (const { fault, mass } of causes) plain.push({ finding, fault, factor: mass[0]! });
      for (const cause of joint) plain.push(...plainJoint(finding, cause));
      constant[finding] = byGrade(sign.leak, grading)[0]! * grading.weight[0]!;
    } else {
      const gathered = signGathering(finding, causes, byGrade(sign.leak, grading), grading.weight, plain);
      gatherings.push({ ...gathered, joint });
    }
  }
  return gatherings;
}

/** A normal reading of a function: each level reached has its own part in it. */
function plainJoint(finding: number, { levels, mass }: JointCause): PlainPart[] {
  const steps = stateSteps(mass.map((m) => m[0]!));
  return levels.map((fault, l) => ({ finding, fault, factor: steps[l]! }));
}

function signGathering(
  finding: number,
  causes: readonly Cause[],
  leak: Float64Array,
  weight: Float64Array,
  plain: PlainPart[],
): Omit<Gathering, 'joint'> {
  const reaching = causes.filter((c) => c.mass.some((m, k) => k > 0 && m > 0));
  for (const c of causes)
    if (!reaching.includes(c)) plain.push({ finding, fault: c.fault, factor: c.mass[0]! });
  const worth = new Float64Array(weight.length);
  const beyond = new Float64Array(weight.length);
  for (let k = 0; k < weight.length; k += 1) {
    let within = 0;
    for (let l = 0; l <= k; l += 1) within += leak[l]!;
    for (let l = k + 1; l < weight.length; l += 1) beyond[k]! += leak[l]! * weight[l]!;
    worth[k] = within * weight[k]! + beyond[k]!;
  }
  return { finding, owner: -1, grades: weight.length, causes: reaching, worth, beyond };
}

export interface Grading {
  /** by outcome; -1 for one that the reading rules out from above */
  readonly gradeOf: Int32Array;
  /** likelihood of the reading by grade */
  readonly weight: Float64Array;
}

/**
 * Outcomes gathered into grades. The worse of two outcomes falls in the worse of their two grades, so nothing is
 * lost: a plain reading has two grades (below it, at it), a normal one has one.
 */
export function gradingOf(sign: Sign, reading: Reading): Grading {
  const weights = 'weights' in reading ? reading.weights : sign.outcomes.map(() => 0);
  const likelihood = 'outcome' in reading ? weights.with(outcomeLevel(sign, reading.outcome), 1) : weights;
  const top = likelihood.findLastIndex((w) => w > 0);
  if (top < 0)
    throw new NetworkError('impossible', 'every outcome has weight 0', { place: `seen "${sign.id}"` });
  const gradeOf = new Int32Array(likelihood.length).fill(-1);
  const weight: number[] = [];
  for (let k = 0; k <= top; k += 1) {
    if (weight.length === 0 || weight.at(-1) !== likelihood[k]) weight.push(likelihood[k]!);
    gradeOf[k] = weight.length - 1;
  }
  return { gradeOf, weight: Float64Array.from(weight) };
}

function byGrade(outcome: readonly number[], grading: Grading): Float64Array {
  const mass = new Float64Array(grading.weight.length);
  for (const [k, p] of outcome.entries()) {
    const grade = grading.gradeOf[k]!;
    if (grade >= 0) mass[grade]! += p;
  }
  return mass;
}
