import { NetworkError } from './error.js';
import { runCluster } from './exact/cluster-circuit.js';
import { ratio } from './exact/evaluate.js';
import { Heap } from './exact/heap.js';
import type { Reasoner } from './exact/reasoner.js';
import { type Weights, withState } from './exact/weights.js';
import type { ExactInference } from './infer.js';

export interface ExplainOptions {
  /** how many explanations */
  readonly count: number;
  /** faults to decide on; the others are summed over. All when left out. */
  readonly among?: readonly string[];
  /** how often the network may be run in looking for them */
  readonly maxRuns?: number;
}

export interface Explanation {
  /** faults that are present; all others that were to be decided on are absent */
  readonly present: readonly string[];
  /** probability of just this, given all that was seen */
  readonly probability: number;
}

export interface Explanations {
  /** the most probable ones, most probable first; none that is missing is more probable than the last */
  readonly list: readonly Explanation[];
  /** false when the search stopped before `count` were certain */
  readonly complete: boolean;
  /** no explanation outside the list is more probable than this */
  readonly othersAtMost: number;
}

/**
 * The most probable joint explanations, exactly.
 *
 * Method: best-first search over the faults to decide on, the least certain first. The bound of a half-decided
 * explanation is the network's own run with the better state of each undecided fault taken in place of the sum:
 * never below the best that can still be reached (a maximum taken earlier than the sums it stands outside of, as
 * in Park & Darwiche, "Solving MAP exactly using systematic search", UAI 2003), and equal to it when all are
 * decided. So explanations come off the search in falling order. Parts of the network that do not hang together
 * are searched apart and their lists merged.
 */
export function explanations(inference: ExactInference, options: ExplainOptions): Explanations {
  const { reasoner } = inference;
  const chosen = chosenFaults(inference, options.among);
  const clusters = reasoner.circuits.map((_, m) =>
    searchCluster(reasoner, m, chosen, options.count, options.maxRuns ?? 50_000),
  );
  const lone = chosen.flatMap((wanted, f) =>
    wanted && reasoner.circuitOf[f]! < 0 ? [loneStates(reasoner, f)] : [],
  );
  return finish(inference, merge([...clusters, ...lone], options.count), options.count);
}

function chosenFaults(inference: ExactInference, among: readonly string[] | undefined): boolean[] {
  for (const [i, id] of (among ?? []).entries()) {
    if (!inference.faults.includes(id)) {
      throw new NetworkError('unknown', `no fault "${id}"`, { place: `among[${i}]`, value: id });
    }
  }
  return inference.faults.map((id) => among?.includes(id) ?? true);
}

/** A cluster's best assignments, in falling order. */
interface Ranked {
  readonly list: readonly Assignment[];
  /** what is not listed is at most this */
  readonly restAtMost: number;
}

interface Assignment {
  readonly present: readonly number[];
  readonly probability: number;
}

function loneStates(reasoner: Reasoner, fault: number): Ranked {
  const p = reasoner.posterior[fault]!;
  const absent = reasoner.odds[fault] === Number.POSITIVE_INFINITY ? 0 : 1 / (1 + reasoner.odds[fault]!);
  const states = [
    { present: [fault], probability: p },
    { present: [], probability: absent },
  ].filter((s) => s.probability > 0);
  return { list: states.sort((a, b) => b.probability - a.probability), restAtMost: 0 };
}

interface Node extends Assignment {
  readonly decided: number;
  readonly weights: Weights;
}

function searchCluster(
  reasoner: Reasoner,
  m: number,
  chosen: readonly boolean[],
  count: number,
  maxRuns: number,
): Ranked {
  const circuit = reasoner.circuits[m]!;
  const order = circuit.cluster.faults
    .filter((f) => chosen[f])
    .sort((a, b) => doubt(reasoner, a) - doubt(reasoner, b));
  const bound = (weights: Weights): number =>
    ratio(runCluster(circuit, weights, chosen), reasoner.shares[m]!);
  const open = new Heap<Node>((a, b) => a.probability > b.probability);
  open.push({ decided: 0, weights: reasoner.weights, present: [], probability: bound(reasoner.weights) });
  const list: Assignment[] = [];
  for (let runs = 1; open.size > 0 && list.length < count; ) {
    const node = open.pop()!;
    if (node.decided === order.length) {
      list.push({ present: node.present, probability: node.probability });
      continue;
    }
    if (runs > maxRuns) return { list, restAtMost: node.probability };
    for (const child of children(node, order[node.decided]!, bound)) open.push(child);
    runs += 2;
  }
  return { list, restAtMost: open.pop()?.probability ?? 0 };
}

/** How far a fault is from being undecided. */
const doubt = (reasoner: Reasoner, fault: number): number => Math.abs(reasoner.posterior[fault]! - 0.5);

function children(node: Node, fault: number, bound: (weights: Weights) => number): Node[] {
  const made = [true, false].map((state) => {
    const weights = withState(node.weights, fault, state);
    const present = state ? [...node.present, fault] : node.present;
    // rounding must not lift a child above its parent
    return {
      decided: node.decided + 1,
      weights,
      present,
      probability: Math.min(node.probability, bound(weights)),
    };
  });
  return made.filter((child) => child.probability > 0);
}

/** The best combinations of independent lists. */
function merge(lists: readonly Ranked[], count: number): Ranked {
  return lists.reduce<Ranked>(
    (a, b) => {
      const pairs = a.list.flatMap((x) =>
        b.list.map((y) => ({
          present: [...x.present, ...y.present],
          probability: x.probability * y.probability,
        })),
      );
      pairs.sort((x, y) => y.probability - x.probability);
      const top = (r: Ranked): number => r.list[0]?.probability ?? r.restAtMost;
      const unlisted = Math.max(a.restAtMost * top(b), top(a) * b.restAtMost);
      return { list: pairs.slice(0, count), restAtMost: Math.max(unlisted, pairs[count]?.probability ?? 0) };
    },
    { list: [{ present: [], probability: 1 }], restAtMost: 0 },
  );
}

function finish(inference: ExactInference, merged: Ranked, count: number): Explanations {
  // what an unfinished search left out may come before the tail of the list
  const certain = merged.list.filter((a) => a.probability >= merged.restAtMost);
  const list = certain.map(({ present, probability }) => ({
    present: [...present].sort((a, b) => a - b).map((f) => inference.faults[f]!),
    probability,
  }));
  const cutOff = merged.list[certain.length]?.probability ?? 0;
  return {
    list,
    complete: list.length >= count || merged.restAtMost === 0,
    othersAtMost: Math.max(merged.restAtMost, cutOff),
  };
}
