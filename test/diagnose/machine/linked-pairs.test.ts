import { expect, test } from 'vitest';
import { builtInCatalog } from '../../../src/catalog/index.js';
import { linkedPairs, machineNetwork } from '../../../src/diagnose/index.js';
import { inferExactly } from '../../../src/infer/index.js';

const catalog = builtInCatalog();
const pairs = linkedPairs(catalog);
const told = new Set(pairs.map((p) => `${p.fault} ${p.check}`));

/** There is a machine that can have the fault and allows the check. */
function meet(fault: string, check: string): boolean {
  const uses = (entry: { when?: { use?: readonly string[] | undefined } | undefined } | undefined) =>
    entry?.when?.use ?? catalog.uses.map((u) => u.id);
  const of = uses(catalog.faults.find((f) => f.id === fault));
  return uses(catalog.checks.find((c) => c.id === check)).some((use) => of.includes(use));
}

test('whatever the catalog declares is told: links one by one, and each function that a check reads', () => {
  const links = catalog.checks.flatMap(({ id, links }) => links.map((l) => `${l.fault} ${id}`));
  const functions = catalog.functions.flatMap(({ spoiledBy, readBy }) =>
    spoiledBy.flatMap((s) =>
      readBy
        .filter((r) => s.leaves[r.state] !== undefined && meet(s.fault, r.check))
        .map((r) => `${s.fault} ${r.check}`),
    ),
  );
  expect([...links, ...functions].filter((pair) => !told.has(pair))).toEqual([]);
});

test('what is silent moves nothing: each outcome of a check alone leaves the faults it is silent of where they stood', () => {
  const facts = { architecture: 'side-valve', use: 'mower' } as const;
  const chances = (seen: Parameters<typeof machineNetwork>[2]) => {
    const machine = machineNetwork(catalog, facts, seen);
    const { faults, posterior } = inferExactly(machine.network);
    const place = new Map(faults.map((id, i) => [id, i]));
    return new Map(machine.faults.map(({ id }) => [id, posterior[place.get(machine.now(id))!]!]));
  };
  const before = chances([]);
  // a fault that brings about another is moved by what that one shows, and the other way about
  const bringers = catalog.faults.flatMap((f) => f.causes?.flatMap((c) => [f.id, c.fault]) ?? []);
  const apart = [...before.keys()].filter((fault) => !bringers.includes(fault));
  for (const check of ['spark-across-gap', 'oil-level', 'air-cleaner-look']) {
    const silent = apart.filter((fault) => !told.has(`${fault} ${check}`));
    expect(silent.length).toBeGreaterThan(20);
    for (const { id } of catalog.checks.find((c) => c.id === check)!.outcomes) {
      const after = chances([{ check, outcomes: [id], at: '2026-01-01T00:00:00.000Z' }]);
      for (const fault of silent)
        expect(Math.abs(after.get(fault)! - before.get(fault)!), `${fault} by ${check}: ${id}`).toBeLessThan(
          1e-9,
        );
    }
  }
});
