import { type Joining, type Rule, rules } from './scope.js';

/** Which entry of the result is made of which products: offsets of result, left and right. */
export interface Terms {
  readonly length: number;
  readonly into: Int32Array;
  readonly left: Int32Array;
  readonly right: Int32Array;
}

/** A side's table also holds sums over grades 0 … k, at index size − 1 + k, where the rule needs them. */
export const leftWidens = (rule: Rule): boolean => rule === rules.worse || rule === rules.moveRight;
export const rightWidens = (rule: Rule): boolean => rule === rules.worse || rule === rules.moveLeft;
export const widened = (size: number): number => 2 * size - 1;

/** Makes lists of terms in memory that is used again; a list is good until the next one is asked for. */
export class TermLister {
  private into = new Int32Array(4096);
  private left = new Int32Array(4096);
  private right = new Int32Array(4096);

  list(joining: Joining): Terms {
    const strides = stridesOf(joining);
    let length = 1;
    this.into[0] = 0;
    this.left[0] = 0;
    this.right[0] = 0;
    for (let i = 0; i < joining.rule.length; i += 1) {
      length = this.spread(length, stepsFor(joining.rule[i]!, joining.size[i]!), strides[i]!);
    }
    return { length, into: this.into, left: this.left, right: this.right };
  }

  /** Each term becomes one term a step. From the end backwards, so that none is overwritten before it is read. */
  private spread(length: number, steps: readonly Step[], stride: Step): number {
    this.makeRoom(length * steps.length);
    const { into, left, right } = this;
    for (let t = length - 1; t >= 0; t -= 1) {
      const o = into[t]!;
      const a = left[t]!;
      const b = right[t]!;
      for (let s = steps.length - 1; s >= 0; s -= 1) {
        const step = steps[s]!;
        const n = t * steps.length + s;
        into[n] = o + step[0] * stride[0];
        left[n] = a + step[1] * stride[1];
        right[n] = b + step[2] * stride[2];
      }
    }
    return length * steps.length;
  }

  private makeRoom(length: number): void {
    if (length <= this.into.length) return;
    for (const side of ['into', 'left', 'right'] as const) {
      const wider = new Int32Array(2 * length);
      wider.set(this[side]);
      this[side] = wider;
    }
  }
}

/** Of result, left and right. */
type Step = readonly [into: number, left: number, right: number];

function stridesOf({ rule, size }: Joining): Step[] {
  const strides: Step[] = new Array(rule.length);
  let o = 1;
  let a = 1;
  let b = 1;
  for (let i = rule.length - 1; i >= 0; i -= 1) {
    const r = rule[i]!;
    const n = size[i]!;
    strides[i] = [r === rules.close ? 0 : o, r === rules.right ? 0 : a, r === rules.left ? 0 : b];
    if (r !== rules.close) o *= n;
    if (r !== rules.right) a *= leftWidens(r) ? widened(n) : n;
    if (r !== rules.left) b *= rightWidens(r) ? widened(n) : n;
  }
  return strides;
}

const upTo = (k: number, size: number): number => (k === 0 ? 0 : size - 1 + k);

/** Which entries make which, along one dimension. */
function stepsFor(rule: Rule, size: number): readonly Step[] {
  if (size === 2) return twoGrades[rule];
  return stepsOf(rule, size);
}

function stepsOf(rule: Rule, size: number): Step[] {
  const grades = Array.from({ length: size }, (_, k) => k);
  if (rule === rules.worse) return grades.flatMap((k) => worse(k, size));
  if (rule === rules.moveLeft) return grades.flatMap((k) => moves(k, size));
  if (rule === rules.moveRight)
    return grades.flatMap((k) => moves(k, size).map(([o, stay, come]): Step => [o, come, stay]));
  return grades.map((k): Step => [k, k, k]);
}

/** The worse of both is grade k: left is at k and right within it, or left is below and right at k. */
function worse(k: number, size: number): Step[] {
  return k === 0
    ? [[0, 0, 0]]
    : [
        [k, k, upTo(k, size)],
        [k, upTo(k - 1, size), k],
      ];
}

/** What awaits at grade k when more causes come: they stay within k, or take it to a worse grade. */
function moves(k: number, size: number): Step[] {
  const all: Step[] = [[k, k, upTo(k, size)]];
  for (let further = k + 1; further < size; further += 1) all.push([k, further, further]);
  return all;
}

/** Nearly every dimension has two entries. */
const twoGrades: Record<Rule, readonly Step[]> = {
  [rules.left]: stepsOf(rules.left, 2),
  [rules.right]: stepsOf(rules.right, 2),
  [rules.same]: stepsOf(rules.same, 2),
  [rules.worse]: stepsOf(rules.worse, 2),
  [rules.moveLeft]: stepsOf(rules.moveLeft, 2),
  [rules.moveRight]: stepsOf(rules.moveRight, 2),
  [rules.close]: stepsOf(rules.close, 2),
};
