import { Neighborhood } from './neighborhood.js';

/** Variables and which of them stand in one table; `size` is the number of states or grades. */
export interface Graph {
  readonly size: readonly number[];
  readonly near: readonly ReadonlySet<number>[];
}

export interface Order {
  readonly order: readonly number[];
  /** entries of all tables from which a variable is taken out */
  readonly cells: number;
  /** the variables of the largest of these tables */
  readonly widest: readonly number[];
}

/**
 * An order of elimination that keeps tables small.
 *
 * Method: variables whose neighbors all are neighbors of each other go first; no order does better. Then greedy:
 * taking out a variable leaves all its neighbors in one table; `fill` takes the one that makes the fewest new
 * neighbors, `cells` the one whose table is smallest, ties going to the other measure. A greedy order can be some
 * times dearer than the best, so the dearer the answer looks, the more orders are tried, each with the measure
 * blurred by a fixed pattern. The outcome is a function of the graph alone.
 */
export function eliminationOrder(graph: Graph): Order {
  const start = withoutSimple(graph);
  let best = greedy(start, 'fill', 0, Number.POSITIVE_INFINITY)!;
  best = greedy(start, 'cells', 0, best.cells) ?? best;
  for (let round = 1; round <= triesFor(best.cells); round += 1) {
    best = greedy(start, round % 2 === 1 ? 'fill' : 'cells', round, best.cells) ?? best;
  }
  return best;
}

/** The first order that `eliminationOrder` looks at. */
export function quickOrder(graph: Graph): Order {
  return greedy(withoutSimple(graph), 'fill', 0, Number.POSITIVE_INFINITY)!;
}

/** Looking for an order must not take longer than using it. */
function triesFor(cells: number): number {
  if (cells < 10_000) return 0;
  if (cells < 20_000) return 8;
  if (cells < 100_000) return 24;
  if (cells < 1_000_000) return 48;
  // far beyond any limit a better order does not help
  return cells < 1e10 ? 96 : 4;
}

interface Start {
  readonly graph: Neighborhood;
  readonly order: readonly number[];
  readonly cells: number;
  readonly widest: readonly number[];
  readonly most: number;
}

function withoutSimple({ size, near }: Graph): Start {
  const graph = Neighborhood.of(size, near);
  const taking = new Taking(graph);
  const waiting = size.map((_, v) => v);
  for (let v = waiting.pop(); v !== undefined; v = waiting.pop()) {
    if (!graph.has(v)) continue;
    const around = graph.around(v);
    if (graph.fill(v, around) === 0) waiting.push(...taking.take(v, around));
  }
  return { graph, order: taking.order, cells: taking.cells, widest: taking.widest, most: taking.most };
}

/** Takes variables out and keeps the account. */
class Taking {
  readonly order: number[];
  cells: number;
  widest: readonly number[];
  most: number;

  constructor(
    private readonly graph: Neighborhood,
    from: Omit<Start, 'graph'> = { order: [], cells: 0, widest: [], most: 0 },
  ) {
    this.order = [...from.order];
    this.cells = from.cells;
    this.widest = from.widest;
    this.most = from.most;
  }

  /** @returns the variables whose measures may have changed */
  take(v: number, around: readonly number[]): number[] {
    const table = 2 ** this.graph.logCells(v, around);
    this.order.push(v);
    this.cells += table;
    if (table > this.most) {
      this.most = table;
      this.widest = [v, ...around];
    }
    return this.graph.takeOut(v, around);
  }
}

/** @returns undefined when the order turns out to take `limit` cells or more */
function greedy(start: Start, measure: 'fill' | 'cells', round: number, limit: number): Order | undefined {
  const graph = start.graph.copy();
  const taking = new Taking(graph, start);
  const rating = new Float64Array(graph.count);
  const rate = (v: number): void => {
    rating[v] = rated(graph, v, measure, round);
  };
  const left = graph.all();
  for (const v of left) rate(v);
  while (left.length > 0) {
    const v = takeLowest(left, rating);
    for (const u of taking.take(v, graph.around(v))) rate(u);
    if (taking.cells >= limit) return undefined;
  }
  const { order, cells, widest } = taking;
  return { order, cells, widest };
}

function rated(graph: Neighborhood, v: number, measure: 'fill' | 'cells', round: number): number {
  const around = graph.around(v);
  const fill = graph.fill(v, around);
  const size = graph.logCells(v, around);
  if (round === 0) return measure === 'fill' ? fill + size / 1024 : size + fill / 65536;
  const blur = 0.6 + 0.8 * pattern(round, v);
  return measure === 'fill' ? blur * (fill + 1) : blur * size;
}

/** Removes the lowest rated from the list; ties go to the lower number. */
function takeLowest(left: number[], rating: Float64Array): number {
  let at = 0;
  for (let i = 1; i < left.length; i += 1) if (rating[left[i]!]! < rating[left[at]!]!) at = i;
  return left.splice(at, 1)[0]!;
}

/** A fixed scatter in [0, 1): multiples of the golden section, one row a round. */
function pattern(round: number, v: number): number {
  const x = (v + 1) * 0.6180339887498949 * (2 * round + 1) + round * 0.7548776662466927;
  return x - Math.floor(x);
}
