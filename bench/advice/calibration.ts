import type { Catalog } from '../../src/catalog/index.js';
import {
  type Machine,
  machineNetwork,
  type SeenCheck,
  spoiledAlready,
  tellsWhetherItRuns,
} from '../../src/diagnose/index.js';
import { inferExactly } from '../../src/infer/index.js';
import { canBeMade, type DrawnMachine, drawMachine, stamp } from './machines.js';
import { probability } from './run.js';

/** What one drawn machine adds to one bin of predicted probabilities. */
export interface BinPart {
  readonly n: number;
  readonly predicted: number;
  readonly present: number;
}

/** What one drawn machine says of the predictions. */
export interface Calibrated {
  readonly bins: readonly BinPart[];
  /** summed squares of predicted less present, and the same of the plain frequencies */
  readonly brier: number;
  readonly climate: number;
}

export const binCount = 10;

/** Every fault's probability on a drawn machine after a random part of the checks, against whether it is there. */
export function calibrate(
  catalog: Catalog,
  next: () => number,
  drawn = drawMachine(catalog, next),
): Calibrated {
  const machine = partlyChecked(catalog, drawn, next);
  const inference = inferExactly(machine.network);
  const bins = Array.from({ length: binCount }, () => ({ n: 0, predicted: 0, present: 0 }));
  let brier = 0;
  let climate = 0;
  for (const { id, frequency } of machine.faults) {
    const p = probability(machine, inference, id);
    const there = drawn.present.has(id) ? 1 : 0;
    const bin = bins[Math.min(binCount - 1, Math.floor(binCount * p))]!;
    bin.n += 1;
    bin.predicted += p;
    bin.present += there;
    brier += (p - there) ** 2;
    climate += (frequency - there) ** 2;
  }
  return { bins, brier, climate };
}

/**
 * Checks in a random order, each made with the same random chance. Those that tell whether the engine runs are always
 * made: which others could not be made follows from them, so that nothing is left out because of what is wrong and not
 * seen.
 */
export function partlyChecked(catalog: Catalog, drawn: DrawnMachine, next: () => number): Machine {
  const share = next();
  const seen: SeenCheck[] = [];
  const passed = new Set<string>();
  for (;;) {
    const machine = machineNetwork(catalog, drawn.facts, seen, drawn.history);
    const left = machine.checks.filter((c) => canBeMade(drawn, c) && !passed.has(c.check.id));
    const chosen = left[Math.floor(next() * left.length)];
    if (!chosen) return machine;
    if (!tellsWhetherItRuns(chosen.check) && next() >= share) {
      passed.add(chosen.check.id);
      continue;
    }
    const outcomes = drawn.shows(chosen, spoiledAlready(machine, chosen.check.id));
    seen.push({ check: chosen.check.id, outcomes, at: stamp(seen.length) });
  }
}

/** A bin over all machines. */
export interface Bin {
  readonly n: number;
  /** mean of the predicted probabilities */
  readonly predicted: number;
  /** part of them that is there */
  readonly present: number;
  /** of `present` less `predicted`; faults of one machine are not independent, so machines are what is counted */
  readonly standardError: number;
}

export function binsOf(all: readonly Calibrated[]): Bin[] {
  return Array.from({ length: binCount }, (_, b) => {
    const parts = all.map((c) => c.bins[b]!);
    const n = sum(parts.map((p) => p.n));
    return {
      n,
      predicted: sum(parts.map((p) => p.predicted)) / n,
      present: sum(parts.map((p) => p.present)) / n,
      standardError: Math.sqrt(sum(parts.map((p) => (p.present - p.predicted) ** 2))) / n,
    };
  });
}

export const sum = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0);
