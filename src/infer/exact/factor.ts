import { nought, one } from './circuit.js';
import type { Cluster, Cut } from './cluster.js';
import type { Model } from './model.js';
import { type Dim, dim, modes, type Scope, sizeOf } from './scope.js';
import type { Table } from './table.js';

/** Where the numbers of a cluster stand among its circuit's inputs; -1 where there is none. */
export interface Inputs {
  readonly count: number;
  /** absent, then present; by place in `cluster.faults` */
  readonly state: Int32Array;
  /** by place in `cluster.gatherings` */
  readonly worth: Int32Array;
  readonly mass: readonly Int32Array[];
  /** by joint cause: its first cell, state after state */
  readonly joint: readonly Int32Array[];
}

export function inputsOf(model: Model, cluster: Cluster, cut: Cut): Inputs {
  let next = 1;
  const take = (n: number): number => {
    next += n;
    return next - n;
  };
  const state = Int32Array.from(cluster.faults, () => take(2));
  const worth = Int32Array.from(cluster.gatherings, (g) => take(model.gatherings[g]!.worth.length));
  const mass = cluster.gatherings.map((g) => {
    const { causes, grades } = model.gatherings[g]!;
    return Int32Array.from(causes, ({ fault }, c) =>
      cut(g, c) || model.known[fault] === 0 ? -1 : take(grades),
    );
  });
  const joint = cluster.gatherings.map((g) => {
    const { joint: causes, grades } = model.gatherings[g]!;
    return Int32Array.from(causes, ({ levels }) => take(levels.length * grades));
  });
  return { count: next, state, worth, mass, joint };
}

/** A table of the network itself; `input` gives an entry's input cell (or `one`, or `nought`) by its indices. */
export interface Factor {
  readonly scope: Scope;
  readonly input: (index: readonly number[], inputs: Inputs) => number;
}

export function factorsOf(model: Model, cluster: Cluster, cut: Cut, order: readonly number[]): Factor[] {
  const at = new Int32Array(order.length);
  for (const [position, v] of order.entries()) at[v] = position;
  const place = new Map(cluster.faults.map((f, v) => [f, v]));
  const factors = cluster.faults.map((_, v) =>
    factor([dim(at[v]!, modes.state, 2)], ([s], inputs) => inputs.state[v]! + s!),
  );
  for (const [n, g] of cluster.gatherings.entries()) {
    const { causes, joint, owner, grades } = model.gatherings[g]!;
    const here = at[cluster.faults.length + n]!;
    factors.push(
      worthFactor(dim(here, modes.await, grades), at[place.get(owner) ?? -1], model.known[owner], n),
    );
    for (const [c, { fault }] of causes.entries()) {
      if (cut(g, c) || model.known[fault] === 0) continue;
      factors.push(causeFactor(dim(here, modes.reach, grades), at[place.get(fault) ?? -1], n, c));
    }
    for (const [c, { levels }] of joint.entries()) {
      const states = levels.map((l) => dim(at[place.get(l)!]!, modes.state, 2));
      factors.push(jointFactor(dim(here, modes.reach, grades), states, n, c));
    }
  }
  return factors;
}

/** The factor with its dimensions brought into order. */
function factor(dims: readonly Dim[], input: Factor['input']): Factor {
  const sorted = [...dims].sort((a, b) => a - b);
  const from = dims.map((d) => sorted.indexOf(d));
  return {
    scope: sorted,
    input: (index, inputs) =>
      input(
        from.map((i) => index[i]!),
        inputs,
      ),
  };
}

function worthFactor(await_: Dim, owner: number | undefined, known: number | undefined, n: number): Factor {
  const cell = (row: number, k: number, inputs: Inputs): number =>
    inputs.worth[n]! + row * sizeOf(await_) + k;
  if (owner === undefined) return factor([await_], ([k], inputs) => cell(known === 1 ? 1 : 0, k!, inputs));
  // a fault that something made present is not absent
  return factor([await_, dim(owner, modes.state, 2)], ([k, s], inputs) =>
    s === 0 && k === 1 ? nought : cell(s!, k!, inputs),
  );
}

function causeFactor(reach: Dim, fault: number | undefined, n: number, c: number): Factor {
  const cell = (k: number, inputs: Inputs): number => inputs.mass[n]![c]! + k;
  if (fault === undefined) return factor([reach], ([k], inputs) => cell(k!, inputs));
  return factor([reach, dim(fault, modes.state, 2)], ([k, s], inputs) => {
    if (s === 1) return cell(k!, inputs);
    return k === 0 ? one : nought;
  });
}

/** A level is reached only with those before it; other states do not occur. */
function jointFactor(reach: Dim, states: readonly Dim[], n: number, c: number): Factor {
  const grades = sizeOf(reach);
  return factor([reach, ...states], ([k, ...reached], inputs) => {
    const count = reached.reduce((sum, r) => sum + r, 0);
    if (reached.slice(0, count).includes(0)) return nought;
    if (count > 0) return inputs.joint[n]![c]! + (count - 1) * grades + k!;
    return k === 0 ? one : nought;
  });
}

export function tableOf(f: Factor, inputs: Inputs): Table {
  const sizes = f.scope.map(sizeOf);
  const cells = new Int32Array(sizes.reduce((n, s) => n * s, 1));
  const index = sizes.map(() => 0);
  for (let i = 0; i < cells.length; i += 1) {
    cells[i] = f.input(index, inputs);
    for (let d = sizes.length - 1; d >= 0 && ++index[d]! === sizes[d]; d -= 1) index[d] = 0;
  }
  return { scope: f.scope, cells };
}
