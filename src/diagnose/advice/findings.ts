import type { ExactInference, Inference } from '../../infer/index.js';
import { evidenceWeights, explanations } from '../../infer/index.js';
import { capital, countWord, lowerFirst, percent, plural, withinSentence } from '../../phrase/index.js';
import { complaintSign } from '../machine/complaints.js';
import type { MachineFault } from '../machine/faults.js';
import type { Machine } from '../machine/machine.js';
import { type SafetyQuestion, safetyQuestions } from './safety.js';
import { found, matters } from './stakes.js';
import { type Unexplained, unexplainedReadings } from './unexplained.js';
import { behindComplaints } from './weighed.js';
import { likelihoodWords, namesOf } from './words.js';

export interface EvidenceItem {
  /** "Spark across the gap: none", "the owner says: cranks, never fires" */
  readonly what: string;
  readonly check?: string;
  /** logarithm to base 2 of the odds with it over the odds without it, all else being seen: 1 doubles the odds */
  readonly weight: number;
  readonly says: 'for' | 'against';
}

export interface FaultFinding {
  readonly id: string;
  readonly name: string;
  /** in machines like this, before anything was said or seen */
  readonly prior: number;
  readonly posterior: number;
  /** bounds that hold for certain, where an exact answer would take too long */
  readonly between?: readonly [number, number];
  readonly known?: 'confirmed' | 'excluded';
  readonly repaired: boolean;
  /** leaving it in brings the machine back or hurts someone */
  readonly matters: boolean;
  readonly safety: 0 | 1 | 2 | 3;
  /** the heaviest first */
  readonly evidence: readonly EvidenceItem[];
  readonly sentence: string;
}

export interface FaultSet {
  readonly faults: readonly { readonly id: string; readonly name: string }[];
  readonly probability: number;
}

export interface Findings {
  /** "Three faults explain what you saw" */
  readonly headline: string;
  /** every fault that can concern the machine, the likeliest first */
  readonly faults: readonly FaultFinding[];
  /** the likeliest sets of faults that are present together, service items left out of account */
  readonly explanations: readonly FaultSet[];
  readonly unexplained: readonly Unexplained[];
  /** asked for outright and open until answered, whatever their probability */
  readonly safety: readonly SafetyQuestion[];
  /** false: probabilities are the middle of bounds */
  readonly exact: boolean;
}

/** What is wrong with the machine, by everything that was seen. */
export function findings(machine: Machine, inference: Inference): Findings {
  const weights = inference.kind === 'exact' ? weightsByFault(machine, inference) : undefined;
  const faults = machine.faults
    .map((fault) => faultFinding(machine, inference, fault, weights))
    .sort((a, b) => b.posterior - a.posterior);
  const unexplained = inference.kind === 'exact' ? unexplainedReadings(machine, inference) : [];
  return {
    headline: headline(machine, faults, unexplained),
    faults,
    explanations: inference.kind === 'exact' ? faultSets(machine, inference) : [],
    unexplained,
    safety: safetyQuestions(machine, (fault) => inference.posterior[place(inference, machine.now(fault))]!),
    exact: inference.kind === 'exact',
  };
}

const place = (inference: Inference, id: string): number => inference.faults.indexOf(id);

/** What each reading weighs, by the fault's name in the network; the signs of one check are added up. */
type Weights = readonly { readonly what: string; readonly check?: string; readonly bits: Float64Array }[];

function weightsByFault(machine: Machine, inference: ExactInference): Weights {
  const ofSign = new Map(evidenceWeights(inference).map((w) => [w.sign, w.logOddsGain]));
  const readings = machine.readings
    .filter((r) => r.signs.length > 0)
    .map((r) => ({
      what: `${r.title}: ${r.words.join(', ')}${r.seen.doubtful ? ' (doubtful)' : ''}${r.spoiled ? ' (spoiled)' : ''}`,
      check: r.seen.check,
      signs: r.signs,
    }));
  const said = machine.catalog.complaints
    .filter((c) => ofSign.has(complaintSign(c.id)))
    .map((c) => ({ what: `the owner says: ${lowerFirst(c.name)}`, signs: [complaintSign(c.id)] }));
  return [...said, ...readings].map(({ signs, ...rest }) => ({
    ...rest,
    bits: summed(signs.map((s) => ofSign.get(s)!)),
  }));
}

function summed(gains: readonly Float64Array[]): Float64Array {
  return gains.reduce(
    (sum, g) => sum.map((x, i) => x + g[i]! / Math.LN2),
    new Float64Array(gains[0]!.length),
  );
}

/** Less than this is not worth a line. */
const leastBits = 0.1;
const mostItems = 6;
/** JSON has no infinity; beyond this a reading settles it. */
const settles = 50;

function evidenceFor(weights: Weights, at: number): EvidenceItem[] {
  return weights
    .map(({ bits, ...rest }) => ({ ...rest, weight: Math.max(-settles, Math.min(settles, bits[at]!)) }))
    .filter((e) => Math.abs(e.weight) >= leastBits)
    .sort((a, b) => Math.abs(b.weight) - Math.abs(a.weight))
    .slice(0, mostItems)
    .map((e) => ({ ...e, says: e.weight > 0 ? ('for' as const) : ('against' as const) }));
}

function faultFinding(
  machine: Machine,
  inference: Inference,
  { id, fault, frequency }: MachineFault,
  weights: Weights | undefined,
): FaultFinding {
  const now = machine.now(id);
  const at = place(inference, now);
  const posterior = inference.posterior[at]!;
  const known = machine.network.known.find((k) => k.fault === now);
  const evidence = weights ? evidenceFor(weights, at) : [];
  return {
    id,
    name: fault.name,
    prior: frequency,
    posterior,
    ...(inference.kind === 'bounded' && { between: [inference.low[at]!, inference.high[at]!] as const }),
    ...(known && { known: known.present ? ('confirmed' as const) : ('excluded' as const) }),
    repaired: now !== id,
    matters: matters(machine.catalog, fault),
    safety: fault.safety,
    evidence,
    sentence: sentence(fault.name, posterior, evidence, known?.present, now !== id),
  };
}

function sentence(
  name: string,
  p: number,
  evidence: readonly EvidenceItem[],
  known: boolean | undefined,
  repaired: boolean,
): string {
  if (known !== undefined) return `${name}: ${known ? 'found' : 'ruled out'} by looking.`;
  const of = (says: 'for' | 'against') => evidence.filter((e) => e.says === says).slice(0, 2);
  const why = (['for', 'against'] as const)
    .filter((says) => of(says).length > 0)
    .map(
      (says) =>
        ` ${says === 'for' ? 'For' : 'Against'} it: ${of(says)
          .map((e) => e.what)
          .join('; ')}.`,
    );
  return `${name}: ${repaired ? 'repaired, still there ' : ''}${likelihoodWords(p)} (${percent(p)}).${why.join('')}`;
}

function headline(
  machine: Machine,
  faults: readonly FaultFinding[],
  unexplained: readonly Unexplained[],
): string {
  const likely = faults.filter((f) => f.posterior >= found);
  const behind = behindComplaints(machine);
  const weighs = (f: FaultFinding): boolean => f.matters || behind.has(f.id) || f.known === 'confirmed';
  const shown = likely.filter((f) => weighs(f) && isSeen(f));
  const looked = machine.readings.some((r) => !r.silent);
  if (!looked && shown.length === 0) return beforeLooking(machine, likely.filter(weighs));
  const small = likely.filter((f) => !weighs(f) && isSeen(f));
  const left = leftOver(unexplained.length);
  if (shown.length === 0) return `${nothingSure(faults.filter(weighs), small)}${left}`;
  const names = shown.length <= mostNames ? `: ${namesOf(shown)}` : '';
  const verb = looked
    ? plural(shown.length, 'fault explains what you saw', 'faults explain what you saw')
    : plural(shown.length, 'fault is found', 'faults are found');
  return `${capital(countWord(shown.length))} ${verb}${names}${beside(small)}${left}`;
}

/** What was seen, and shared by several faults, points to each of them. */
function nothingSure(weighing: readonly FaultFinding[], small: readonly FaultFinding[]): string {
  const open = weighing
    .filter((f) => forBits(f) >= pointsTo && f.posterior >= worthNaming)
    .slice(0, mostNames);
  if (open.length === 1) return `What you saw points to one fault, not for sure: ${namesOf(open)}`;
  if (open.length > 1) return `Not told apart yet: ${namesOf(open, 'or')}`;
  if (small.length === 0) return 'No fault that matters shows yet';
  return `Nothing that keeps it from running shows yet${beside(small)}`;
}

const worthNaming = 0.1;

/**
 * Nothing is explained by what nobody saw: what the owner says alone is no sight, nor is what a fault that was seen may
 * have brought about. What was seen makes the odds at least four times as large.
 */
const isSeen = (fault: FaultFinding): boolean => fault.known === 'confirmed' || forBits(fault) >= explains;

/** What the readings that speak for it weigh together. */
const forBits = ({ evidence }: FaultFinding): number =>
  evidence.reduce((sum, e) => sum + (e.says === 'for' && e.check !== undefined ? e.weight : 0), 0);

const explains = 2;
const pointsTo = 0.4;

/** What shows as well and keeps no engine from running. */
function beside(small: readonly FaultFinding[]): string {
  if (small.length === 0) return '';
  return small.length <= mostNames
    ? `; also ${namesOf(small)}`
    : `; also ${countWord(small.length)} smaller ones`;
}

const mostNames = 3;

function beforeLooking(machine: Machine, likely: readonly FaultFinding[]): string {
  if (machine.complaints.length === 0) return 'Nothing is looked at yet';
  const first = likely.find((f) => f.evidence.some((e) => e.says === 'for'));
  return first
    ? `Nothing is looked at yet; by what the owner says, first of all ${withinSentence(first.name)}`
    : 'Nothing is looked at yet but what the owner says';
}

const leftOver = (n: number): string =>
  n === 0 ? '' : `; ${countWord(n)} ${plural(n, 'reading')} unexplained`;

/** Faults between these are undecided enough to tell explanations apart. */
const undecided = { from: 0.05, most: 9 };
const explainOptions = { count: 3, maxRuns: 400 };

function faultSets(machine: Machine, inference: ExactInference): FaultSet[] {
  const names = new Map(machine.faults.map((f) => [machine.now(f.id), f]));
  const among = inference.faults
    .map((id, i) => ({ id, p: inference.posterior[i]! }))
    .filter(
      ({ id, p }) => p >= undecided.from && names.has(id) && matters(machine.catalog, names.get(id)!.fault),
    )
    .sort((a, b) => b.p - a.p)
    .slice(0, undecided.most)
    .map(({ id }) => id);
  if (among.length === 0) return [];
  return explanations(inference, { ...explainOptions, among }).list.map(({ present, probability }) => ({
    faults: present.map((id) => ({ id: names.get(id)!.id, name: names.get(id)!.fault.name })),
    probability,
  }));
}
