import { describe, expect, test } from 'vitest';
import { byId } from '../../../src/catalog/index.js';
import { evidenceDestroyedBy, spoiledAlready } from '../../../src/diagnose/index.js';
import { catalog, machine, probabilities, seen } from './support.js';

describe('a reading that another check has spoiled', () => {
  const clean = seen(['plug-tip', 'wet-with-fuel'], ['fuel-down-the-throat', 'carries-on']);
  const spoiled = seen(['fuel-down-the-throat', 'carries-on'], ['plug-tip', 'wet-with-fuel']);

  test('is known to be so: fuel down the throat wets the plug', () => {
    expect(evidenceDestroyedBy(catalog, byId(catalog.checks).get('fuel-down-the-throat')!)).toContain(
      'plug-tip',
    );
    const reading = (list: typeof clean) => machine(list).readings.find((r) => r.seen.check === 'plug-tip')!;
    expect(reading(clean).spoiled).toBeUndefined();
    expect(reading(spoiled).spoiled).toBe(true);
    expect(spoiledAlready(machine(spoiled.slice(0, 1)), 'plug-tip')).toBe(true);
    expect(spoiledAlready(machine([]), 'plug-tip')).toBe(false);
  });

  test('says the same, but less', () => {
    const without = probabilities(spoiled.slice(0, 1));
    const [early, late] = [probabilities(clean), probabilities(spoiled)];
    for (const fault of ['inlet-needle-leaking', 'choke-stuck-shut']) {
      expect(late[fault]!).toBeGreaterThan(without[fault]!);
      expect(late[fault]!).toBeLessThan(early[fault]!);
    }
  });

  test('leaves every outcome possible, whatever was read', () => {
    const read = machine(spoiled).network.seen.filter((r) => r.sign.startsWith('plug-tip'));
    expect(read.length).toBeGreaterThan(0);
    for (const r of read) {
      const weights = 'weights' in r ? r.weights : [];
      expect(Math.min(...weights)).toBeGreaterThan(0);
      // what is likely under each outcome is a distribution over what may be read
      expect(weights.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    }
  });

  test('does not take the place of a clean one', () => {
    const both = [...clean, ...seen(['oil-level', 'right'], ['oil-level', 'right'], ['plug-tip', 'tan'])];
    const late = both.map((s, i) => ({ ...s, at: `2026-03-01T10:0${i}:00.000Z` }));
    const counted = machine(late).readings.filter((r) => r.seen.check === 'plug-tip' && !r.silent);
    expect(counted.map((r) => r.seen.outcomes)).toEqual([['wet-with-fuel']]);
  });

  test('is a clean one again once what it shows was repaired', () => {
    const repairs = [{ fault: 'inlet-needle-leaking', at: '2026-03-01T09:00:30.000Z' }];
    const made = machine(spoiled, { history: { repairs } });
    expect(made.readings.find((r) => r.seen.check === 'plug-tip')!.spoiled).toBeUndefined();
  });
});
