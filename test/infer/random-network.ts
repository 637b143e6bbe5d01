import { seeded } from '../../src/infer/index.js';

export { seeded };

import type { Network } from '../../src/infer/index.js';

/** All probabilities are whole thousandths, so that whole-number arithmetic can repeat them exactly. */
export const parts = 1000;

export interface Shape {
  readonly faults: number;
  readonly signs: number;
  readonly outcomes: number;
  /** chance that a fault is a cause of a sign */
  readonly causes: number;
  /** chance of a link between two faults */
  readonly links: number;
  readonly doubtful: number;
  readonly unseen: number;
  readonly known: number;
}

const usual: Shape = {
  faults: 14,
  signs: 10,
  outcomes: 4,
  causes: 0.35,
  links: 0.12,
  doubtful: 0.25,
  unseen: 0.15,
  known: 0.06,
};

/** Up to as many faults, signs and outcomes as the shape says; faults are listed in no particular order. */
export function randomNetwork(seed: number, given: Partial<Shape> = {}): Network {
  const shape = { ...usual, ...given };
  const next = seeded(seed);
  const upTo = (n: number, from: number): number => from + Math.floor(next() * (n - from + 1));
  // fewer large ones: every fault more doubles the work of whoever counts states
  const count = 2 + Math.floor(next() ** 1.5 * (shape.faults - 1));
  const names = shuffled(
    Array.from({ length: count }, (_, i) => `f${i}`),
    next,
  );
  const faults = names.map((id) => ({ id, prior: Math.ceil(next() ** 2 * 600) / parts }));
  const links = pairs([...names].sort()).filter(() => next() < shape.links);
  const signs = Array.from({ length: upTo(shape.signs, 1) }, (_, s) => {
    const outcomes = Array.from({ length: upTo(shape.outcomes, 2) }, (_, k) => `o${k}`);
    const causes = names.filter(() => next() < shape.causes);
    const leak = distribution(outcomes.length, next, 0.8);
    return {
      id: `s${s}`,
      outcomes,
      leak,
      causes: causes.map((fault) => ({ fault, outcome: distribution(outcomes.length, next, 0.25) })),
    };
  });
  const seen = signs
    .filter(() => next() >= shape.unseen)
    .map((sign) => {
      if (next() >= shape.doubtful)
        return { sign: sign.id, outcome: sign.outcomes[Math.floor(next() * sign.outcomes.length)]! };
      return { sign: sign.id, weights: doubts(sign.outcomes.length, next) };
    });
  return {
    faults,
    links: links.map(([from, to]) => ({ from, to, p: Math.floor(next() * (parts + 1)) / parts })),
    signs,
    seen,
    known: names.filter(() => next() < shape.known).map((fault) => ({ fault, present: next() < 0.5 })),
  };
}

function shuffled<T>(items: readonly T[], next: () => number): T[] {
  const rest = [...items];
  return items.map(() => rest.splice(Math.floor(next() * rest.length), 1)[0]!);
}

function pairs<T>(items: readonly T[]): [T, T][] {
  return items.flatMap((a, i) => items.slice(i + 1).map((b): [T, T] => [a, b]));
}

/** Whole thousandths that sum to 1; some are 0; `first` is about the share of the first. */
function distribution(n: number, next: () => number, first: number): number[] {
  const draws = Array.from({ length: n }, (_, k) =>
    k === 0 ? first : next() < 0.2 ? 0 : next() * (1 - first),
  );
  const sum = draws.reduce((a, b) => a + b, 0);
  const whole = draws.map((d) => Math.floor((d / sum) * parts));
  whole[0]! += parts - whole.reduce((a, b) => a + b, 0);
  return whole.map((w) => w / parts);
}

function doubts(n: number, next: () => number): number[] {
  const weights: number[] = Array.from({ length: n }, () => (next() < 0.2 ? 0 : Math.ceil(next() * 20) / 20));
  return Math.max(...weights) === 0 ? weights.with(0, 0.5) : weights;
}
