import { describe, expect, test } from 'vitest';
import {
  applies,
  architectures,
  builtInCatalog,
  byId,
  type Check,
  componentsOf,
  type When,
} from '../../../src/catalog/index.js';
import { judgementIds } from '../../../src/catalog/schema/judgement.js';

const catalog = builtInCatalog();
const onto = (when: When | undefined, architecture: string): boolean =>
  applies(when, { architecture }) !== 'no';

describe.each(architectures)('on a %s engine', (architecture) => {
  const checks = catalog.checks.filter((c) => onto(c.when, architecture));
  const faults = catalog.faults.filter((f) => onto(f.when, architecture));
  const components = byId(componentsOf(catalog, architecture));

  test('every fault is raised by at least one check that can be made there', () => {
    const raised = new Set(
      checks.flatMap((c) =>
        c.links.filter((l) => !l.withComplaint && onto(l.when, architecture)).map((l) => l.fault),
      ),
    );
    expect(faults.filter((f) => !raised.has(f.id)).map((f) => f.id)).toEqual([]);
    expect(faults.length).toBeGreaterThan(60);
  });

  test('every check accuses a fault that such an engine can have', () => {
    const here = new Set(faults.map((f) => f.id));
    const idle = checks.filter((c) => !c.links.some((l) => here.has(l.fault)));
    expect(idle.map((c) => c.id)).toEqual([]);
  });

  test('every component that a check or a repair needs off on it is one of its own', () => {
    const places = [...checks.flatMap((c) => c.needsOff), ...faults.flatMap((f) => f.offFirst)];
    const named = places.filter((p) => p.component !== undefined && p.on?.includes(architecture));
    expect(named.filter((p) => !components.has(p.component!))).toEqual([]);
  });

  test('what brings about what never comes round, and no check waits for itself', () => {
    const brings = new Map(faults.map((f) => [f.id, (f.causes ?? []).map((c) => c.fault)]));
    const waits = new Map(checks.map((c) => [c.id, firstOf(c)]));
    for (const graph of [brings, waits]) expect(roundTrip(graph)).toBeUndefined();
    expect([...brings.values()].flat().length).toBeGreaterThan(5);
  });
});

const firstOf = ({ during, differentialOf }: Check): string[] =>
  [during, differentialOf?.check].filter((c) => c !== undefined);

/** A node that can be reached from itself, by plain walking. */
function roundTrip(graph: ReadonlyMap<string, readonly string[]>): string | undefined {
  return [...graph.keys()].find((start) => {
    const reached = new Set<string>();
    const open = [...graph.get(start)!];
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      if (reached.has(at)) continue;
      reached.add(at);
      open.push(...(graph.get(at) ?? []));
    }
    return reached.has(start);
  });
}

describe('figures of judgement', () => {
  test('each that is asked for is given once, with its words and its origin', () => {
    expect(catalog.judgements.map((j) => j.id).sort()).toEqual([...judgementIds].sort());
    for (const { words, origin } of [
      ...catalog.judgements,
      ...catalog.oddsShifts,
      ...catalog.complaintChances,
    ]) {
      expect(words.length).toBeGreaterThan(8);
      expect(origin.detail).toBe('trade judgement, no source');
    }
  });

  test('every list of numbers in the catalog has an entry with an origin', () => {
    const lacking: string[] = [];
    for (const [section, list] of Object.entries(catalog))
      for (const entry of list as readonly Record<string, unknown>[])
        if (!('origin' in entry) && holdsNumber(entry)) lacking.push(`${section}/${entry.id}`);
    // vocabulary, materials, agents: words only
    expect(lacking).toEqual([]);
  });
});

function holdsNumber(value: unknown): boolean {
  if (typeof value === 'number') return true;
  if (typeof value !== 'object' || value === null || 'origin' in value) return false;
  return Object.values(value).some(holdsNumber);
}
