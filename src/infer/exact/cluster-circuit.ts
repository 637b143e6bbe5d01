import { CircuitBuilder, nought } from './circuit.js';
import { type Cluster, type Cut, noCut } from './cluster.js';
import { type Memory, memoryFor, run, type Scaled } from './evaluate.js';
import { factorsOf, type Inputs, inputsOf } from './factor.js';
import type { Model } from './model.js';
import type { Order } from './order.js';
import { type Algebra, eliminate } from './plan.js';
import type { Scope } from './scope.js';
import { eitherState, join, settled, type Table } from './table.js';
import { TermLister } from './terms.js';
import type { Weights } from './weights.js';

/** A cluster ready to be asked. */
export interface ClusterCircuit {
  readonly cluster: Cluster;
  readonly inputs: Inputs;
  readonly memory: Memory;
  /** most variables in one table */
  readonly width: number;
}

export function circuitFor(
  model: Model,
  cluster: Cluster,
  { order }: Order,
  cut: Cut = noCut,
): ClusterCircuit {
  const inputs = inputsOf(model, cluster, cut);
  const builder = new CircuitBuilder(inputs.count);
  const tables = factorsOf(model, cluster, { cut, order, inputs });
  const isFault = order.map((v) => v < cluster.faults.length);
  const algebra = new Emitter(
    builder,
    order.map((v) => cluster.faults[v] ?? -1),
  );
  const ends = eliminate(tables, isFault, algebra);
  return { cluster, inputs, memory: memoryFor(builder.done(ends[0]!.cells[0]!)), width: algebra.width };
}

class Emitter implements Algebra<Table> {
  /** most variables in one table */
  width = 0;
  private readonly lister = new TermLister();

  constructor(
    private readonly builder: CircuitBuilder,
    private readonly faultAt: readonly number[],
  ) {}

  scopeOf(table: Table): Scope {
    return table.scope;
  }

  join(left: Table, right: Table, close: number): Table {
    const make = (): Table => join(this.builder, this.lister, left, right, close);
    const made = close < 0 ? make() : this.stage(-1, make);
    this.width = Math.max(this.width, made.scope.length + (close < 0 ? 0 : 1));
    return made;
  }

  either(table: Table, at: number): Table {
    return this.stage(this.faultAt[at]!, () => eitherState(this.builder, table));
  }

  settle(table: Table): Table {
    return settled(table);
  }

  private stage(fault: number, make: () => Table): Table {
    const made = make();
    // the made cells are the newest ones; sums that the join needed come before them and must keep their scale
    const outcome = made.cells.reduce((n, cell) => n + (cell === nought ? 0 : 1), 0);
    this.builder.endStage(fault, this.builder.cells - outcome);
    return made;
  }
}

/** Sets the inputs and runs to the cluster's probability of what was seen. */
export function runCluster(circuit: ClusterCircuit, weights: Weights, best?: readonly boolean[]): Scaled {
  load(circuit, weights);
  return run(circuit.memory, best);
}

function load(circuit: ClusterCircuit, weights: Weights): void {
  for (let v = 0; v < circuit.cluster.faults.length; v += 1) loadFault(circuit, weights, v);
  for (let n = 0; n < circuit.cluster.gatherings.length; n += 1) loadGathering(circuit, weights, n);
}

/** @param v the fault's place in the cluster */
export function loadFault({ cluster, inputs, memory }: ClusterCircuit, weights: Weights, v: number): void {
  const f = cluster.faults[v]!;
  memory.cell[inputs.state[v]!] = weights.absent[f]!;
  memory.cell[inputs.state[v]! + 1] = weights.present[f]!;
}

/** @param n the gathering's place in the cluster */
export function loadGathering(
  { cluster, inputs, memory }: ClusterCircuit,
  weights: Weights,
  n: number,
): void {
  const { cell } = memory;
  const g = cluster.gatherings[n]!;
  cell.set(weights.worth[g]!, inputs.worth[n]!);
  for (const [c, at] of inputs.mass[n]!.entries()) if (at >= 0) cell.set(weights.mass[g]![c]!, at);
  for (const [c, at] of inputs.joint[n]!.entries()) setJoint(cell, at, weights.joint[g]![c]!);
}

function setJoint(cell: Float64Array, at: number, mass: readonly Float64Array[]): void {
  for (const [s, byGrade] of mass.entries()) cell.set(byGrade, at + s * byGrade.length);
}

/** By fault. */
export interface Standing {
  /** present to absent, 0 to infinite */
  readonly odds: Float64Array;
  readonly posterior: Float64Array;
}

export function setStanding(
  { odds, posterior }: Standing,
  fault: number,
  absent: number,
  present: number,
): void {
  odds[fault] = present / absent;
  posterior[fault] = present / (absent + present);
}

/** After a run and `runBack`: writes down how each of the cluster's faults stands. */
export function readFaults({ cluster, inputs, memory }: ClusterCircuit, into: Standing): void {
  const { cell, slope } = memory;
  for (const [v, f] of cluster.faults.entries()) {
    const at = inputs.state[v]!;
    setStanding(into, f, cell[at]! * slope[at]!, cell[at + 1]! * slope[at + 1]!);
  }
}

/** After a run and `runBack`: by entry of a gathering's worth, its share in the cluster's probability. */
export function readWorth(
  { cluster, inputs, memory }: ClusterCircuit,
  model: Model,
  gathering: number,
): Float64Array {
  const at = inputs.worth[cluster.gatherings.indexOf(gathering)]!;
  const joint = model.gatherings[gathering]!.worth.map(
    (_, i) => memory.cell[at + i]! * memory.slope[at + i]!,
  );
  const all = joint.reduce((a, b) => a + b, 0);
  return joint.map((x) => x / all);
}

/** After a run and `runBack`: how likely a present cause reaches beyond the lowest grade. */
export function readReach(
  { cluster, inputs, memory }: ClusterCircuit,
  gathering: number,
  cause: number,
  grades: number,
): number {
  const at = inputs.mass[cluster.gatherings.indexOf(gathering)]![cause]!;
  if (at < 0) return 0;
  const within = memory.cell[at]! * memory.slope[at]!;
  let beyond = 0;
  for (let k = 1; k < grades; k += 1) beyond += memory.cell[at + k]! * memory.slope[at + k]!;
  return beyond === 0 ? 0 : beyond / (within + beyond);
}

/** As `readReach`, of a function that has left its first state. */
export function readJointReach(
  { cluster, inputs, memory }: ClusterCircuit,
  gathering: number,
  cause: number,
  [states, grades]: readonly [number, number],
): number {
  const at = inputs.joint[cluster.gatherings.indexOf(gathering)]![cause]!;
  let within = 0;
  let beyond = 0;
  for (let i = 0; i < states * grades; i += 1) {
    const share = memory.cell[at + i]! * memory.slope[at + i]!;
    if (i % grades === 0) within += share;
    else beyond += share;
  }
  return beyond === 0 ? 0 : beyond / (within + beyond);
}
