import { describe, expect, test } from 'vitest';
import {
  builtInCatalog,
  byId,
  type Catalog,
  type CatalogProblem,
  componentsOf,
  type Pack,
  withPacks,
} from '../../../src/catalog/index.js';
import { machineNetwork } from '../../../src/diagnose/index.js';
import { inferExactly } from '../../../src/infer/index.js';

const pack = (text: string): Pack => ({
  file: 'shop.yaml',
  text: `pack: { id: shop, title: Our shop }\ndefaults: { origin: our-book }\norigins:\n  - { id: our-book, from: shop's own, detail: job book of three years }\n${text}`,
});

function refused(text: string): CatalogProblem {
  const { problems } = withPacks([pack(text)]).packs[0]!;
  expect(problems).toHaveLength(1);
  return problems[0]!;
}

/** The catalog with packs that are all in. */
function taken(packs: readonly Pack[]): Catalog {
  const { catalog, packs: how } = withPacks(packs);
  expect(how.flatMap(({ problems }) => problems)).toEqual([]);
  return catalog;
}

const lineOf = (text: string, part: string): number => {
  const all = pack(text).text;
  return all.slice(0, all.indexOf(part)).split('\n').length;
};

const wasp = `
faults:
  - id: wasp-nest-in-intake
    name: Wasp nest in the intake
    when: { pieces: [carburetor] }
    presentPer100: 9
    mainCausePer100HardStarts: 2
    repair: pull it out
    parts: []
    repairMinutes: 10
    safety: 0
    offFirst: [air-cleaner-element]
`;
const nest = `${wasp}
components:
  - id: intake-screen
    architecture: side-valve
    name: Intake screen
    comesOffAs: alone
    before: [air-cleaner-element]
    fasteners: []
    oneTimeParts: []
    reassemblyChecks: []
    torqueClass: by-hand
    minutesOff: 2
checks:
  - id: intake-look
    title: Look down the intake
    when: { pieces: [intake-screen] }
    engine: still
    reads: kinds
    outcomes: [{ id: clear, words: clear }, { id: nest, words: nest }]
    minutes: 2
    instruments: [light]
    needsOff: [{ component: intake-screen, on: [side-valve] }]
    falseAlarm: 0.02
    links: [{ outcome: nest, fault: wasp-nest-in-intake, strength: strong }]
  - id: air-cleaner-look
    extends: air-cleaner-look
    adds:
      links: [{ outcome: blocked, fault: wasp-nest-in-intake, strength: weak }]
complaints:
  - id: cranks-never-fires
    extends: cranks-never-fires
    adds: { commonFaults: [{ fault: wasp-nest-in-intake, chance: 0.6 }] }
lookAlikes:
  - { id: two-screens, name: The two screens, kind: look-alike, tell: The intake screen is finer., harm: dust }
faultLookAlikes:
  - { id: nest-or-dirt, faults: [wasp-nest-in-intake, air-cleaner-choked], sign: no air, tellApart: [intake-look] }
oddsShifts:
  - id: wasps-like-standing-machines
    faults: [wasp-nest-in-intake]
    byStoredMonths: [{ from: 0, times: 0.2 }, { from: 6, times: 3 }]
    words: they need a quiet summer
`;

describe('a shop’s own pack beside the built-in ones', () => {
  const catalog = taken([pack(nest)]);
  const { gives } = withPacks([pack(nest)]).packs[0]!;

  test('adds faults, checks, components, look-alikes and shifts, and lengthens lists of what is there', () => {
    expect(catalog.faults).toHaveLength(builtInCatalog().faults.length + 1);
    expect(byId(componentsOf(catalog, 'side-valve')).has('intake-screen')).toBe(true);
    expect(gives.filter((g) => g.how !== 'added').map(({ key, how }) => [key, how])).toEqual([
      ['air-cleaner-look', 'extended'],
      ['cranks-never-fires', 'extended'],
    ]);
    const links = byId(catalog.checks).get('air-cleaner-look')!.links;
    expect(links.length).toBeGreaterThan(1);
    expect(links.at(-1)).toMatchObject({ fault: 'wasp-nest-in-intake', strength: 'weak' });
    expect(byId(catalog.lookAlikes).has('two-screens')).toBe(true);
    expect(byId(catalog.faultLookAlikes).has('nest-or-dirt')).toBe(true);
  });

  test('is reasoned with like the rest: its check raises its fault, its shift and its complaint count', () => {
    const chance = (months: number, complaints: string[], outcomes: string[]) => {
      const seen = outcomes.map((o) => ({ check: 'intake-look', outcomes: [o], at: '2026-03-01T09:00:00Z' }));
      const facts = { architecture: 'side-valve', storedMonths: months } as const;
      const machine = machineNetwork(catalog, facts, seen, { complaints });
      const { faults, posterior } = inferExactly(machine.network);
      return posterior[faults.indexOf('wasp-nest-in-intake')]!;
    };
    const odds = (p: number) => p / (1 - p);
    expect(odds(chance(12, [], [])) / odds(chance(1, [], []))).toBeCloseTo(15, 9);
    expect(chance(12, ['cranks-never-fires'], [])).toBeGreaterThan(chance(12, [], []));
    expect(chance(12, [], ['nest'])).toBeGreaterThan(0.9);
    expect(chance(12, [], ['clear'])).toBeLessThan(0.1);
  });

  test('overrides a single figure of judgement', () => {
    const own = 'judgements:\n  - { id: repair-fails, extends: repair-fails, value: 0.2 }\n';
    expect(byId(taken([pack(own)]).judgements).get('repair-fails')).toMatchObject({
      value: 0.2,
      origin: { detail: 'job book of three years' },
    });
  });

  test('of two packs the later one counts', () => {
    const own = (n: number, file: string): Pack => ({
      file,
      text: `pack: { id: p${n}, title: P }\ndefaults: { origin: judgement }\nfaults:\n  - { id: stale-fuel, extends: stale-fuel, presentPer100: ${n} }\n`,
    });
    const made = taken([own(10, 'one.yaml'), own(20, 'two.yaml')]);
    expect(byId(made.faults).get('stale-fuel')!.presentPer100).toBe(20);
  });
});

describe('a shop’s own pack that is wrong is refused with file, line and reason', () => {
  test.each([
    {
      title: 'a shift of a fault that is not there',
      text: 'oddsShifts:\n  - id: x\n    faults: [no-such-fault]\n    byAnswer: { fact: tipped, yes: 2, no: 1 }\n    words: x\n',
      at: 'no-such-fault',
      reason: /there is no "no-such-fault" in faults/,
    },
    {
      title: 'a shift that names no fact',
      text: 'oddsShifts:\n  - { id: x, faults: [stale-fuel], words: nothing }\n',
      at: '{ id: x',
      reason: /say either "byStoredMonths" or "byAnswer"/,
    },
    {
      title: 'months that do not rise',
      text: 'oddsShifts:\n  - id: x\n    faults: [stale-fuel]\n    byStoredMonths: [{ from: 6, times: 1 }, { from: 3, times: 2 }]\n    words: x\n',
      at: '[{ from: 6',
      reason: /the months do not rise/,
    },
    {
      title: 'a judgement out of its bounds',
      text: 'judgements:\n  - { id: repair-fails, extends: repair-fails, value: 5 }\n',
      at: '5 }',
      reason: /5 is not within 0 … 1/,
    },
    {
      title: 'a judgement nobody asks for',
      text: 'judgements:\n  - { id: weather, value: 5, words: rain }\n',
      at: 'weather',
      reason: /judgements: weather/,
    },
    {
      title: 'an outcome that hides what the check does not have',
      text: 'checks:\n  - id: plug-tip\n    extends: plug-tip\n    adds:\n      outcomes: [{ id: furry, words: furry, hides: [gold] }]\n',
      at: '[gold]',
      reason: /the check has no outcome "gold"/,
    },
    {
      title: 'hiding where one outcome is seen at a time',
      text: 'checks:\n  - id: leak-down\n    extends: leak-down\n    adds:\n      outcomes: [{ id: furry, words: furry, hides: [high] }]\n',
      at: '[high]',
      reason: /only one outcome is seen at a time/,
    },
    {
      title: 'faults that bring each other about',
      text: `${wasp}    causes: [{ fault: wasp-nest-in-intake, strength: weak }]\n`,
      at: '[{ fault: wasp',
      reason: /faults bring each other about: wasp-nest-in-intake → wasp-nest-in-intake/,
    },
    {
      title: 'a list that cannot grow',
      text: 'faults:\n  - { id: stale-fuel, extends: stale-fuel, adds: { safety: [1] } }\n',
      at: '{ safety',
      reason: /"safety" is no list that can grow/,
    },
    {
      title: 'a list given anew and added to',
      text: 'faults:\n  - { id: stale-fuel, extends: stale-fuel, parts: [], adds: { parts: [rag] } }\n',
      at: '{ parts: [rag]',
      reason: /"parts" is given anew and added to/,
    },
    {
      title: 'adding without an entry to extend',
      text: `${wasp}    adds: { parts: [net] }\n`,
      at: '{ parts: [net]',
      reason: /needs an entry to extend/,
    },
    {
      title: 'an added link to a fault that is not there',
      text: 'checks:\n  - id: plug-tip\n    extends: plug-tip\n    adds:\n      links: [{ outcome: black-dry, fault: gremlins, strength: weak }]\n',
      at: 'gremlins',
      reason: /there is no "gremlins" in faults/,
    },
  ])('$title', ({ text, at, reason }) => {
    const found = refused(text);
    expect(found.file).toBe('shop.yaml');
    expect(found.line).toBe(lineOf(text, at));
    expect(found.reason).toMatch(reason);
  });
});
