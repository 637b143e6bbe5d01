import { type Cluster, type Cut, noCut } from './cluster.js';
import type { Gathering, Model } from './model.js';
import { quickOrder } from './order.js';
import { type Layout, layOut } from './reasoner.js';
import type { Weights } from './weights.js';

/**
 * Bounds where the tables would grow too large. Some causes are cut out of their sign's table, and what they may do
 * to the sign is put into the fault's own weight: at least so much, at most so much. Both sums then have the form
 * that the tables can do, one below the true one and one above it, term by term.
 *
 * Let h(r) be what it is worth that the other causes and the leak leave the sign at grade r. A present cut cause
 * that reaches grade l turns h(r) into h(max(l, r)).
 * - From below: h(max(l, r)) ≥ h(r) · min over r of h(max(l, r)) / h(r).
 * - From above: the same with the maximum, after h was raised to at least `tilt` × the best that lies beyond,
 *   so that the ratio stays finite. Any tilt gives a bound; the search takes one that makes it small.
 * A cut cause whose fault is taken as present or absent is exact again: it simply moves h.
 */
export interface CutCause {
  readonly gathering: number;
  readonly cause: number;
  readonly fault: number;
}

export interface Relaxed {
  readonly cuts: readonly CutCause[];
  readonly layout: Layout;
}

/** Cuts the causes that explain least, in the largest table, until all tables are small enough. */
export function relax(model: Model, maxCells: number): Relaxed {
  const cuts = new Map<string, CutCause>();
  const cut: Cut = (g, c) => cuts.has(`${g}/${c}`);
  for (;;) {
    const layout = layOut(model, cuts.size === 0 ? noCut : cut, quickOrder);
    if (layout.cells <= maxCells) return { cuts: [...cuts.values()], layout: layOut(model, cut) };
    const next = weakest(model, layout, cut);
    if (next.length === 0) return { cuts: [...cuts.values()], layout };
    for (const one of next) cuts.set(`${one.gathering}/${one.cause}`, one);
  }
}

/** A twentieth of the causes that touch the largest table, those with the smallest share in explaining their sign. */
function weakest(model: Model, layout: Layout, cut: Cut): CutCause[] {
  const { cluster, order } = layout.clusters.reduce((a, b) => (b.order.cells > a.order.cells ? b : a));
  const faults = new Set(cluster.faults.filter((_, v) => order.widest.includes(v)));
  const gatherings = new Set(
    cluster.gatherings.filter((_, n) => order.widest.includes(cluster.faults.length + n)),
  );
  const open = openCauses(model, cluster, cut);
  const ofSigns = open.filter((c) => gatherings.has(c.gathering));
  const found = ofSigns.length > 0 ? ofSigns : open.filter((c) => faults.has(c.fault));
  const byShare = found.map((one) => ({ one, share: shareOf(model, one.gathering, one.cause) }));
  byShare.sort((a, b) => a.share - b.share);
  return byShare.slice(0, Math.ceil(found.length / 20)).map((f) => f.one);
}

function openCauses(model: Model, cluster: Cluster, cut: Cut): CutCause[] {
  return cluster.gatherings.flatMap((gathering) =>
    model.gatherings[gathering]!.causes.flatMap(({ fault }, cause) =>
      model.known[fault]! >= 0 || cut(gathering, cause) ? [] : [{ gathering, cause, fault }],
    ),
  );
}

/** How likely, before anything is seen, a cause reaches beyond the lowest grade, as a part of all that may. */
function shareOf(model: Model, g: number, c: number): number {
  const gathering = model.gatherings[g]!;
  const reach = gathering.causes.map(({ fault, mass }) => model.prior[fault]! * (1 - mass[0]! / total(mass)));
  return reach[c]! / (total(reach) + leakReach(gathering));
}

const leakReach = ({ beyond, worth }: Gathering): number => beyond[0]! / Math.max(...worth);
const total = (xs: Iterable<number>): number => [...xs].reduce((a, b) => a + b, 0);

/** What is taken as given in one branch of the search. */
export type Forced = ReadonlyMap<number, boolean>;

/** Weights for a sum that is below the true one. */
export function lowerWeights(relaxed: Relaxed, weights: Weights, forced: Forced): Weights {
  return relaxedWeights(relaxed, weights, forced, (worth, open) => ({
    worth,
    factors: open.map((mass) => total(mass.map((m, l) => m * stepRatio(worth, mass.length, l, Math.min)))),
  }));
}

/**
 * Weights for a sum that is above the true one.
 * @param tilt by gathering, in (0, 1]
 */
export function upperWeights(
  relaxed: Relaxed,
  weights: Weights,
  forced: Forced,
  tilt: Float64Array,
): Weights {
  return relaxedWeights(relaxed, weights, forced, (exact, open, g) => {
    const grades = relaxed.layout.model.gatherings[g]!.grades;
    const worth = open.length === 0 ? exact : raised(exact, grades, tilt[g]!);
    const factors = open.map((mass) => total(mass.map((m, l) => m * stepRatio(worth, grades, l, Math.max))));
    return { worth, factors };
  });
}

/**
 * A better tilt, from a run with `weights` of `upperWeights`. At the best tilt the share of the sum in which the
 * raised worth counts equals the expected number of cut causes that reach beyond; the step goes half the way, on a
 * logarithmic scale.
 */
export function betterTilt(
  relaxed: Relaxed,
  base: Weights,
  used: Weights,
  forced: Forced,
  run: TiltRun,
): Float64Array {
  const tilt = run.tilt.slice();
  const least = leastTilt(relaxed);
  for (const [g, causes] of byGathering(relaxed.cuts)) {
    const exact = takenIn(base, g, causes, forced);
    const worth = used.worth[g]!;
    const open = causes.filter((c) => !forced.has(c.fault));
    const fired = open.map((c) => run.posterior[c.fault]! * firedShare(worth, base.mass[g]![c.cause]!));
    const leaning = run.worthShares(g).filter((_, i) => worth[i]! > exact[i]!);
    if (leaning.length === 0 || total(leaning) === 0) continue;
    tilt[g] = Math.min(1, Math.max(least, tilt[g]! * Math.sqrt(total(fired) / total(leaning))));
  }
  return tilt;
}

/** A cut cause may raise its fault's weight by 1 / tilt; all cuts of one fault together must stay a double. */
export function leastTilt({ cuts, layout }: Relaxed): number {
  const count = new Float64Array(layout.model.faults);
  for (const { fault } of cuts) count[fault]! += 1;
  return Math.max(1e-5, 10 ** (-150 / Math.max(1, ...count)));
}

export interface TiltRun {
  readonly tilt: Float64Array;
  readonly posterior: Float64Array;
  /** by entry of a gathering's worth: its share in the sum */
  readonly worthShares: (gathering: number) => Float64Array;
}

function firedShare(worth: Float64Array, mass: Float64Array): number {
  const parts = mass.map((m, l) => m * stepRatio(worth, mass.length, l, Math.max));
  return total(parts.filter((_, l) => stepRatio(worth, mass.length, l, Math.max) > 1)) / total(parts);
}

type Rework = (
  worth: Float64Array,
  open: readonly Float64Array[],
  gathering: number,
) => { readonly worth: Float64Array; readonly factors: readonly number[] };

function relaxedWeights({ cuts }: Relaxed, weights: Weights, forced: Forced, rework: Rework): Weights {
  const { absent, present } = forcedStates(weights, forced);
  const worth = [...weights.worth];
  for (const [g, causes] of byGathering(cuts)) {
    const open = causes.filter((c) => !forced.has(c.fault));
    const done = rework(
      takenIn(weights, g, causes, forced),
      open.map((c) => weights.mass[g]![c.cause]!),
      g,
    );
    worth[g] = done.worth;
    for (const [i, c] of open.entries()) present[c.fault]! *= done.factors[i]!;
  }
  return { ...weights, absent, present, worth };
}

/** A gathering's worth with the causes taken as present in. */
function takenIn(weights: Weights, g: number, causes: readonly CutCause[], forced: Forced): Float64Array {
  const present = causes.filter((c) => forced.get(c.fault));
  return present.reduce((worth, c) => moved(worth, weights.mass[g]![c.cause]!), weights.worth[g]!);
}

function byGathering(cuts: readonly CutCause[]): Map<number, CutCause[]> {
  const groups = new Map<number, CutCause[]>();
  for (const c of cuts) groups.set(c.gathering, [...(groups.get(c.gathering) ?? []), c]);
  return groups;
}

function forcedStates(weights: Weights, forced: Forced): { absent: Float64Array; present: Float64Array } {
  const absent = weights.absent.slice();
  const present = weights.present.slice();
  for (const [fault, state] of forced) (state ? absent : present)[fault] = 0;
  return { absent, present };
}

/** What is awaited once a cause has been taken in. */
function moved(worth: Float64Array, mass: Float64Array): Float64Array {
  const grades = mass.length;
  return worth.map((_, i) => {
    const row = i - (i % grades);
    return total(mass.map((m, l) => m * worth[row + Math.max(l, i % grades)]!));
  });
}

/** The least or greatest ratio by which reaching grade l changes the worth. */
function stepRatio(
  worth: Float64Array,
  grades: number,
  l: number,
  pick: (a: number, b: number) => number,
): number {
  let ratio = 1;
  for (let i = 0; i < worth.length; i += 1) {
    if (worth[i] === 0) continue;
    const row = i - (i % grades);
    ratio = pick(ratio, worth[row + Math.max(l, i % grades)]! / worth[i]!);
  }
  return ratio;
}

function raised(worth: Float64Array, grades: number, tilt: number): Float64Array {
  return worth.map((w, i) => {
    const row = i - (i % grades);
    return Math.max(w, tilt * Math.max(...worth.slice(i, row + grades)));
  });
}
