import { NetworkError } from './error.js';
import { boundsFor } from './exact/bound.js';
import { logOf, plainOf, type Scaled } from './exact/evaluate.js';
import { modelOf } from './exact/model.js';
import { layOut, type Reasoner, reasonerFor } from './exact/reasoner.js';
import { type FindingView, viewFindings } from './finding.js';
import type { Network } from './network.js';

export interface Limits {
  /** entries of all tables together for an exact answer; one takes about 40 bytes and some 10 ns */
  readonly maxCells: number;
  /** the same for bounds, where the tables are gone over many times */
  readonly boundCells: number;
  /** how many branches the bounds may take to close in */
  readonly branches: number;
}
export const usualLimits: Limits = { maxCells: 4_000_000, boundCells: 100_000, branches: 256 };

export interface ExactInference {
  readonly kind: 'exact';
  readonly network: Network;
  /** fault ids, in the order of all arrays by fault */
  readonly faults: readonly string[];
  readonly posterior: Float64Array;
  /** probability of all that was seen and is known; 0 when below the range of a double */
  readonly evidence: number;
  readonly logEvidence: number;
  /** by finding, as in `network.seen` */
  readonly findings: readonly FindingView[];
  readonly size: Size;
  readonly reasoner: Reasoner;
}

/** The tables would have grown too large: every probability lies between its bounds. */
export interface BoundedInference {
  readonly kind: 'bounded';
  readonly network: Network;
  readonly faults: readonly string[];
  /** middle of the bounds; off by at most half their distance */
  readonly posterior: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly evidenceLow: number;
  readonly evidenceHigh: number;
  readonly logEvidenceLow: number;
  readonly logEvidenceHigh: number;
  /** what an exact answer would have taken */
  readonly wanted: { readonly cells: number; readonly limit: number };
  readonly size: Size;
}

export interface Size {
  /** most faults and signs in one table */
  readonly width: number;
  readonly cells: number;
}

export type Inference = ExactInference | BoundedInference;

/**
 * The probability of every fault given all that was seen, any number of faults being present at once.
 *
 * Method. A normal reading is a plain factor of each fault. For any other, nothing lies beyond the grade seen and
 * something reaches it: each cause gets a non-negative table over the grades it may reach, tables join on the
 * worse of both (for two grades, the union of what is explained), and a sign leaves as soon as its last cause is
 * in. Signs, faults and the ways into linked faults leave one by one in an order that keeps the tables small, on
 * the graph that joins each fault to the signs it may explain; a fault with many signs is thus split over them
 * instead of joining them all. The sums and products are written down once and run forward for the probability
 * of the evidence and backward for all posteriors. No term is ever subtracted, nothing is sampled.
 *
 * Doubtful readings, links, confirmed and excluded faults, and repeated checks after repairs (see `Network`)
 * are all of the same form and stay exact.
 *
 * Error: relative rounding of about 1e-16 for each operation on the longest path; against exact rational
 * arithmetic below 1e-13. Probabilities below the range of a double are kept by scaling.
 *
 * Limit: time and memory go with the table cells, which grow as 2^width. When they would exceed
 * `limits.maxCells`, the answer is `bounded`: an interval for every probability that holds for certain.
 *
 * @throws NetworkError `impossible` when what was seen has probability 0
 */
export function infer(network: Network, limits: Partial<Limits> = {}): Inference {
  const all = { ...usualLimits, ...limits };
  const layout = layOut(modelOf(network));
  if (layout.cells <= all.maxCells) return exact(network, reasonerFor(layout));
  return bounded(network, layout.cells, all);
}

/** @throws NetworkError `too-wide` where `infer` would give bounds */
export function inferExactly(network: Network, limits: Partial<Limits> = {}): ExactInference {
  const { maxCells } = { ...usualLimits, ...limits };
  const layout = layOut(modelOf(network));
  if (layout.cells > maxCells) {
    const detail = { place: 'network', value: layout.cells, bound: `${maxCells} cells` };
    throw new NetworkError('too-wide', `an exact answer would take ${layout.cells} table cells`, detail);
  }
  return exact(network, reasonerFor(layout));
}

function exact(network: Network, reasoner: Reasoner): ExactInference {
  return {
    kind: 'exact',
    network,
    faults: network.faults.map((f) => f.id),
    posterior: reasoner.posterior.subarray(0, network.faults.length),
    evidence: plainOf(reasoner.evidence),
    logEvidence: logOf(reasoner.evidence),
    findings: viewFindings(network, reasoner),
    size: { width: reasoner.width, cells: reasoner.cells },
    reasoner,
  };
}

function bounded(network: Network, cells: number, limits: Limits): BoundedInference {
  const bounds = boundsFor(modelOf(network), { maxCells: limits.boundCells, branches: limits.branches });
  const { evidenceLow, evidenceHigh } = bounds;
  const own = (all: Float64Array): Float64Array => all.subarray(0, network.faults.length);
  const [low, high] = [own(bounds.low), own(bounds.high)];
  return {
    kind: 'bounded',
    network,
    faults: network.faults.map((f) => f.id),
    posterior: low.map((l, i) => (l + high[i]!) / 2),
    low,
    high,
    ...evidenceBounds(evidenceLow, evidenceHigh),
    wanted: { cells, limit: limits.maxCells },
    size: { width: bounds.width, cells: bounds.cells },
  };
}

function evidenceBounds(low: Scaled, high: Scaled) {
  return {
    evidenceLow: plainOf(low),
    evidenceHigh: plainOf(high),
    logEvidenceLow: logOf(low),
    logEvidenceHigh: logOf(high),
  };
}

/** By fault id, for people and for JSON. */
export function byFault(
  inference: Inference,
  values: ArrayLike<number> = inference.posterior,
): Record<string, number> {
  return Object.fromEntries(inference.faults.map((id, i) => [id, values[i]!]));
}

/** By function id and state: how likely it stands there. Exact answers only. */
export function byFunction({ network, reasoner }: ExactInference): Record<string, Record<string, number>> {
  return Object.fromEntries(
    (network.functions ?? []).map(({ id, states }) => {
      const reached = reasoner.model.levels.of.get(id)!.map((level) => reasoner.posterior[level]!);
      const atLeast = [1, ...reached, 0];
      const chance = (s: number): number => Math.max(0, atLeast[s]! - atLeast[s + 1]!);
      return [id, Object.fromEntries(states.map((state, s) => [String(state), chance(s)]))];
    }),
  );
}

/** What `infer` found, as plain data. */
export type Answer =
  | {
      readonly method: 'exact';
      readonly posterior: Record<string, number>;
      readonly evidence: number;
      readonly logEvidence: number;
      readonly width: number;
    }
  | {
      readonly method: 'bounds';
      /** middle of the interval */
      readonly posterior: Record<string, number>;
      readonly interval: Record<string, readonly [low: number, high: number]>;
      /** middle of its interval */
      readonly evidence: number;
      readonly evidenceInterval: readonly [low: number, high: number];
      readonly note: string;
    };

export function answerOf(inference: Inference): Answer {
  const posterior = byFault(inference);
  if (inference.kind === 'exact') {
    const { evidence, logEvidence, size } = inference;
    return { method: 'exact', posterior, evidence, logEvidence, width: size.width };
  }
  const { faults, low, high, evidenceLow, evidenceHigh, wanted } = inference;
  return {
    method: 'bounds',
    posterior,
    interval: Object.fromEntries(faults.map((id, f) => [id, [low[f]!, high[f]!]])),
    evidence: (evidenceLow + evidenceHigh) / 2,
    evidenceInterval: [evidenceLow, evidenceHigh],
    note: `an exact answer would take ${wanted.cells} table cells, the limit is ${wanted.limit}; every probability lies in its interval`,
  };
}
