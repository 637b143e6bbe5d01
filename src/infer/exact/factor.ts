import { nought, one } from './circuit.js';
import type { Cluster, Cut } from './cluster.js';
import type { Model } from './model.js';
import { type Dim, dim, modes, sizeOf } from './scope.js';
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

/** The tables of the network itself, each entry an input cell, `one` or `nought`. */
export function factorsOf(
  model: Model,
  cluster: Cluster,
  { cut, order, inputs }: { readonly cut: Cut; readonly order: readonly number[]; readonly inputs: Inputs },
): Table[] {
  const at = new Int32Array(order.length);
  for (const [position, v] of order.entries()) at[v] = position;
  const place = new Map(cluster.faults.map((f, v) => [f, v]));
  /** undefined for one that is known */
  const stateOf = (fault: number): Dim | undefined => {
    const v = place.get(fault);
    return v === undefined ? undefined : dim(at[v]!, modes.state, 2);
  };
  const tables = cluster.faults.map((_, v) => row(dim(at[v]!, modes.state, 2), inputs.state[v]!));
  for (const [n, g] of cluster.gatherings.entries()) {
    const { causes, joint, owner, grades } = model.gatherings[g]!;
    const here = at[cluster.faults.length + n]!;
    const awaits = dim(here, modes.await, grades);
    const reach = dim(here, modes.reach, grades);
    tables.push(worthTable(awaits, stateOf(owner), inputs.worth[n]!, model.known[owner] === 1));
    for (const [c, { fault }] of causes.entries()) {
      if (cut(g, c) || model.known[fault] === 0) continue;
      tables.push(causeTable(reach, stateOf(fault), inputs.mass[n]![c]!));
    }
    for (const [c, { levels }] of joint.entries())
      tables.push(
        jointTable(
          reach,
          levels.map((l) => stateOf(l)!),
          inputs.joint[n]![c]!,
        ),
      );
  }
  return tables;
}

/** Input cells one after another. */
function row(d: Dim, first: number): Table {
  return { scope: [d], cells: Int32Array.from({ length: sizeOf(d) }, (_, k) => first + k) };
}

/** @param cell by the place in each dimension, as they are given */
function square(a: Dim, b: Dim, cell: (i: number, j: number) => number): Table {
  const [rows, columns] = [sizeOf(a), sizeOf(b)];
  const cells = new Int32Array(rows * columns);
  for (let i = 0; i < rows; i += 1)
    for (let j = 0; j < columns; j += 1) cells[a < b ? i * columns + j : j * rows + i] = cell(i, j);
  return { scope: a < b ? [a, b] : [b, a], cells };
}

function worthTable(awaits: Dim, owner: Dim | undefined, first: number, isPresent: boolean): Table {
  const grades = sizeOf(awaits);
  if (owner === undefined) return row(awaits, isPresent ? first + grades : first);
  // a fault that something made present is not absent
  return square(awaits, owner, (k, s) => (s === 0 && k === 1 ? nought : first + s * grades + k));
}

function causeTable(reach: Dim, fault: Dim | undefined, first: number): Table {
  if (fault === undefined) return row(reach, first);
  return square(reach, fault, (k, s) => (s === 1 ? first + k : k === 0 ? one : nought));
}

/** A level is reached only with those before it; other states do not occur. */
function jointTable(reach: Dim, states: readonly Dim[], first: number): Table {
  const dims = [reach, ...states];
  const scope = dims.toSorted((a, b) => a - b);
  const from = dims.map((d) => scope.indexOf(d));
  const sizes = scope.map(sizeOf);
  const cells = new Int32Array(sizes.reduce((n, s) => n * s, 1));
  const index = sizes.map(() => 0);
  for (let i = 0; i < cells.length; i += 1) {
    const [k, ...reached] = from.map((d) => index[d]!);
    const count = reached.reduce((sum, r) => sum + r, 0);
    if (reached.slice(0, count).includes(0)) cells[i] = nought;
    else if (count > 0) cells[i] = first + (count - 1) * sizeOf(reach) + k!;
    else cells[i] = k === 0 ? one : nought;
    for (let d = sizes.length - 1; d >= 0 && ++index[d]! === sizes[d]; d -= 1) index[d] = 0;
  }
  return { scope, cells };
}
