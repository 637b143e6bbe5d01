import { describe, expect, test } from 'vitest';
import { builtInCatalog, CatalogError, loadCatalog } from '../../../src/catalog/index.js';
import { builtInPacks } from '../pack-files.js';

const catalog = builtInCatalog();
const names = catalog.prices.flatMap((p) => p.names);

describe('prices', () => {
  test('each part that a fault or a component names has just one price', () => {
    const wanted = new Set([
      ...catalog.faults.flatMap((f) => f.parts),
      ...catalog.components.flatMap((c) => c.oneTimeParts),
    ]);
    expect(wanted.size).toBeGreaterThan(150);
    expect([...wanted].filter((w) => !names.includes(w))).toEqual([]);
    expect(names.filter((n) => !wanted.has(n))).toEqual([]);
    expect(new Set(names).size).toBe(names.length);
  });

  test('each says that it is trade judgement', () => {
    for (const { origin } of [...catalog.prices, ...catalog.scrapChances, ...catalog.workFactors])
      expect(origin.detail).toBe('trade judgement, no source');
  });

  test('a shop’s pack puts its own price in place of one', () => {
    const text =
      'pack: { id: ours, title: Ours }\nprices:\n  - { id: spark-plug, replaces: true, names: [spark plug], from: 3.1, to: 3.1, currency: $, origin: judgement }\n';
    const own = loadCatalog([...builtInPacks, { file: 'ours.yaml', text }]).catalog;
    expect(own.prices.find((p) => p.id === 'spark-plug')).toMatchObject({ from: 3.1, to: 3.1 });
  });

  test('a span that runs backward is refused with its line', () => {
    const text =
      'pack: { id: ours, title: Ours }\nprices:\n  - { id: ours, names: [ours], from: 9, to: 3, currency: $, origin: judgement }\n';
    expect(() => loadCatalog([...builtInPacks, { file: 'ours.yaml', text }])).toThrow(CatalogError);
    expect(() => loadCatalog([...builtInPacks, { file: 'ours.yaml', text }])).toThrow(
      /ours\.yaml:3 .*"from" is above "to"/,
    );
  });
});

test('a fault belongs to one shared piece of work at most', () => {
  const faults = catalog.sharedRepairs.flatMap((s) => s.faults);
  expect(new Set(faults).size).toBe(faults.length);
});

test('every fault whose repair speaks of scrap may turn out to be scrap', () => {
  const said = catalog.faults.filter((f) => /\bscrap\b/.test(f.repair)).map((f) => f.id);
  expect(said.length).toBeGreaterThan(0);
  expect(catalog.scrapChances.map((s) => s.fault)).toEqual(expect.arrayContaining(said));
});
