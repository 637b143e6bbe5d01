import { type CircuitBuilder, nought, one } from './circuit.js';
import { cellsOf, type Joining, joining, modeOf, modes, type Scope, sizeOf } from './scope.js';
import { leftWidens, rightWidens, type TermLister, type Terms, widened } from './terms.js';

/** A table whose entries are cells of a circuit in the making. Row-major, the first dimension outermost. */
export interface Table {
  readonly scope: Scope;
  readonly cells: Int32Array;
}

/**
 * The table of two tables together. With `close`, the variable of that position leaves: one side holds all its
 * causes (`reach`), the other what each grade is worth (`await`), and the pair is summed over it; all entries are
 * then new cells.
 */
export function join(
  builder: CircuitBuilder,
  lister: TermLister,
  left: Table,
  right: Table,
  close: number,
): Table {
  const how = joining(left.scope, right.scope, close);
  const a = withSums(builder, left, how, 'left');
  const b = withSums(builder, right, how, 'right');
  const size = cellsOf(how.scope);
  const terms = lister.list(how);
  const cells = close < 0 ? gather(builder, size, terms, a, b) : gatherFresh(builder, size, terms, a, b);
  return { scope: how.scope, cells };
}

function withSums(builder: CircuitBuilder, table: Table, how: Joining, side: 'left' | 'right'): Int32Array {
  const widens = side === 'left' ? leftWidens : rightWidens;
  if (!how.rule.some(widens)) return table.cells;
  const sizes = table.scope.map(sizeOf);
  let cells = table.cells;
  for (const [i, rule] of sideRules(how, side).entries()) {
    if (!widens(rule)) continue;
    cells = widen(builder, cells, sizes, i);
    sizes[i] = widened(sizes[i]!);
  }
  return cells;
}

/** The rules of the dimensions that a side has. */
function sideRules({ rule }: Joining, side: 'left' | 'right'): Joining['rule'] {
  const other = side === 'left' ? 1 : 0;
  return rule.filter((r) => r !== other);
}

function widen(builder: CircuitBuilder, cells: Int32Array, sizes: readonly number[], at: number): Int32Array {
  const size = sizes[at]!;
  const inner = sizes.slice(at + 1).reduce((n, s) => n * s, 1);
  const outer = cells.length / (size * inner);
  const wider = new Int32Array(outer * widened(size) * inner);
  for (let o = 0; o < outer; o += 1) {
    for (let i = 0; i < inner; i += 1) {
      const to = o * widened(size) * inner + i;
      let sum: number = nought;
      for (let k = 0; k < size; k += 1) {
        const cell = cells[(o * size + k) * inner + i]!;
        sum = plus(builder, sum, cell);
        wider[to + k * inner] = cell;
        if (k > 0) wider[to + (size - 1 + k) * inner] = sum;
      }
    }
  }
  return wider;
}

function plus(builder: CircuitBuilder, x: number, y: number): number {
  if (x === nought) return y;
  if (y === nought) return x;
  const sum = builder.cell();
  builder.addProduct(sum, x, one);
  builder.addProduct(sum, y, one);
  return sum;
}

/** Turns terms into operations, every entry a new cell. Terms with nought vanish. */
function gatherFresh(
  builder: CircuitBuilder,
  size: number,
  terms: Terms,
  a: Int32Array,
  b: Int32Array,
): Int32Array {
  const cells = new Int32Array(size).fill(nought);
  for (let t = 0; t < terms.length; t += 1) {
    const x = a[terms.left[t]!]!;
    const y = b[terms.right[t]!]!;
    if (x < 0 || y < 0) continue;
    const o = terms.into[t]!;
    if (cells[o] === nought) cells[o] = builder.cell();
    builder.addProduct(cells[o]!, x, y);
  }
  return cells;
}

/** As `gatherFresh`, but an entry that is a single cell times 1 is that cell. */
function gather(
  builder: CircuitBuilder,
  size: number,
  terms: Terms,
  a: Int32Array,
  b: Int32Array,
): Int32Array {
  const cells = new Int32Array(size).fill(nought);
  // the first product of each entry waits until it is known whether another comes
  const first = new Int32Array(size).fill(-1);
  for (let t = 0; t < terms.length; t += 1) {
    const x = a[terms.left[t]!]!;
    const y = b[terms.right[t]!]!;
    if (x < 0 || y < 0) continue;
    const o = terms.into[t]!;
    if (first[o] === -1) first[o] = t;
    else {
      if (cells[o] === nought)
        cells[o] = product(builder, a[terms.left[first[o]!]!]!, b[terms.right[first[o]!]!]!);
      builder.addProduct(cells[o]!, x, y);
    }
  }
  for (let o = 0; o < size; o += 1) {
    if (cells[o] !== nought || first[o] === -1) continue;
    cells[o] = single(builder, a[terms.left[first[o]!]!]!, b[terms.right[first[o]!]!]!);
  }
  return cells;
}

function single(builder: CircuitBuilder, x: number, y: number): number {
  if (x === one) return y;
  return y === one ? x : product(builder, x, y);
}

function product(builder: CircuitBuilder, x: number, y: number): number {
  const cell = builder.cell();
  builder.addProduct(cell, x, y);
  return cell;
}

/** The table without its first variable, a fault: either state. All entries are new cells. */
export function eitherState(builder: CircuitBuilder, table: Table): Table {
  const half = table.cells.length / 2;
  const cells = new Int32Array(half).fill(nought);
  for (let i = 0; i < half; i += 1) {
    const x = table.cells[i]!;
    const y = table.cells[half + i]!;
    if (x !== nought && y !== nought) cells[i] = builder.choose(x, y);
    // a stage's products run before its choices
    else if (x !== nought || y !== nought) cells[i] = product(builder, Math.max(x, y), one);
  }
  return { scope: table.scope.slice(1), cells };
}

/** The table without its first variable, a sign to which nothing more comes. */
export function settled(table: Table): Table {
  const [first, ...rest] = table.scope;
  if (first === undefined || modeOf(first) !== modes.await)
    throw new Error('only what is awaited can be settled');
  return { scope: rest, cells: table.cells.slice(0, table.cells.length / sizeOf(first)) };
}
