import { atOf, cellsOf, joinCost, joining, modeOf, modes, type Scope } from './scope.js';

/** What an elimination needs of tables. */
export interface Algebra<T> {
  scopeOf(table: T): Scope;
  /** @param close position of a variable to which nothing more comes, or -1 */
  join(left: T, right: T, close: number): T;
  /** takes out the first variable, a fault: either state */
  either(table: T, at: number): T;
  /** takes out the first variable, one to which nothing comes: the entry at grade 0 */
  settle(table: T): T;
}

/**
 * Takes out one variable after another (bucket elimination): joins the tables about it, takes it out, and hands
 * the outcome to the next variable it is about. Method: Zhang & Poole, "Exploiting causal independence in
 * Bayesian network inference", J. Artif. Intell. Res. 5 (1996), with every table kept non-negative.
 *
 * @param isFault by position in the order
 * @returns tables about nothing, one for each group of factors that hangs together
 */
export function eliminate<T>(factors: readonly T[], isFault: readonly boolean[], algebra: Algebra<T>): T[] {
  const buckets: T[][] = isFault.map(() => []);
  const done: T[] = [];
  const place = (table: T): void => {
    const first = algebra.scopeOf(table)[0];
    if (first === undefined) done.push(table);
    else buckets[atOf(first)]!.push(table);
  };
  for (const factor of factors) place(factor);
  for (const [at, fault] of isFault.entries()) {
    const bucket = buckets[at]!;
    place(fault ? algebra.either(fold(bucket, algebra), at) : closeSign(bucket, at, algebra));
    buckets[at] = [];
  }
  return done;
}

function closeSign<T>(bucket: readonly T[], at: number, algebra: Algebra<T>): T {
  const awaits = bucket.find((t) => modeOf(algebra.scopeOf(t)[0]!) === modes.await)!;
  const reaches = bucket.filter((t) => t !== awaits);
  if (reaches.length === 0) return algebra.settle(awaits);
  if (reaches.length === 1) return algebra.join(reaches[0]!, awaits, at);
  // the largest table is best used once, when the sum over this variable is made
  const last = largest(bucket, algebra);
  const others = bucket.filter((t) => t !== last);
  return algebra.join(last, fold(others, algebra), at);
}

function largest<T>(tables: readonly T[], algebra: Algebra<T>): T {
  return tables.reduce((a, b) => (cellsOf(algebra.scopeOf(b)) > cellsOf(algebra.scopeOf(a)) ? b : a));
}

/** Joins several tables, the cheaper way of two: small ones among themselves first, or one by one to the largest. */
function fold<T>(tables: readonly T[], algebra: Algebra<T>): T {
  const join = (a: T, b: T): T => algebra.join(a, b, -1);
  if (tables.length < 3) return tables.reduce(join);
  const rising = [...tables].sort((a, b) => cellsOf(algebra.scopeOf(a)) - cellsOf(algebra.scopeOf(b)));
  const fromTop = [rising.at(-1)!, ...rising.slice(0, -1)];
  return (chainCost(rising, algebra) <= chainCost(fromTop, algebra) ? rising : fromTop).reduce(join);
}

function chainCost<T>(tables: readonly T[], algebra: Algebra<T>): number {
  let cost = 0;
  let scope = algebra.scopeOf(tables[0]!);
  for (const table of tables.slice(1)) {
    const how = joining(scope, algebra.scopeOf(table), -1);
    cost += joinCost(how);
    scope = how.scope;
  }
  return cost;
}
