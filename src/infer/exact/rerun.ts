import type { Circuit } from './circuit.js';
import { type ClusterCircuit, loadFault, loadGathering, runCluster } from './cluster-circuit.js';
import { memoryFor, run, type Scaled, startOf } from './evaluate.js';
import type { Weights } from './weights.js';

/** What a change of weights touches. */
export interface Touched {
  readonly faults: Iterable<number>;
  /** -1 for none */
  readonly gathering: number;
}

/**
 * A cluster's circuit that is asked one question after another, each with a few weights that are not the usual ones.
 *
 * Method: what is made before the first changed input is used stands as it is, so a run begins there; what the question
 * before had changed is put back from a copy. Exact: the numbers are those of a whole run.
 */
export class Rerun {
  /** with working memory of its own: the first run of the circuit stays readable */
  readonly circuit: ClusterCircuit;
  private readonly usual: Float64Array;
  private readonly usualScale: Int32Array;
  private readonly usedFrom: Int32Array;
  private readonly placeOf: ReadonlyMap<number, number>;
  /** all stages before this one stand as usual */
  private changedFrom: number;

  constructor(of: ClusterCircuit, weights: Weights) {
    const { circuit } = of.memory;
    this.circuit = { ...of, memory: memoryFor(circuit) };
    runCluster(this.circuit, weights);
    this.usual = this.circuit.memory.cell.slice();
    this.usualScale = this.circuit.memory.scale.slice();
    this.usedFrom = firstUse(circuit);
    this.placeOf = new Map(of.cluster.faults.map((f, v) => [f, v]));
    this.changedFrom = circuit.stages.length;
  }

  /** @param touched what the weights change; the faults and the gathering of other clusters are passed over */
  run(weights: Weights, { faults, gathering }: Touched): Scaled {
    const { circuit } = this;
    const { memory, inputs, cluster } = circuit;
    memory.cell.set(this.usual.subarray(0, memory.circuit.inputs));
    let from = memory.circuit.stages.length;
    for (const f of faults) {
      const v = this.placeOf.get(f);
      if (v === undefined) continue;
      loadFault(circuit, weights, v);
      from = Math.min(from, this.firstOf(inputs.state[v]!, 2));
    }
    const n = cluster.gatherings.indexOf(gathering);
    if (n >= 0) {
      loadGathering(circuit, weights, n);
      // its numbers stand one after another in three places; the earliest use of any of them counts
      from = Math.min(from, this.firstOfGathering(n, weights, gathering));
    }
    this.putBack(from);
    return run(memory, undefined, from);
  }

  private firstOfGathering(n: number, { worth, mass, joint }: Weights, g: number): number {
    const { inputs } = this.circuit;
    const uses = [
      this.firstOf(inputs.worth[n]!, worth[g]!.length),
      ...Array.from(inputs.mass[n]!, (at, c) => (at < 0 ? Infinity : this.firstOf(at, mass[g]![c]!.length))),
      ...Array.from(inputs.joint[n]!, (at, c) =>
        this.firstOf(
          at,
          joint[g]![c]!.reduce((sum, m) => sum + m.length, 0),
        ),
      ),
    ];
    return Math.min(...uses);
  }

  /** The first stage that uses one of some inputs in a row. */
  private firstOf(at: number, count: number): number {
    let first = this.usedFrom[at]!;
    for (let i = 1; i < count; i += 1) first = Math.min(first, this.usedFrom[at + i]!);
    return first;
  }

  private putBack(upTo: number): void {
    const { cell, scale, circuit } = this.circuit.memory;
    if (this.changedFrom < upTo) {
      const first = startOf(circuit, this.changedFrom);
      cell.set(this.usual.subarray(first, startOf(circuit, upTo)), first);
      scale.set(this.usualScale.subarray(this.changedFrom, upTo), this.changedFrom);
    }
    this.changedFrom = upTo;
  }
}

/** By input: the first stage that uses it; behind the last where none does. */
function firstUse({ inputs, stages, products, choices }: Circuit): Int32Array {
  const first = new Int32Array(inputs).fill(stages.length);
  const use = (ops: Int32Array, from: number, to: number, stage: number): void => {
    for (let t = from; t < to; t += 3)
      for (const cell of [ops[t + 1]!, ops[t + 2]!])
        if (cell < inputs && first[cell]! > stage) first[cell] = stage;
  };
  for (const [s, stage] of stages.entries()) {
    use(products, stages[s - 1]?.productsEnd ?? 0, stage.productsEnd, s);
    use(choices, stages[s - 1]?.choicesEnd ?? 0, stage.choicesEnd, s);
  }
  return first;
}
