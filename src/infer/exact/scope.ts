/**
 * What a table is about: its variables, outermost (first to be eliminated) first, each with the way in which
 * two tables about the same variable come together.
 *
 * - `state`: the variable is a fault; both tables speak of the same state; entries multiply.
 * - `reach`: the variable is a sign, or the gathering of what brings a fault about; the entry is for "the causes
 *   taken in so far reach just this grade". Two such tables join on the worse of both (for two grades: the union
 *   "or" of what is explained).
 * - `await`: the same variable seen from its end: the weight that will be given if the causes still to come
 *   leave it here. One table a variable is of this kind; a `reach` table joined to it moves it on, and when all
 *   causes are in, the entry at grade 0 is the outcome.
 */
export const modes = { state: 0, reach: 1, await: 2 } as const;
export type Mode = (typeof modes)[keyof typeof modes];

/**
 * A variable's position in the elimination order, its mode and its number of entries in one number: scopes are
 * made and compared by the thousand.
 */
export type Dim = number;
/** In ascending position. */
export type Scope = readonly Dim[];

/** A dimension holds fewer entries than this, and a plan fewer variables than 2^17. */
export const maxSize = 2 ** 12;

export const dim = (at: number, mode: Mode, size: number): Dim => (at * 4 + mode) * maxSize + size;
export const sizeOf = (d: Dim): number => d & (maxSize - 1);
export const modeOf = (d: Dim): Mode => ((d >>> 12) & 3) as Mode;
export const atOf = (d: Dim): number => d >>> 14;

export function cellsOf(scope: Scope): number {
  let n = 1;
  for (const d of scope) n *= sizeOf(d);
  return n;
}

/** How one dimension of a join is made of those of its sides. `close` sums over it: nothing more is to come. */
export const rules = { left: 0, right: 1, same: 2, worse: 3, moveLeft: 4, moveRight: 5, close: 6 } as const;
export type Rule = (typeof rules)[keyof typeof rules];

/** The rule where both sides know the variable. */
function sharedRule(a: Dim, b: Dim, close: number): Rule {
  if (atOf(a) === close) return rules.close;
  if (modeOf(a) === modes.state) return rules.same;
  if (modeOf(a) === modeOf(b)) return rules.worse;
  return modeOf(a) === modes.await ? rules.moveLeft : rules.moveRight;
}

export interface Joining {
  /** by dimension of both sides together, outermost first */
  readonly rule: readonly Rule[];
  readonly size: readonly number[];
  /** what the join is about */
  readonly scope: Scope;
}

/** @param close position of a variable whose last causes are in this pair */
export function joining(left: Scope, right: Scope, close: number): Joining {
  const rule: Rule[] = [];
  const size: number[] = [];
  const scope: Dim[] = [];
  let l = 0;
  let r = 0;
  while (l < left.length || r < right.length) {
    const gap = l === left.length ? 1 : r === right.length ? -1 : atOf(left[l]!) - atOf(right[r]!);
    const d = gap > 0 ? right[r]! : left[l]!;
    const how = gap < 0 ? rules.left : gap > 0 ? rules.right : sharedRule(d, right[r]!, close);
    rule.push(how);
    size.push(sizeOf(d));
    if (how === rules.moveRight) scope.push(right[r]!);
    else if (how !== rules.close) scope.push(d);
    if (gap <= 0) l += 1;
    if (gap >= 0) r += 1;
  }
  return { rule, size, scope };
}

/** Products that a join takes. */
export function joinCost({ rule, size }: Joining): number {
  let cost = 1;
  for (let i = 0; i < rule.length; i += 1) cost *= ruleCost(rule[i]!, size[i]!);
  return cost;
}

function ruleCost(rule: Rule, size: number): number {
  if (rule === rules.worse) return 2 * size - 1;
  if (rule === rules.moveLeft || rule === rules.moveRight) return (size * (size + 1)) / 2;
  return size;
}
