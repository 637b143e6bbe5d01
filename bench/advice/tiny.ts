import type { Catalog, Check, Component, Fault } from '../../src/catalog/index.js';
import type { MachineFacts } from '../../src/diagnose/index.js';

type Next = () => number;

export const tinyFacts: MachineFacts = { architecture: 'overhead-valve' };

const origin = { from: 'rule of thumb', detail: 'made up for this instance' } as const;
const letters = ['a', 'b', 'c', 'd', 'e'] as const;

/**
 * A made-up catalog so small that the best order of checks can be worked out: three or four faults that all matter, four
 * or five checks of two or three outcomes, a cover that two of them need off and a head behind it that one needs.
 */
export function tinyCatalog(rest: Catalog, next: Next): Catalog {
  const faults = letters.slice(0, 3 + below(2, next)).map((l) => tinyFault(`fault-${l}`, next));
  const checks = letters.slice(0, 4 + below(2, next)).map((l, i) => tinyCheck(`check-${l}`, i, faults, next));
  return {
    ...rest,
    faults,
    checks,
    components: [
      tinyComponent('cover', [], 2 + below(8, next)),
      tinyComponent('head', ['cover'], 4 + below(10, next)),
    ],
    priors: [],
    oddsShifts: [],
    complaints: [],
    checkKin: [],
    evidence: [],
    cautions: [],
  };
}

const below = (n: number, next: Next): number => Math.floor(next() * n);

function tinyFault(id: string, next: Next): Fault {
  return {
    id,
    name: id,
    presentPer100: 5 + 40 * next() ** 2,
    mainCausePer100HardStarts: 0.5 + 3 * next(),
    repair: 'mended',
    parts: [],
    repairMinutes: 10 + below(60, next),
    safety: 0,
    offFirst: [],
    origin,
  };
}

function tinyCheck(id: string, place: number, faults: readonly Fault[], next: Next): Check {
  const bad = letters.slice(0, 1 + below(2, next));
  const links = faults
    .filter(() => next() < 0.6)
    .map((f) => ({
      outcomes: [bad[below(bad.length, next)]!],
      fault: f.id,
      strength: next() < 0.6 ? ('strong' as const) : ('medium' as const),
    }));
  const sure = { outcomes: [bad[0]!], fault: faults[place % faults.length]!.id, strength: 'strong' as const };
  return {
    id,
    title: id,
    engine: 'still',
    reads: next() < 0.5 ? 'ladder' : 'kinds',
    outcomes: [{ id: 'healthy', words: 'healthy' }, ...bad.map((b) => ({ id: b, words: b }))],
    minutes: 1 + below(12, next),
    instruments: [],
    needsOff: place === 0 ? [{ component: 'head' }] : place === 1 ? [{ component: 'cover' }] : [],
    falseAlarm: 0.02 + 0.1 * next(),
    links: [sure, ...links.filter((l) => l.fault !== sure.fault)],
    origin,
  };
}

function tinyComponent(id: string, before: readonly string[], minutesOff: number): Component {
  return {
    id,
    architecture: 'overhead-valve',
    name: id,
    comesOffAs: 'alone',
    before: before.map((component) => ({ component })),
    fasteners: [],
    oneTimeParts: [],
    reassemblyChecks: [],
    torqueClass: 'by-hand',
    minutesOff,
    origin,
  };
}
