import type { Circuit } from './circuit.js';

/** m × 2^e: products of hundreds of probabilities leave the range of a double. */
export interface Scaled {
  readonly m: number;
  readonly e: number;
}

export const scaledOne: Scaled = { m: 1, e: 0 };
export const times = (x: Scaled, y: Scaled): Scaled => normal(x.m * y.m, x.e + y.e);
export const logOf = (x: Scaled): number => Math.log(x.m) + x.e * Math.LN2;
/** x / y as a plain number */
export const ratio = (x: Scaled, y: Scaled): number => (x.m === 0 ? 0 : (x.m / y.m) * 2 ** (x.e - y.e));
/** Whether x is less than y. */
export const isLess = (x: Scaled, y: Scaled): boolean =>
  x.m === 0 || y.m === 0 ? x.m < y.m : x.e < y.e || (x.e === y.e && x.m < y.m);
export const plainOf = (x: Scaled): number => x.m * 2 ** x.e;

function normal(m: number, e: number): Scaled {
  if (m === 0) return { m: 0, e: 0 };
  const shift = Math.floor(Math.log2(m));
  return { m: m * 2 ** -shift, e: e + shift };
}

/** Outside of this range a stage's cells are scaled, so that products of many of them neither vanish nor overflow. */
const small = 2 ** -60;
const large = 2 ** 60;

/** Working memory of one circuit. `cell[1 … inputs-1]` are set by the caller before a run. */
export interface Memory {
  readonly circuit: Circuit;
  readonly cell: Float64Array;
  /** after `runBack`: how fast the answer rises with the cell, up to a factor common to one stage's cells */
  readonly slope: Float64Array;
  /** after `run`, by stage: the power of two by which its cells, and all that is made of them, are too large */
  readonly scale: Int32Array;
}

export function memoryFor(circuit: Circuit): Memory {
  const cell = new Float64Array(circuit.cells);
  cell[0] = 1;
  const slope = new Float64Array(circuit.cells);
  return { circuit, cell, slope, scale: new Int32Array(circuit.stages.length) };
}

/** The first cell that a stage makes. */
export const startOf = ({ stages, inputs }: Circuit, stage: number): number =>
  stages[stage - 1]?.outEnd ?? inputs;

/**
 * Runs a circuit from its inputs to its answer.
 * @param best true for the faults whose choice is to be the better one instead of the sum of both
 * @param from the stage to begin with; all before it stand as an earlier run left them
 */
export function run(memory: Memory, best?: readonly boolean[], from = 0): Scaled {
  const { circuit, cell, scale } = memory;
  const { stages } = circuit;
  cell.fill(0, startOf(circuit, from));
  let p = stages[from - 1]?.productsEnd ?? 0;
  let c = stages[from - 1]?.choicesEnd ?? 0;
  let e = scale[from - 1] ?? 0;
  for (let s = from; s < stages.length; s += 1) {
    const stage = stages[s]!;
    addProducts(circuit.products, p, stage.productsEnd, cell);
    if (best?.[stage.fault]) takeBetter(circuit.choices, c, stage.choicesEnd, cell);
    else addChoices(circuit.choices, c, stage.choicesEnd, cell);
    p = stage.productsEnd;
    c = stage.choicesEnd;
    e -= rescale(cell, stage.outStart, stage.outEnd);
    scale[s] = e;
  }
  return circuit.root < 0 ? { m: 0, e: 0 } : normal(cell[circuit.root]!, e);
}

function addProducts(ops: Int32Array, from: number, to: number, cell: Float64Array): void {
  for (let t = from; t < to; t += 3) {
    const o = ops[t]!;
    cell[o] = cell[o]! + cell[ops[t + 1]!]! * cell[ops[t + 2]!]!;
  }
}

function addChoices(ops: Int32Array, from: number, to: number, cell: Float64Array): void {
  for (let t = from; t < to; t += 3) cell[ops[t]!] = cell[ops[t + 1]!]! + cell[ops[t + 2]!]!;
}

function takeBetter(ops: Int32Array, from: number, to: number, cell: Float64Array): void {
  for (let t = from; t < to; t += 3) {
    const x = cell[ops[t + 1]!]!;
    const y = cell[ops[t + 2]!]!;
    cell[ops[t]!] = Math.max(x, y);
  }
}

/** Brings a stage's largest cell into range by a power of two, which rounds nothing, and says which. */
function rescale(cell: Float64Array, from: number, to: number): number {
  let top = 0;
  for (let i = from; i < to; i += 1) if (cell[i]! > top) top = cell[i]!;
  if ((top >= small && top <= large) || top === 0) return 0;
  const shift = -Math.floor(Math.log2(top));
  // in two halves: 2^1074 is no double
  const half = 2 ** Math.floor(shift / 2);
  const rest = 2 ** (shift - Math.floor(shift / 2));
  for (let i = from; i < to; i += 1) cell[i] = cell[i]! * half * rest;
  return shift;
}

/**
 * Slopes of the answer with regard to every cell, after `run` in sums. One pass gives them all.
 *
 * The answer is of degree one in the inputs of each fault, cause and sign taken apart, so input × slope is the
 * part of the answer in which that input took part: the joint probability of the evidence and that state.
 * Slopes are right up to a factor that all inputs used in one stage share; compare only within a stage.
 */
export function runBack(memory: Memory): void {
  const { circuit, cell, slope } = memory;
  slope.fill(0);
  if (circuit.root < 0) return;
  slope[circuit.root] = 1;
  for (let s = circuit.stages.length - 1; s >= 0; s -= 1) {
    const stage = circuit.stages[s]!;
    const before = circuit.stages[s - 1];
    scaleSlopes(slope, cell, stage.outStart, stage.outEnd);
    shareChoices(circuit.choices, before?.choicesEnd ?? 0, stage.choicesEnd, slope);
    shareProducts(circuit.products, before?.productsEnd ?? 0, stage.productsEnd, cell, slope);
  }
}

/** Brings cell × slope of a stage's outcome to the order of 1. */
function scaleSlopes(slope: Float64Array, cell: Float64Array, from: number, to: number): void {
  let top = 0;
  for (let i = from; i < to; i += 1) top = Math.max(top, slope[i]! * cell[i]!);
  if (top === 0 || (top >= small && top <= large)) return;
  const factor = 2 ** -Math.floor(Math.log2(top));
  for (let i = from; i < to; i += 1) slope[i] = slope[i]! * factor;
}

function shareChoices(ops: Int32Array, from: number, to: number, slope: Float64Array): void {
  for (let t = to - 3; t >= from; t -= 3) {
    const d = slope[ops[t]!]!;
    const x = ops[t + 1]!;
    const y = ops[t + 2]!;
    slope[x] = slope[x]! + d;
    slope[y] = slope[y]! + d;
  }
}

function shareProducts(
  ops: Int32Array,
  from: number,
  to: number,
  cell: Float64Array,
  slope: Float64Array,
): void {
  for (let t = to - 3; t >= from; t -= 3) {
    const d = slope[ops[t]!]!;
    if (d === 0) continue;
    const a = ops[t + 1]!;
    const b = ops[t + 2]!;
    slope[a] = slope[a]! + d * cell[b]!;
    slope[b] = slope[b]! + d * cell[a]!;
  }
}
