import type { Model } from './model.js';
import { eliminationOrder, type Graph, type Order } from './order.js';

/** Faults and gatherings that hang together: whatever is seen here says nothing about another cluster. */
export interface Cluster {
  readonly faults: readonly number[];
  readonly gatherings: readonly number[];
}

/** Whether a cause is left out of the tables, to be bounded instead. */
export type Cut = (gathering: number, cause: number) => boolean;
export const noCut: Cut = () => false;

export function clustersOf(model: Model, cut: Cut = noCut): Cluster[] {
  const near = new Map<number, number[]>();
  const signAt = (g: number): number => model.faults + g;
  for (let i = 0; i < model.faults; i += 1) if (model.known[i]! < 0) near.set(i, []);
  for (let g = 0; g < model.gatherings.length; g += 1) {
    near.set(signAt(g), faultsNear(model, g, cut));
    for (const f of faultsNear(model, g, cut)) near.get(f)!.push(signAt(g));
  }
  return piecesOf(near).map((piece) => ({
    faults: piece.filter((v) => v < model.faults),
    gatherings: piece.filter((v) => v >= model.faults).map((v) => v - model.faults),
  }));
}

function faultsNear(model: Model, g: number, cut: Cut): number[] {
  const { causes, joint, owner } = model.gatherings[g]!;
  const faults = causes.filter((_, c) => !cut(g, c)).map((c) => c.fault);
  for (const { levels } of joint) faults.push(...levels);
  if (owner >= 0) faults.push(owner);
  return faults.filter((f) => model.known[f]! < 0);
}

function piecesOf(near: ReadonlyMap<number, readonly number[]>): number[][] {
  const seen = new Set<number>();
  const pieces: number[][] = [];
  for (const start of near.keys()) {
    if (seen.has(start)) continue;
    seen.add(start);
    const piece = [start];
    for (let i = 0; i < piece.length; i += 1) {
      for (const v of near.get(piece[i]!)!) {
        if (seen.has(v)) continue;
        seen.add(v);
        piece.push(v);
      }
    }
    pieces.push(piece.sort((a, b) => a - b));
  }
  return pieces;
}

/** How a cluster's variables go best. Variables: the cluster's faults, then its gatherings. */
export function orderFor(model: Model, cluster: Cluster, cut: Cut = noCut, find = eliminationOrder): Order {
  return find(graphOf(model, cluster, cut));
}

function graphOf(model: Model, cluster: Cluster, cut: Cut): Graph {
  const place = new Map(cluster.faults.map((f, v) => [f, v]));
  const size = cluster.faults.map(() => 2);
  const near = cluster.faults.map(() => new Set<number>());
  for (const g of cluster.gatherings) {
    const v = size.push(model.gatherings[g]!.grades) - 1;
    const around = new Set(faultsNear(model, g, cut).map((f) => place.get(f)!));
    near.push(around);
    for (const f of around) near[f]!.add(v);
  }
  return { size, near };
}
