import { type BasketProblem, type CheckedBasket, readBasketProblem } from './basket-problem.js';
import { SupplyError } from './error.js';
import { moneyStep } from './money-step.js';
import { type Line, type Program, programOf } from './program.js';

/** A solver of integer programs in CPLEX LP format, passed in: the browser, the server and the tests load it their own way. */
export interface IntegerSolver {
  solve(
    text: string,
    options: { readonly [name: string]: string | number | boolean },
  ): {
    readonly Status: string;
    /** name → an object with the value as `Primal` */
    readonly Columns: Readonly<Record<string, unknown>>;
  };
}

export interface BasketOptions {
  /** when the solver is to stop with the best it has */
  readonly secondsAtMost?: number;
}

export interface Basket {
  /** goods, shipping and the value of the delay */
  readonly total: number;
  readonly goods: number;
  readonly shipping: number;
  readonly delay: number;
  /** until the last delivery */
  readonly days: number;
  readonly suppliers: readonly string[];
  readonly lines: readonly { readonly offer: string; readonly count: number }[];
  /** what comes beyond the need */
  readonly leftOver: Readonly<Record<string, number>>;
  /** proved: no basket costs less */
  readonly optimal: boolean;
}

/**
 * The cheapest basket that covers the need.
 *
 * Method: an integer program, solved to the end by the solver passed in; prices are then added up again from the
 * whole numbers, so that rounding within the solver does not reach the total.
 * @throws SupplyError for a problem that does not hold together, a part nobody offers, or conditions nothing keeps
 * @example need {ring: 2}; ring at 3.00 or a kit of ring and gasket at 2.50, same supplier, shipping 4.00:
 * two kits, total 9.00, left over {gasket: 2}
 */
export function basket(given: BasketProblem, solver: IntegerSolver, options: BasketOptions = {}): Basket {
  const problem = readBasketProblem(given);
  const found = solved(problem, solver, options);
  if (found) return found;
  throw new SupplyError('impossible', 'no basket covers the need and keeps every minimum order', {
    place: 'suppliers',
  });
}

export interface Alternatives {
  readonly cheapest: Basket;
  /** everything from one supplier; left out where no one has it all */
  readonly fromOne?: Basket;
  /** from two at most */
  readonly fromTwo?: Basket;
}

/** The cheapest basket beside the cheapest from one and from two suppliers. */
export function alternatives(
  given: BasketProblem,
  solver: IntegerSolver,
  options: BasketOptions = {},
): Alternatives {
  const problem = readBasketProblem(given);
  const cheapest = basket(given, solver, options);
  const from = (count: number) =>
    cheapest.optimal && cheapest.suppliers.length <= count
      ? cheapest
      : solved(problem, solver, options, count);
  const [fromOne, fromTwo] = [from(1), from(2)];
  return { cheapest, ...(fromOne && { fromOne }), ...(fromTwo && { fromTwo }) };
}

function solved(
  problem: CheckedBasket,
  solver: IntegerSolver,
  { secondsAtMost }: BasketOptions,
  mostSuppliers?: number,
): Basket | undefined {
  if (Object.values(problem.need).every((wanted) => wanted === 0)) return sumUp(problem, [], true);
  const program = programOf(problem, mostSuppliers);
  const solution = solver.solve(program.text, {
    output_flag: false,
    mip_rel_gap: 0,
    mip_abs_gap: provingGap(moneyStep(problem)),
    ...(secondsAtMost !== undefined && { time_limit: secondsAtMost }),
  });
  if (solution.Status.toLowerCase().includes('infeasible')) return undefined;
  const counts = countsOf(program, solution.Columns);
  // whatever the solver says, what is handed on has been checked against the problem itself
  if (!keepsAll(problem, counts))
    throw new SupplyError('unsolved', `the solver stopped without a basket (${solution.Status})`, {
      place: 'the problem',
      value: solution.Status,
    });
  return sumUp(problem, counts, solution.Status === 'Optimal');
}

/** Totals differ by whole steps: a basket that is less than a step above the bound is the cheapest. */
const provingGap = (step: number): number => Math.max(1e-6, 0.99 * step);

interface Counted {
  readonly line: Line;
  readonly count: number;
}

function countsOf({ lines }: Program, columns: ReturnType<IntegerSolver['solve']>['Columns']): Counted[] {
  return lines
    .map((line) => ({ line, count: Math.round(primalOf(columns[line.name])) }))
    .filter(({ count }) => count > 0);
}

function primalOf(column: unknown): number {
  const value = (column as { readonly Primal?: unknown } | undefined)?.Primal;
  return typeof value === 'number' && Number.isFinite(value) ? value : 0;
}

function keepsAll({ need, suppliers }: CheckedBasket, counts: readonly Counted[]): boolean {
  const bought = boughtOf(counts);
  const covered = Object.entries(need).every(([part, wanted]) => (bought.get(part) ?? 0) >= wanted);
  return (
    covered && suppliers.every(({ id, minimum }) => !buysFrom(counts, id) || goodsFrom(counts, id) >= minimum)
  );
}

const buysFrom = (counts: readonly Counted[], supplier: string): boolean =>
  counts.some(({ line }) => line.offer.supplier === supplier);

const goodsFrom = (counts: readonly Counted[], supplier: string): number =>
  exactMoney(
    counts
      .filter(({ line }) => line.offer.supplier === supplier)
      .map(({ line, count }) => line.price * count),
  );

function boughtOf(counts: readonly Counted[]): Map<string, number> {
  const bought = new Map<string, number>();
  for (const { line, count } of counts)
    for (const [part, n] of Object.entries(line.offer.contains))
      bought.set(part, (bought.get(part) ?? 0) + n * count);
  return bought;
}

function sumUp(problem: CheckedBasket, counts: readonly Counted[], optimal: boolean): Basket {
  const goodsOf = (supplier: string) => goodsFrom(counts, supplier);
  const used = problem.suppliers.filter(({ id }) => buysFrom(counts, id));
  const goods = exactMoney(used.map(({ id }) => goodsOf(id)));
  const shipping = exactMoney(
    used.map((supplier) => supplier.shipping.findLast(({ from }) => from <= goodsOf(supplier.id))?.cost ?? 0),
  );
  const days = Math.max(0, ...counts.map(({ line }) => line.offer.leadDays));
  const delay = exactMoney([days * problem.delayPerDay]);
  return {
    total: exactMoney([goods, shipping, delay]),
    goods,
    shipping,
    delay,
    days,
    suppliers: used.map(({ id }) => id),
    lines: counts.map(({ line, count }) => ({ offer: line.offer.id, count })),
    leftOver: leftOver(problem, counts),
    optimal,
  };
}

/** Money added in doubles strays in the sixteenth digit; a threshold of 75 must see 75. */
export const exactMoney = (amounts: readonly number[]): number =>
  Number(amounts.reduce((a, b) => a + b, 0).toFixed(8));

function leftOver({ need }: CheckedBasket, counts: readonly Counted[]): Record<string, number> {
  const over = [...boughtOf(counts)].map(([part, n]) => [part, n - (need[part] ?? 0)] as const);
  return Object.fromEntries(over.filter(([, n]) => n > 0));
}
