import type { Catalog } from '../../src/catalog/index.js';
import {
  accessFor,
  type Machine,
  machineNetwork,
  matters,
  nextChecks,
  type SeenCheck,
} from '../../src/diagnose/index.js';
import { faultCauses, inferExactly, type Network } from '../../src/infer/index.js';
import { stamp } from './machines.js';
import { found } from './run.js';
import { tinyFacts } from './tiny.js';

/** One way in which everything may be: which faults there are, what every check shows, and how likely that is. */
interface World {
  readonly probability: number;
  readonly present: ReadonlySet<string>;
  /** by check: the outcome's place */
  readonly shows: readonly number[];
}

/** Which check to make, by its place; of those not made. */
export type Choice = (machine: Machine, off: ReadonlySet<string>) => number;

/**
 * Expected minutes until every present fault that all checks together can identify is identified, worked out over all
 * worlds of an instance, with neither sampling nor rounding beyond that of the additions.
 *
 * The least is found by dynamic programming over information states: what was seen, and which worlds are still open (a
 * world in which all is identified costs nothing more). Each state's cost is the least over the checks of its minutes
 * for the open worlds and what follows each outcome.
 */
export class Instance {
  private readonly checks: Machine['checks'];
  private readonly worlds: readonly World[];
  private readonly foundAt = new Map<string, ReadonlySet<string>>();

  constructor(private readonly catalog: Catalog) {
    const machine = machineNetwork(catalog, tinyFacts, []);
    this.checks = machine.checks.filter((c) => c.signs.length > 0);
    this.worlds = this.worldsOf(machine.network);
  }

  leastCost(): number {
    return this.cost([], this.open([], this.worlds), new Set());
  }

  costOf(choice: Choice): number {
    return this.cost([], this.open([], this.worlds), new Set(), choice);
  }

  /** The advice's choice. */
  readonly advised: Choice = (machine, off) => {
    const first = nextChecks(machine, inferExactly(machine.network), { off, runs: 'yes' }, 1).best[0]!.id;
    return this.checks.findIndex((c) => c.check.id === first);
  };

  private cost(
    seen: readonly (readonly [check: number, outcome: number])[],
    open: readonly World[],
    off: ReadonlySet<string>,
    choice?: Choice,
  ): number {
    const left = this.checks.flatMap((_, c) => (seen.some(([made]) => made === c) ? [] : [c]));
    if (open.length === 0 || left.length === 0) return 0;
    const tried = choice ? [choice(this.machineAt(seen), off)] : left;
    return Math.min(...tried.map((c) => this.costWith(c, seen, open, off, choice)));
  }

  private costWith(
    c: number,
    seen: readonly (readonly [number, number])[],
    open: readonly World[],
    off: ReadonlySet<string>,
    choice?: Choice,
  ): number {
    const { check } = this.checks[c]!;
    const access = accessFor(this.catalog, tinyFacts, check, off);
    const after = new Set([...off, ...access.comesOff.map((p) => p.id)]);
    const now = access.minutes * open.reduce((sum, w) => sum + w.probability, 0);
    return check.outcomes.reduce((sum, _, outcome) => {
      const more = [...seen, [c, outcome] as const];
      const shown = open.filter((w) => w.shows[c] === outcome);
      return shown.length === 0 ? sum : sum + this.cost(more, this.open(more, shown), after, choice);
    }, now);
  }

  /** The worlds in which something wanted is not identified yet. */
  private open(seen: readonly (readonly [number, number])[], worlds: readonly World[]): readonly World[] {
    const found = this.identified(seen);
    return worlds.filter((w) => [...this.wanted(w)].some((f) => !found.has(f)));
  }

  private wanted(world: World): readonly string[] {
    const all = this.identified(world.shows.map((outcome, c) => [c, outcome] as const));
    return [...world.present].filter((f) => all.has(f));
  }

  private identified(seen: readonly (readonly [number, number])[]): ReadonlySet<string> {
    const key = [...seen]
      .map(([c, o]) => `${c}:${o}`)
      .sort()
      .join();
    const before = this.foundAt.get(key);
    if (before) return before;
    const machine = this.machineAt(seen);
    const { faults, posterior } = inferExactly(machine.network);
    const counts = machine.faults.filter((f) => matters(this.catalog, f.fault)).map((f) => f.id);
    const made = new Set(counts.filter((id) => posterior[faults.indexOf(id)]! >= found));
    this.foundAt.set(key, made);
    return made;
  }

  private machineAt(seen: readonly (readonly [number, number])[]): Machine {
    const readings: SeenCheck[] = seen.map(([c, outcome], i) => {
      const { check } = this.checks[c]!;
      return { check: check.id, outcomes: [check.outcomes[outcome]!.id], at: stamp(i) };
    });
    return machineNetwork(this.catalog, tinyFacts, readings);
  }

  private worldsOf({ faults, signs }: Network): World[] {
    const sign = this.checks.map((c) => signs.find((s) => s.id === c.signs[0])!);
    let worlds: World[] = [{ probability: 1, present: new Set(), shows: [] }];
    for (const { id, prior } of faults)
      worlds = worlds.flatMap((w) => [
        { ...w, probability: w.probability * (1 - prior) },
        { ...w, probability: w.probability * prior, present: new Set([...w.present, id]) },
      ]);
    for (const s of sign)
      worlds = worlds.flatMap((w) =>
        worstOf(s, w.present).map((p, k) => ({
          ...w,
          probability: w.probability * p,
          shows: [...w.shows, k],
        })),
      );
    return worlds.filter((w) => w.probability > 0);
  }
}

/** By outcome, the chance that it is the worst of the leak and the present causes. */
function worstOf(sign: Network['signs'][number], present: ReadonlySet<string>): number[] {
  const { leak } = sign;
  const draws = [
    leak,
    ...faultCauses(sign)
      .filter((c) => present.has(c.fault))
      .map((c) => c.outcome),
  ];
  const upTo = leak.map((_, k) =>
    draws.reduce((p, masses) => p * masses.slice(0, k + 1).reduce((a, b) => a + b, 0), 1),
  );
  return upTo.map((p, k) => p - (upTo[k - 1] ?? 0));
}
