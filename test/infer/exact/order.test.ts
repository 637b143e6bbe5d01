import { describe, expect, test } from 'vitest';
import { eliminationOrder, type Graph } from '../../../src/infer/exact/order.js';
import { seeded } from '../random-network.js';

function graphOf(count: number, edges: readonly (readonly [number, number])[], size = 2): Graph {
  const near = Array.from({ length: count }, () => new Set<number>());
  for (const [a, b] of edges) {
    near[a]!.add(b);
    near[b]!.add(a);
  }
  return { size: near.map(() => size), near };
}

function randomGraph(seed: number): Graph {
  const next = seeded(seed);
  const count = 3 + Math.floor(next() * 60);
  const pairs = Array.from(
    { length: count * 2 },
    () => [Math.floor(next() * count), Math.floor(next() * count)] as const,
  );
  return graphOf(
    count,
    pairs.filter(([a, b]) => a !== b),
  );
}

/** Takes variables out one by one and adds up the tables, without bits. */
function cellsOf({ size, near }: Graph, order: readonly number[]): number {
  const left = near.map((n) => new Set(n));
  return order.reduce((cells, v) => {
    const around = [...left[v]!];
    for (const u of around) {
      left[u]!.delete(v);
      for (const w of around) if (w !== u) left[u]!.add(w);
    }
    return cells + around.reduce((n, u) => n * size[u]!, size[v]!);
  }, 0);
}

describe('elimination order', () => {
  test('takes every variable once and says truly what it costs', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const graph = randomGraph(seed);
      const { order, cells, widest } = eliminationOrder(graph);
      expect(
        [...order].sort((a, b) => a - b),
        `seed ${seed}`,
      ).toEqual(graph.size.map((_, v) => v));
      expect(cells / cellsOf(graph, order), `seed ${seed}`).toBeCloseTo(1, 12);
      expect(2 ** widest.length).toBeLessThanOrEqual(cells);
    }
  });

  test('is a function of the graph', () => {
    expect(eliminationOrder(randomGraph(7))).toEqual(eliminationOrder(randomGraph(7)));
  });

  test('of a tree never holds more than two variables in a table', () => {
    const next = seeded(5);
    const edges = Array.from({ length: 199 }, (_, v) => [v + 1, Math.floor(next() * (v + 1))] as const);
    expect(eliminationOrder(graphOf(200, edges, 3)).widest.length).toBe(2);
  });

  test('of a ring holds three', () => {
    const ring = Array.from({ length: 40 }, (_, v) => [v, (v + 1) % 40] as const);
    expect(eliminationOrder(graphOf(40, ring)).widest.length).toBe(3);
  });

  test('is near the best of a grid, whose width is known', () => {
    const edges = Array.from({ length: 36 }, (_, v) => v).flatMap((v) => [
      ...(v % 6 < 5 ? [[v, v + 1] as const] : []),
      ...(v < 30 ? [[v, v + 6] as const] : []),
    ]);
    const { widest } = eliminationOrder(graphOf(36, edges));
    expect(widest.length).toBeGreaterThanOrEqual(7);
    expect(widest.length).toBeLessThanOrEqual(8);
  });
});
