import type { Next } from '../chance.js';
import type { Circuit } from './circuit.js';
import { type ClusterCircuit, runCluster } from './cluster-circuit.js';
import type { Reasoner } from './reasoner.js';

/**
 * Joint states of all faults, drawn from the posterior itself: each draw is right and owes nothing to the others.
 *
 * Method: a circuit that was run in sums holds in every cell the sum of what it is made of. Going down from the
 * answer, one of a sum's products is taken with the chance that is its part in the sum, and both sides of a product
 * are followed; each fault's state is met just once on the way (no term is subtracted, so every part is a chance).
 * Faults that nothing connects are drawn by themselves. Error: none but the rounding of the cells and the number of
 * draws.
 *
 * @returns one row a draw, 1 where the fault of that place is present
 */
export function drawStates(reasoner: Reasoner, count: number, next: Next): Uint8Array[] {
  const { model, circuitOf, posterior } = reasoner;
  const rows = Array.from({ length: count }, () => new Uint8Array(model.faults));
  for (let f = 0; f < model.faults; f += 1) {
    if (circuitOf[f]! >= 0) continue;
    for (const row of rows) row[f] = next() < posterior[f]! ? 1 : 0;
  }
  for (const circuit of reasoner.circuits) drawCluster(reasoner, circuit, rows, next);
  return rows;
}

function drawCluster(
  reasoner: Reasoner,
  cluster: ClusterCircuit,
  rows: readonly Uint8Array[],
  next: Next,
): void {
  runCluster(cluster, reasoner.weights);
  const { circuit, cell } = cluster.memory;
  const parts = partsOf(circuit, cell);
  const presentFault = new Int32Array(circuit.inputs).fill(-1);
  for (const [v, f] of cluster.cluster.faults.entries()) presentFault[cluster.inputs.state[v]! + 1] = f;
  const silent = silentCells(circuit, parts, presentFault);
  const open: number[] = [];
  for (const row of rows) {
    open.push(circuit.root);
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      if (at < circuit.inputs) {
        const fault = presentFault[at]!;
        if (fault >= 0) row[fault] = 1;
        continue;
      }
      const part = pick(parts, at - circuit.inputs, next);
      const a = parts.a[part]!;
      const b = parts.b[part]!;
      if (silent[a] === 0) open.push(a);
      if (silent[b] === 0) open.push(b);
    }
  }
}

/** Cells below which nothing is chosen and no fault is met, 1 for each: most of a circuit, and never gone into. */
function silentCells(
  { cells, inputs }: Circuit,
  { start, a, b }: Parts,
  presentFault: Int32Array,
): Uint8Array {
  const silent = new Uint8Array(cells);
  for (let c = 0; c < inputs; c += 1) silent[c] = presentFault[c]! < 0 ? 1 : 0;
  // a cell is made after those that it is made of
  for (let c = 0; c < cells - inputs; c += 1) {
    const only = start[c]!;
    if (start[c + 1]! - only === 1 && silent[a[only]!] === 1 && silent[b[only]!] === 1)
      silent[inputs + c] = 1;
  }
  return silent;
}

/** What each computed cell is a sum of, side by side. */
interface Parts {
  /** by computed cell: where its parts begin; one more at the end */
  readonly start: Int32Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** sum of this part and those before it of the same cell */
  readonly upTo: Float64Array;
}

function partsOf({ cells, inputs, products, choices }: Circuit, cell: Float64Array): Parts {
  const start = new Int32Array(cells - inputs + 1);
  for (let t = 0; t < products.length; t += 3) start[products[t]! - inputs + 1]! += 1;
  for (let t = 0; t < choices.length; t += 3) start[choices[t]! - inputs + 1]! += 2;
  for (let c = 1; c < start.length; c += 1) start[c]! += start[c - 1]!;
  const total = start.at(-1)!;
  const parts = { start, a: new Int32Array(total), b: new Int32Array(total), upTo: new Float64Array(total) };
  const fill = start.slice();
  const put = (o: number, a: number, b: number): void => {
    const at = fill[o - inputs]!++;
    const before = at > start[o - inputs]! ? parts.upTo[at - 1]! : 0;
    parts.a[at] = a;
    parts.b[at] = b;
    parts.upTo[at] = before + cell[a]! * cell[b]!;
  };
  for (let t = 0; t < products.length; t += 3) put(products[t]!, products[t + 1]!, products[t + 2]!);
  for (let t = 0; t < choices.length; t += 3) {
    put(choices[t]!, choices[t + 1]!, 0);
    put(choices[t]!, choices[t + 2]!, 0);
  }
  return parts;
}

function pick({ start, upTo }: Parts, cell: number, next: Next): number {
  const end = start[cell + 1]! - 1;
  let at = start[cell]!;
  if (at === end) return at;
  const wanted = next() * upTo[end]!;
  while (at < end && upTo[at]! <= wanted) at += 1;
  return at;
}
