import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../src/catalog/index.js';
import { of as asQuantity } from '../../../src/quantity/index.js';
import { campaign } from '../../support/campaign.js';
import { door } from '../door.js';
import { bench } from '../plan-job.js';
import type { TestCase } from './cases.js';
import { least, play, playFixed, probabilityOf } from './play.js';

const catalog = builtInCatalog();
const walkBehind = {
  architecture: 'overhead-valve',
  ignition: 'solid-state',
  fuelSystem: 'float-bowl',
  shaft: 'vertical',
  governor: 'flyweight',
  starter: 'rope',
  use: 'mower',
} as const;
const flat = { ...walkBehind, shaft: 'horizontal' } as const;
const of = (use: string) => ({ ...flat, use });

/** Invented. Each pair has one complaint and two truths (common practice). */
const pairs: readonly (readonly [what: string, ...two: [TestCase, TestCase]])[] = [
  [
    'dull or weak',
    told('a mower with a dull blade', walkBehind, 'will-not-cut', ['blade-dull']),
    told('a mower whose muffler is choked', walkBehind, 'will-not-cut', ['muffler-blocked']),
  ],
  [
    'belt or governor',
    told('a snow thrower on a glazed belt', of('snow'), 'blows-weakly', ['belt-glazed-or-loose']),
    told('a snow thrower whose governor spring is off', of('snow'), 'blows-weakly', ['governor-spring-off']),
  ],
  [
    'seal or suction',
    told('a pump with a washer missing', of('pump'), 'pump-gives-no-water', ['pump-suction-leak']),
    told('a pump that drips at its seal', of('pump'), 'pump-gives-no-water', ['pump-seal-leaking']),
  ],
  [
    'regulator or speed',
    told('a generator with a dead regulator', of('generator'), 'generator-output-wrong', [
      'regulator-failed',
    ]),
    told('a generator set too fast', of('generator'), 'generator-output-wrong', ['governor-arm-mis-set']),
  ],
  [
    'valve or pump',
    told('a splitter whose relief leaks', of('splitter'), 'ram-does-not-split', ['relief-weak']),
    told('a splitter with a worn pump', of('splitter'), 'ram-does-not-split', ['hydraulic-pump-worn']),
  ],
];

function told(name: string, facts: TestCase['facts'], complaint: string, faults: string[]): TestCase {
  return { name, facts, complaints: [complaint], faults, runs: 'yes' };
}

describe('machines told apart by one complaint and two truths', () => {
  // a case takes seconds with its fixed order; all ten in a campaign
  const chosen = pairs.filter((_, i) => i % campaign(5, 1) === 0);
  const played = chosen.flatMap(([, ...two]) => two.map((each) => ({ each, ...play(catalog, each) })));

  test('the true fault stands at 0.8 or more in nine of ten, nothing impossible on the way', () => {
    const missed = played.filter(({ each, advice }) =>
      each.faults.some((f) => probabilityOf(advice, f) < least),
    );
    expect(missed.map((m) => m.each.name)).toHaveLength(
      Math.min(Math.floor(played.length / 10), missed.length),
    );
    expect(played.flatMap((p) => p.wrong)).toEqual([]);
  });

  test('in at most half of the minutes of the trade’s fixed order', () => {
    const minutes = played.reduce((sum, p) => sum + (p.foundAt ?? p.minutes), 0);
    const fixed = played.reduce((sum, p) => sum + playFixed(catalog, p.each), 0);
    expect(minutes / fixed).toBeLessThanOrEqual(0.5);
  }, 600_000);
});

describe('the hand-over is barred where a tool’s safety point was not shown', () => {
  test.each([...new Set(catalog.uses.map((u) => u.id))])('%s', (use) => {
    const handheld = use === 'saw' || use === 'trimmer' || use === 'blower';
    const at = bench(handheld ? 'two-stroke' : 'overhead-valve', {
      use,
      ...(use === 'mower' && { shaft: 'vertical' }),
    });
    const steps = () => door(at.job()).runUp.items.map((i) => i.step);
    const machines = steps().filter((s) => s.barsHandOver && isOfMachine(s.when, use));
    expect(machines.length, 'safety points of the machine itself').toBeGreaterThan(0);
    const all = steps();
    for (const step of all.filter((s) => !machines.includes(s)))
      at.add('run-up', { item: step.id, title: step.title, result: 'ok', words: 'shown' });
    const blocks = door(at.job()).gates.find((g) => g.stage === 'hand-over')!.blocks;
    expect(blocks.toSorted()).toEqual(machines.map((m) => `not shown to be safe: ${m.title}`).toSorted());
    for (const step of machines)
      at.add('run-up', { item: step.id, title: step.title, result: 'ok', words: 'shown' });
    expect(door(at.job()).gates.find((g) => g.stage === 'hand-over')!.blocks).toEqual([]);
  });
});

describe('a reading of the machine’s own sheet that lies outside it bars the hand-over', () => {
  test.each([
    ['generator', 'generator-voltage', 'output-voltage', 'V', 114, 126, 138],
    ['generator', 'load-generator', 'output-voltage', 'V', 114, 126, 97],
    ['splitter', 'load-splitter', 'relief-pressure', 'psi', 2400, 2600, 3100],
  ] as const)('%s: %s', (use, item, spec, unit, from, to, read) => {
    const at = bench('overhead-valve', { use });
    const written = (n: number) => measured(n, unit);
    const detail = 'page 4';
    at.add('spec', {
      ...{ spec, label: spec, line: `${from} to ${to} ${unit}` },
      ...{ value: written(from), upTo: written(to), origin: { from: "maker's sheet", detail } },
    });
    for (const { step } of door(at.job()).runUp.items)
      at.add('run-up', { item: step.id, title: step.title, result: 'ok', words: 'shown' });
    const title = builtInCatalog().runUp.find(({ id }) => id === item)!.title;
    const blocks = () => door(at.job()).gates.find((g) => g.stage === 'hand-over')!.blocks;
    const say = (n: number) => at.add('run-up', { item, title, result: 'ok', value: written(n) });
    say(read);
    expect(blocks().join()).toContain(title);
    say((from + to) / 2);
    expect(blocks()).toEqual([]);
  });
});

function measured(n: number, unit: string) {
  const { kind, si } = asQuantity(n, unit);
  return { written: `${n} ${unit}`, kind, si, unit };
}

/** It hangs on a piece that only this use has. */
function isOfMachine(
  when: { readonly pieces?: readonly string[] | undefined } | undefined,
  use: string,
): boolean {
  return (when?.pieces ?? []).some((id) =>
    catalog.components.some((c) => c.id === id && c.onlyOn?.use?.includes(use)),
  );
}
