import type { Instance } from './instance.js';

/** What is free of each resource while a schedule is being made. */
export interface Table {
  /** all free again */
  readonly clear: () => void;
  readonly take: (activity: number, start: number) => void;
  /** the first start from this step on at which everything it uses is free; the horizon is always late enough */
  readonly firstFit: (activity: number, from: number) => number;
  /** the last start from this step back; below 0 where there is none */
  readonly lastFit: (activity: number, from: number) => number;
}

export function tableOf({ free, length, uses, horizon }: Instance): Table {
  const now = free.map((steps) => steps.slice());
  // only what was touched is put back: a short plan in a long horizon is the rule
  let touchedTo = 0;
  return {
    clear: () => {
      for (const [r, steps] of now.entries()) steps.set(free[r]!.subarray(0, touchedTo));
      touchedTo = 0;
    },
    take: (activity, start) => {
      const end = start + length[activity]!;
      for (const { resource, amount } of uses[activity]!) {
        const steps = now[resource]!;
        for (let t = start; t < end; t += 1) steps[t]! -= amount;
      }
      if (end > touchedTo) touchedTo = end;
    },
    firstFit: (activity, from) => {
      const span = length[activity]!;
      const wants = uses[activity]!;
      let start = from;
      for (let k = 0; k < wants.length; ) {
        const conflict = lastShort(
          now[wants[k]!.resource]!,
          wants[k]!.amount,
          start,
          Math.min(start + span, horizon),
        );
        if (conflict < 0) k += 1;
        else {
          start = conflict + 1;
          k = 0;
        }
      }
      return start;
    },
    lastFit: (activity, from) => {
      const span = length[activity]!;
      const wants = uses[activity]!;
      let start = from;
      for (let k = 0; k < wants.length && start >= 0; ) {
        const conflict = firstShort(now[wants[k]!.resource]!, wants[k]!.amount, start, start + span);
        if (conflict < 0) k += 1;
        else {
          start = conflict - span;
          k = 0;
        }
      }
      return start;
    },
  };
}

/** Looking from the end finds the farthest jump. */
function lastShort(steps: Int32Array, amount: number, from: number, to: number): number {
  for (let t = to - 1; t >= from; t -= 1) if (steps[t]! < amount) return t;
  return -1;
}

function firstShort(steps: Int32Array, amount: number, from: number, to: number): number {
  for (let t = from; t < to; t += 1) if (steps[t]! < amount) return t;
  return -1;
}
