import { describe, expect, test } from 'vitest';
import {
  applies,
  architectures,
  builtInCatalog,
  byId,
  type Check,
  cautionsFor,
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

describe('cautions stand before what can hurt (common practice)', () => {
  const severe = (id: string) => cautionsFor(catalog, { check: id }).map((c) => c.id);

  test('carbon monoxide on every check with the engine running', () => {
    const running = catalog.checks.filter((c) => c.engine === 'running' || c.engine === 'hot');
    expect(running.length).toBeGreaterThan(20);
    expect(running.filter((c) => !severe(c.id).includes('carbon-monoxide')).map((c) => c.id)).toEqual([]);
    const steps = catalog.runUp.filter((s) => s.engine === 'running');
    const bare = steps.filter(
      (s) => !cautionsFor(catalog, { runUp: s.id }).some((c) => c.id === 'carbon-monoxide'),
    );
    expect(bare).toEqual([]);
  });

  test('fire on every check that opens what holds or carries fuel', () => {
    const fuelSide =
      /^(fuel-|tank-cap|carburetor|float|main-jet|pilot-jet|inlet-needle|metering|pump-diaphragm)/;
    const opens = catalog.checks.filter((c) =>
      c.needsOff.some(
        (p) => fuelSide.test(p.component ?? '') || /fuel|bowl|tank|carburetor/.test(p.words ?? ''),
      ),
    );
    expect(opens.length).toBeGreaterThan(8);
    expect(opens.filter((c) => !severe(c.id).includes('fuel-handling')).map((c) => c.id)).toEqual([]);
  });

  test.each(['magnesium-burns', 'fluid-injection', 'springs-and-clips-fly', 'moves-at-idle'])(
    '%s is spoken of',
    (id) => {
      expect(catalog.cautions.map((c) => c.id)).toContain(id);
    },
  );

  test('what the trade cleans with is judged on whatever it may touch: aluminum, iron, steel, rubber and plastic', () => {
    const judged = new Set(catalog.agentsOnMaterials.map((j) => `${j.agent} on ${j.material}`));
    const used = [...new Set(catalog.cleanings.flatMap((c) => c.agents))];
    expect(used.length).toBeGreaterThan(20);
    const touched = ['aluminum', 'cast-iron', 'steel', 'rubber', 'plastic'];
    const open = used.flatMap((a) => touched.map((m) => `${a} on ${m}`)).filter((pair) => !judged.has(pair));
    expect(open).toEqual([]);
  });
});
