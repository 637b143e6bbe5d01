import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { architectures, builtInCatalog } from '../../../src/catalog/index.js';
import {
  addCounts,
  countFaults,
  type FinishedJob,
  frequenciesFor,
  learnedFromCounts,
  learnedPriors,
  machineNetwork,
} from '../../../src/diagnose/index.js';

const catalog = builtInCatalog();
const ids = catalog.faults.slice(0, 12).map((f) => f.id);
const job = fc.record({
  architecture: fc.constantFrom(...architectures),
  faults: fc.dictionary(fc.constantFrom(...ids), fc.double({ min: 0, max: 1, noNaN: true })),
  invented: fc.boolean(),
});
const jobs = fc.array(job, { maxLength: 25 });
const runs = { seed: 20261125, numRuns: 100 };

describe('what finished jobs teach', () => {
  test('is nothing when there are none: the catalog stands', () => {
    expect(learnedPriors(catalog, [])).toEqual({ jobs: 0, strength: 30, frequencies: [] });
  });

  test('does not hang on their order', () => {
    fc.assert(
      fc.property(jobs, (all) => {
        expect(learnedPriors(catalog, all.toReversed())).toEqual(learnedPriors(catalog, all));
      }),
      runs,
    );
  });

  test('is as if it had never been counted when a job is dropped', () => {
    fc.assert(
      fc.property(jobs, job, (all, dropped) => {
        const withIt: FinishedJob[] = [...all, dropped];
        expect(
          learnedPriors(
            catalog,
            withIt.filter((j) => j !== dropped),
          ),
        ).toEqual(learnedPriors(catalog, all));
        const counted = countFaults(catalog, [{ ...dropped, invented: false }]);
        const there = addCounts(countFaults(catalog, all), counted);
        const back = counted.map((c) => ({
          ...c,
          found: -c.found,
          present: -c.present,
          absent: -c.absent,
        }));
        const left = addCounts(there, back).filter((c) => c.present + c.absent > 0);
        expect(sorted(left)).toEqual(sorted(countFaults(catalog, all)));
      }),
      runs,
    );
  });

  test('leaves invented jobs out', () => {
    fc.assert(
      fc.property(jobs, (all) => {
        const real = all.filter((j) => !j.invented);
        expect(learnedPriors(catalog, all)).toEqual(learnedPriors(catalog, real));
      }),
      runs,
    );
  });

  test('lies between the catalog and what the shop has seen, nearer the shop with every job', () => {
    const seen = (n: number) =>
      learnedPriors(
        catalog,
        Array.from({ length: n }, () => ({
          architecture: 'side-valve' as const,
          faults: { 'coil-dead': 1 },
        })),
      ).frequencies[0]!;
    let before = 0;
    for (const n of [1, 3, 10, 100]) {
      const { catalog: usual, learned, present, absent, oddsTimes } = seen(n);
      expect({ present, absent, usual }).toEqual({ present: n, absent: 0, usual: 0.05 });
      expect(learned).toBeCloseTo((30 * 0.05 + n) / (30 + n), 12);
      expect(learned).toBeGreaterThan(before);
      expect(learned).toBeLessThan(1);
      expect(oddsTimes).toBeGreaterThan(1);
      before = learned;
    }
  });

  test('goes out as counts alone, and comes back the same', () => {
    const all: FinishedJob[] = [
      { architecture: 'two-stroke', faults: { 'coil-dead': 1, 'plug-wrong': 0 } },
      { architecture: 'two-stroke', faults: { 'coil-dead': 0 } },
    ];
    const counts = JSON.parse(JSON.stringify(countFaults(catalog, all)));
    expect(counts).toEqual([
      { architecture: 'two-stroke', fault: 'plug-wrong', found: 0, present: 0, absent: 1 },
      { architecture: 'two-stroke', fault: 'coil-dead', found: 1, present: 1, absent: 1 },
    ]);
    expect(learnedFromCounts(catalog, counts).frequencies).toEqual(learnedPriors(catalog, all).frequencies);
  });

  test('moves the machine’s own network', () => {
    const met = Array.from({ length: 20 }, () => ({
      architecture: 'side-valve' as const,
      faults: { 'coil-dead': 1 },
    }));
    const frequencies = frequenciesFor(learnedPriors(catalog, met), 'side-valve');
    const prior = (own?: ReadonlyMap<string, number>) =>
      machineNetwork(
        catalog,
        { architecture: 'side-valve' },
        [],
        own ? { frequencies: own } : {},
      ).network.faults.find((f) => f.id === 'coil-dead')!.prior;
    expect(prior(frequencies)).toBeGreaterThan(4 * prior());
    expect(frequenciesFor(learnedPriors(catalog, met), 'two-stroke').size).toBe(0);
  });

  test('by its chance where nobody decided: half a chance is half a machine', () => {
    const [met] = learnedPriors(catalog, [
      { architecture: 'side-valve', faults: { 'coil-dead': 0.5 } },
      { architecture: 'side-valve', faults: { 'coil-dead': 1 } },
    ]).frequencies;
    expect(met).toMatchObject({ found: 1, present: 1.5, absent: 0.5 });
    expect(met!.learned).toBeCloseTo((30 * 0.05 + 1.5) / 32, 12);
  });

  test('of one kind of engine moves where another begins, by as many times the odds', () => {
    const met = (architecture: 'side-valve' | 'overhead-valve', n: number, chance: number): FinishedJob[] =>
      Array.from({ length: n }, () => ({ architecture, faults: { 'coil-dead': chance } }));
    const of = (jobs: FinishedJob[]) =>
      learnedPriors(catalog, jobs).frequencies.find((f) => f.architecture === 'overhead-valve')!;
    const [own] = [of(met('overhead-valve', 1, 0))];
    const both = of([...met('side-valve', 30, 1 / 4), ...met('overhead-valve', 1, 0)]);
    expect(own.learned).toBeLessThan(own.catalog);
    // side-valve: (30 × 0.05 + 7.5)/60 = 0.15, odds 3.353 times the catalog's; overhead-valve begins there
    const begins = (3.3529 * own.catalog) / (1 - own.catalog + 3.3529 * own.catalog);
    expect(both.learned).toBeCloseTo((30 * begins) / 31, 4);
  });

  test('has a strength above nothing', () => {
    expect(() => learnedPriors(catalog, [], 0)).toThrow(RangeError);
  });
});

const sorted = <T>(all: readonly T[]): string[] => all.map((x) => JSON.stringify(x)).sort();
