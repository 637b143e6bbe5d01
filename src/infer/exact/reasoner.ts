import { NetworkError } from '../error.js';
import { type Cluster, type Cut, clustersOf, noCut, orderFor } from './cluster.js';
import {
  type ClusterCircuit,
  circuitFor,
  readFaults,
  runCluster,
  type Standing,
  setStanding,
} from './cluster-circuit.js';
import { ratio, runBack, type Scaled, scaledOne, times } from './evaluate.js';
import type { Model } from './model.js';
import type { Graph, Order } from './order.js';
import { Rerun, type Touched } from './rerun.js';
import { type Weights, weightsOf, withState } from './weights.js';

/** The clusters of a model that need tables, with the order of elimination. */
export interface Layout {
  readonly model: Model;
  readonly clusters: readonly { readonly cluster: Cluster; readonly order: Order }[];
  /** entries of all tables together */
  readonly cells: number;
  readonly cut: Cut;
}

export function layOut(model: Model, cut: Cut = noCut, find?: (graph: Graph) => Order): Layout {
  const clusters = clustersOf(model, cut)
    .filter((cluster) => cluster.gatherings.length > 0)
    .map((cluster) => ({ cluster, order: orderFor(model, cluster, cut, find) }));
  return { model, clusters, cells: clusters.reduce((n, p) => n + p.order.cells, 0), cut };
}

/** A model made ready to be run with any weights. */
export interface Built {
  readonly model: Model;
  readonly circuits: readonly ClusterCircuit[];
  /** by fault: its circuit, or -1 when nothing connects it to another */
  readonly circuitOf: Int32Array;
  readonly width: number;
  readonly cells: number;
}

export function build({ model, clusters, cells, cut }: Layout): Built {
  const circuits = clusters.map(({ cluster, order }) => circuitFor(model, cluster, order, cut));
  const circuitOf = new Int32Array(model.faults).fill(-1);
  for (const [m, { cluster }] of circuits.entries()) for (const f of cluster.faults) circuitOf[f] = m;
  const width = circuits.reduce((w, m) => Math.max(w, m.width), 0);
  return { model, circuits, circuitOf, width, cells };
}

/**
 * What the evidence is worth in whole and by circuit, and how each fault stands: of no meaning when the evidence is
 * worth nought.
 */
export interface Pass extends Standing {
  readonly evidence: Scaled;
  readonly shares: readonly Scaled[];
}

export function pass(built: Built, weights: Weights): Pass {
  const { faults } = built.model;
  const standing = { odds: new Float64Array(faults), posterior: new Float64Array(faults) };
  const shares = built.circuits.map((circuit) => {
    const share = runCluster(circuit, weights);
    runBack(circuit.memory);
    readFaults(circuit, standing);
    return share;
  });
  const evidence = shares.reduce(times, loneEvidence(built, weights, standing));
  return { evidence, shares, ...standing };
}

/** Faults without a table, known faults, and factors that no fault has a part in. */
function loneEvidence({ model, circuitOf }: Built, weights: Weights, standing: Standing): Scaled {
  let evidence = scaledOne;
  for (const c of weights.constant) evidence = times(evidence, { m: c, e: 0 });
  for (let f = 0; f < model.faults; f += 1) {
    if (circuitOf[f]! >= 0) continue;
    const { absent, present } = loneStates(model, weights, f);
    evidence = times(evidence, { m: absent + present, e: 0 });
    setStanding(standing, f, absent, present);
  }
  return evidence;
}

/** The weights of a fault that no table holds; a known one has only one state. */
function loneStates(model: Model, weights: Weights, f: number): { absent: number; present: number } {
  return {
    absent: model.known[f] === 1 ? 0 : weights.absent[f]!,
    present: model.known[f] === 0 ? 0 : weights.present[f]!,
  };
}

/** Built with what they said of the evidence as it stands. */
export interface Reasoner extends Built, Pass {
  readonly weights: Weights;
  /** by circuit, from the first question on */
  readonly reruns: (Rerun | undefined)[];
  readonly given: Map<number, Variant>;
}

/** @throws NetworkError `impossible` when what was seen cannot be */
export function reasonerFor(layout: Layout): Reasoner {
  const built = build(layout);
  const weights = weightsOf(layout.model);
  const first = pass(built, weights);
  if (first.evidence.m === 0) refuseImpossible();
  return { ...built, ...first, weights, reruns: [], given: new Map() };
}

export function refuseImpossible(): never {
  throw new NetworkError('impossible', 'the findings cannot all be so in this network', {
    place: 'seen',
    value: 0,
  });
}

/** The answer under other weights; how the faults stand is of no meaning when `share` is 0. */
export interface Variant extends Standing {
  /** evidence probability as a multiple of the reasoner's */
  readonly share: number;
}

/** Runs again only what a change touches. */
export function vary(reasoner: Reasoner, weights: Weights, touched: Touched): Variant {
  const standing = { odds: reasoner.odds.slice(), posterior: reasoner.posterior.slice() };
  const share = shareOf(reasoner, weights, touched, (circuit) => {
    runBack(circuit.memory);
    readFaults(circuit, standing);
  });
  for (const f of touched.faults) {
    if (reasoner.circuitOf[f]! >= 0) continue;
    const { absent, present } = loneStates(reasoner.model, weights, f);
    setStanding(standing, f, absent, present);
  }
  return { share, ...standing };
}

/** The evidence probability under other weights, as a multiple of the reasoner's. */
export function shareOf(
  reasoner: Reasoner,
  weights: Weights,
  touched: Touched,
  afterRun: (circuit: ClusterCircuit) => void = () => undefined,
): number {
  const { model, circuits, circuitOf } = reasoner;
  const rerun = new Set<number>();
  if (touched.gathering >= 0)
    rerun.add(circuits.findIndex((m) => m.cluster.gatherings.includes(touched.gathering)));
  const total = (w: Weights, f: number): number => {
    const { absent, present } = loneStates(model, w, f);
    return absent + present;
  };
  let share = 1;
  for (const f of new Set(touched.faults)) {
    if (circuitOf[f]! >= 0) rerun.add(circuitOf[f]!);
    else share *= total(weights, f) / total(reasoner.weights, f);
  }
  for (const m of rerun) {
    const again = reasoner.reruns[m] ?? new Rerun(circuits[m]!, reasoner.weights);
    reasoner.reruns[m] = again;
    share *= ratio(again.run(weights, touched), reasoner.shares[m]!);
    afterRun(again.circuit);
  }
  return share;
}

/** How all stands if a fault is there; kept, because many questions are put to few faults. */
export function givenPresent(reasoner: Reasoner, fault: number): Variant {
  const before = reasoner.given.get(fault);
  if (before) return before;
  const made = vary(reasoner, withState(reasoner.weights, fault, true), { faults: [fault], gathering: -1 });
  reasoner.given.set(fault, made);
  return made;
}
