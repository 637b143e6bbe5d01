import { describe, expect, test } from 'vitest';
import { builtInCatalog, byId, type Pack, problemWords, withPacks } from '../../src/catalog/index.js';

const origin = '{ from: rule of thumb, detail: counted in an invented shop }';
const pack = (id: string, ...lines: string[]): Pack => ({
  file: `${id}.yaml`,
  text: [`pack: { id: ${id}, title: Pack ${id} }`, ...lines].join('\n'),
});
const nest = pack(
  'nests',
  'faults:',
  '  - id: wasp-nest-in-intake',
  '    name: Wasp nest in the intake',
  '    when: { pieces: [carburetor] }',
  '    presentPer100: 2',
  '    mainCausePer100HardStarts: 0',
  '    repair: clear the intake',
  '    parts: []',
  '    repairMinutes: 10',
  '    safety: 0',
  '    offFirst: []',
  `    origin: ${origin}`,
);
const seenBy = pack(
  'nest-checks',
  'checks:',
  '  - id: light-down-the-intake',
  '    title: Light down the intake',
  '    when: { pieces: [carburetor] }',
  '    engine: still',
  '    reads: ladder',
  '    outcomes: [{ id: clear, words: clear }, { id: nest, words: a nest }]',
  '    minutes: 2',
  '    instruments: [light]',
  '    needsOff: []',
  '    falseAlarm: 0.01',
  '    links: [{ outcome: nest, fault: wasp-nest-in-intake, strength: strong }]',
  `    origin: ${origin}`,
);

test('without packs it is the program’s own catalog', () => {
  expect(withPacks([])).toEqual({ catalog: builtInCatalog(), packs: [] });
});

test('what a pack brings stands beside what was there, and is told', () => {
  const { catalog, packs } = withPacks([nest, seenBy]);
  expect(byId(catalog.faults).get('wasp-nest-in-intake')?.repairMinutes).toBe(10);
  expect(catalog.faults).toHaveLength(builtInCatalog().faults.length + 1);
  expect(packs.map((p) => [p.head?.title, p.problems.length])).toEqual([
    ['Pack nests', 0],
    ['Pack nest-checks', 0],
  ]);
  expect(packs[0]!.gives).toEqual([{ section: 'faults', key: 'wasp-nest-in-intake', how: 'added' }]);
});

test('an entry that takes another’s place is told as such', () => {
  const faster = pack(
    'quick',
    'faults:',
    '  - extends: stale-fuel',
    '    id: stale-fuel',
    '    repairMinutes: 9',
    `    origin: ${origin}`,
  );
  const { catalog, packs } = withPacks([faster]);
  expect(byId(catalog.faults).get('stale-fuel')?.repairMinutes).toBe(9);
  expect(packs[0]!.gives).toEqual([{ section: 'faults', key: 'stale-fuel', how: 'extended' }]);
});

describe('a pack that does not fit is left out with line and reason, and the others stand', () => {
  test('one that is broken', () => {
    const broken = pack('torn', 'faults:', '  - { id: half-a-fault }');
    const { catalog, packs } = withPacks([broken, nest]);
    expect(byId(catalog.faults).has('wasp-nest-in-intake')).toBe(true);
    expect(byId(catalog.faults).has('half-a-fault')).toBe(false);
    expect(packs[0]!.gives).toEqual([]);
    expect(packs[0]!.problems[0]).toMatchObject({ file: 'torn.yaml', line: 3 });
    expect(problemWords(packs[0]!.problems[0]!)).toMatch(/^torn\.yaml, line 3, faults\[0\]/);
    expect(packs[1]!.problems).toEqual([]);
  });

  test('one that builds on a pack that is not there', () => {
    const [alone] = withPacks([seenBy]).packs;
    expect(alone!.problems.map((p) => p.reason).join()).toContain('no "wasp-nest-in-intake" in faults');
  });

  test('one that takes away what the program’s own packs need', () => {
    const other = pack(
      'other-spark',
      'checks:',
      '  - extends: spark-across-gap',
      '    id: spark-across-gap',
      '    outcomes: [{ id: blue, words: blue }, { id: dark, words: dark }]',
      '    links: []',
      `    origin: ${origin}`,
    );
    const [left] = withPacks([other]).packs;
    expect(left!.problems.length).toBeGreaterThan(0);
    // checks and functions both name its outcomes
    const words = left!.problems.map(problemWords);
    for (const file of ['checks.yaml', 'functions.yaml'])
      expect(words.some((w) => w.includes(`with it the program’s own ${file} would no longer hold`))).toBe(
        true,
      );
  });

  test('one that makes faults bring each other about', () => {
    const circle = pack(
      'circle',
      'faults:',
      '  - extends: coil-dead',
      '    id: coil-dead',
      '    causes: [{ fault: plug-fouled-or-cracked, strength: weak }]',
      `    origin: ${origin}`,
      '  - extends: plug-fouled-or-cracked',
      '    id: plug-fouled-or-cracked',
      '    causes: [{ fault: coil-dead, strength: weak }]',
      `    origin: ${origin}`,
    );
    const [left] = withPacks([circle]).packs;
    expect(left!.problems.map((p) => p.reason).join()).toContain('bring each other about');
  });

  test('one with the name of the program’s own', () => {
    const [left] = withPacks([{ ...nest, text: nest.text.replace('id: nests', 'id: faults') }]).packs;
    expect(left!.problems[0]!.reason).toContain('is one of the program’s own packs');
  });

  test('one that proves to have no answer', () => {
    const { packs, catalog } = withPacks([nest], (c) =>
      c.faults.length > builtInCatalog().faults.length ? 'too much for this bench' : undefined,
    );
    expect(packs[0]!.problems).toMatchObject([{ file: 'nests.yaml', reason: 'too much for this bench' }]);
    expect(catalog).toEqual(builtInCatalog());
  });
});
