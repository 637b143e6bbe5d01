import { expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import type { Job } from '../../src/job/index.js';
import { mower, pump } from './invented.js';

const catalog = builtInCatalog();
const jobs: readonly Job[] = [pump, mower];
const known = (list: readonly { readonly id: string }[]) => new Set(list.map(({ id }) => id));
const unknown = (ids: Iterable<string | undefined>, list: readonly { readonly id: string }[]) => {
  const all = known(list);
  return [...ids].filter((id) => id === undefined || !all.has(id));
};

test('every check, its title and its outcomes are the catalog’s', () => {
  const seen = jobs.flatMap((job) => job.observations);
  expect(seen.length).toBeGreaterThan(20);
  for (const { check, title, outcomes } of seen) {
    const found = catalog.checks.find(({ id }) => id === check);
    expect(title).toBe(found?.title);
    const words = found?.outcomes.map((outcome) => outcome.words) ?? [];
    expect(outcomes.filter((outcome) => !words.includes(outcome))).toEqual([]);
    if (!found?.several) expect(outcomes).toHaveLength(1);
  }
});

test('every complaint, variant, fault, measurement, spec and run-up item is the catalog’s', () => {
  for (const job of jobs) {
    expect(unknown(job.intake.complaints ?? [], catalog.complaints)).toEqual([]);
    expect(unknown(Object.keys(job.intake.variants ?? {}), catalog.variants)).toEqual([]);
    const faults = job.decisions.filter(({ about }) => about === 'fault').map(({ which }) => which);
    expect(unknown(faults, catalog.faults)).toEqual([]);
    expect(
      unknown(
        job.measurements.map(({ measure }) => measure),
        catalog.measurements,
      ),
    ).toEqual([]);
    expect(unknown(job.specs.keys(), catalog.specs)).toEqual([]);
    expect(unknown(job.runUp.keys(), catalog.runUp)).toEqual([]);
  }
  expect(pump.specs.size).toBeGreaterThan(15);
  expect(pump.runUp.size).toBeGreaterThan(25);
});

test('every step is about a component of the engine’s kind, and plugs ports that the catalog names', () => {
  const components = catalog.components.filter(({ architecture }) => architecture === 'overhead-valve');
  const steps = [...pump.steps.values()];
  expect(steps.length).toBeGreaterThan(20);
  expect(
    unknown(
      steps.map(({ component }) => component),
      components,
    ),
  ).toEqual([]);
  const ports = new Set(catalog.ports.map(({ name }) => name));
  const named = steps.flatMap((step) => [...(step.plugged ?? []), ...(step.unplugged ?? [])]);
  expect(named.length).toBeGreaterThan(5);
  expect(named.filter((port) => !ports.has(port))).toEqual([]);
});

test('nothing comes off before what the catalog wants off first', () => {
  const off = [...pump.steps.values()].filter(({ stage }) => stage === 'teardown').map(({ step }) => step);
  const place = new Map(off.map((step, i) => [step, i]));
  const early = catalog.components
    .filter(({ architecture, id }) => architecture === 'overhead-valve' && place.has(id))
    .flatMap(({ id, before }) =>
      before
        .filter((b) => place.has(b.component) && place.get(b.component)! > place.get(id)!)
        .map((b) => [b.component, id]),
    );
  expect(early).toEqual([]);
});

test('the mower’s plate is read by one of the catalog’s schemes', () => {
  const [plate] = mower.identities;
  expect(plate?.how === 'plate' && known(catalog.plateSchemes).has(plate.scheme!)).toBe(true);
  expect(plate?.how === 'plate' && plate.reads.length).toBeGreaterThan(2);
});
