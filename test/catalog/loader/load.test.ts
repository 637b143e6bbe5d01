import { describe, expect, test } from 'vitest';
import {
  builtInCatalog,
  byId,
  CatalogError,
  type CatalogProblem,
  componentsOf,
  loadCatalog,
  type Pack,
} from '../../../src/catalog/index.js';
import { assemble } from '../../../src/catalog/loader/assemble.js';
import { readPack } from '../../../src/catalog/loader/pack-text.js';
import { builtInPacks } from '../pack-files.js';

/** Packs that are a part only: sound in themselves, without all that the program needs. */
const loadPart = (packs: readonly Pack[]) => assemble(packs.map(readPack));

const pack = (...lines: string[]): Pack => ({
  file: 'shop.yaml',
  text: ['pack: { id: shop, title: Our shop }', ...lines].join('\n'),
});

/** A small world of its own: quick to load, and sound. */
const small: Pack = {
  file: 'small.yaml',
  text: `pack: { id: small, title: A small world }
defaults: { origin: judgement, architecture: side-valve }
origins:
  - { id: judgement, from: rule of thumb, detail: 'trade judgement, no source' }
torqueClasses:
  - { id: by-hand, name: By hand, usedOn: clips, anchors: [] }
components:
  - id: lid
    name: Lid
    comesOffAs: alone
    before: []
    fasteners: [{ what: screw, count: 2 }]
    oneTimeParts: []
    reassemblyChecks: [seated]
    torqueClass: by-hand
    minutesOff: 1
  - id: jet
    name: Jet
    comesOffAs: alone
    before: [lid]
    fasteners: []
    oneTimeParts: []
    reassemblyChecks: []
    torqueClass: by-hand
    minutesOff: 2
`,
};

function problemsOf(...packs: Pack[]): readonly CatalogProblem[] {
  try {
    loadPart(packs);
  } catch (error) {
    if (error instanceof CatalogError) return error.problems;
    throw error;
  }
  throw new Error('the packs were taken');
}

const lineOf = (text: string, part: string) => text.slice(0, text.indexOf(part)).split('\n').length;

describe('a pack that is wrong is refused with file, line and reason', () => {
  test('text that is not YAML', () => {
    const [found] = problemsOf(pack('faults:', '  - {id: broken'));
    expect(found).toMatchObject({ file: 'shop.yaml', line: 3 });
    expect(found!.reason).toMatch(/^not YAML: /);
  });

  test('a text that is no map', () => {
    expect(problemsOf({ file: 'shop.yaml', text: '- 1\n- 2\n' })).toEqual([
      { file: 'shop.yaml', line: 1, path: '', reason: 'a pack is a map of lists' },
    ]);
  });

  test('a pack without its head', () => {
    expect(problemsOf({ file: 'shop.yaml', text: 'faults: []\n' })).toMatchObject([
      { file: 'shop.yaml', path: 'pack' },
    ]);
  });

  test('a section nobody knows', () => {
    const [found] = problemsOf(pack('wishes: []'));
    expect(found!.reason).toContain('"wishes"');
  });

  test('a section that is no list, an entry without an id', () => {
    expect(problemsOf(pack('faults: 3', 'ports:', '  - { name: Nameless }'))).toEqual([
      { file: 'shop.yaml', line: 2, path: 'faults', reason: 'a section is a list' },
      { file: 'shop.yaml', line: 4, path: 'ports[0]', reason: 'an entry is a map with an id' },
    ]);
  });

  test('a value its schema refuses, on the line where it stands', () => {
    const broken = { ...small, text: small.text.replace('minutesOff: 2', 'minutesOff: two') };
    const [found, ...others] = problemsOf(broken);
    expect(others).toEqual([]);
    expect(found).toMatchObject({ line: lineOf(broken.text, 'two'), path: 'components[1].minutesOff' });
    expect(found!.reason).toContain('side-valve/jet');
  });

  test('a field nobody knows: nothing is dropped in silence', () => {
    const broken = { ...small, text: small.text.replace('name: Jet', 'name: Jet\n    color: brass') };
    expect(problemsOf(broken)[0]!.reason).toContain('"color"');
  });

  test('an id that is no word', () => {
    const broken = { ...small, text: small.text.replace('id: jet', 'id: V-32') };
    expect(problemsOf(broken)[0]).toMatchObject({
      path: 'components[1].id',
      line: lineOf(broken.text, 'V-32'),
    });
    const numbered = { ...small, text: small.text.replace('id: jet', 'id: v-32') };
    expect(problemsOf(numbered)[0]!.reason).toContain('an id is words, not a sheet number');
  });

  test('a reference to nothing', () => {
    const broken = { ...small, text: small.text.replace('before: [lid]', 'before: [lid, spoon]') };
    expect(problemsOf(broken)).toEqual([
      {
        file: 'small.yaml',
        line: lineOf(broken.text, 'spoon'),
        path: 'components[1].before[1].component',
        reason: 'there is no "spoon" in components (components: side-valve/jet)',
      },
    ]);
  });

  test('an id given twice', () => {
    const again = pack(
      'torqueClasses:',
      '  - { id: by-hand, name: By hand, usedOn: hoses, anchors: [], origin: judgement }',
    );
    expect(problemsOf(small, again)).toEqual([
      {
        file: 'shop.yaml',
        line: 3,
        path: 'torqueClasses[0].id',
        reason: '"by-hand" is there already; write "replaces: true" to take its place',
      },
    ]);
  });

  test('parts that wait for each other', () => {
    const broken = { ...small, text: small.text.replace('before: []', 'before: [jet]') };
    expect(problemsOf(broken)).toEqual([
      {
        file: 'small.yaml',
        line: lineOf(broken.text, 'before: [jet]'),
        path: 'components[0].before',
        reason: 'components wait for each other: lid → jet → lid (components: side-valve/lid)',
      },
    ]);
  });

  test('an origin nobody knows, and a number without any', () => {
    const unknown = { ...small, text: small.text.replace('origin: judgement', 'origin: hearsay') };
    expect(problemsOf(unknown).every(({ path }) => path.endsWith('.origin'))).toBe(true);
    const none = { ...small, text: small.text.replace('origin: judgement, ', '') };
    expect(problemsOf(none)[0]).toMatchObject({ path: 'torqueClasses[0].origin' });
  });

  test('a unit nobody knows', () => {
    const text =
      '  - { id: x, name: X, kind: length, typicalNew: [{ to: 1, unit: ell }], typicalReject: [], instruments: [], decision: none }';
    const [found] = problemsOf(small, pack('defaults: { origin: judgement }', 'measurements:', text));
    expect(found).toMatchObject({ line: 4, path: 'measurements[0].typicalNew[0].unit' });
    expect(found!.reason).toContain('"ell" is not a unit known here');
  });

  test('all problems are listed, not only the first', () => {
    const broken = {
      ...small,
      text: small.text.replace('minutesOff: 1', 'minutesOff: -1').replace('minutesOff: 2', 'minutesOff: -2'),
    };
    expect(problemsOf(broken)).toHaveLength(2);
  });

  test('a plate scheme whose pattern is no regular expression, or lacks a part', () => {
    const scheme = (pattern: string) =>
      pack(
        'defaults: { origin: judgement }',
        'plateSchemes:',
        `  - { id: ours, name: Ours, pattern: '${pattern}', parts: [{ group: date, name: date, words: day }], weight: 1, examples: [{ text: A, reads: {} }] }`,
      );
    expect(problemsOf(small, scheme('('))[0]!.reason).toContain('not a regular expression');
    expect(problemsOf(small, scheme('(?<day>.)'))[0]!.reason).toContain('the pattern has no group "date"');
  });

  test('a check whose link names an outcome it does not have, or blames the healthy one', () => {
    const check = (outcome: string) =>
      pack(
        'defaults: { origin: judgement }',
        'faults:',
        '  - { id: worn, name: Worn, when: { pieces: [lid] }, presentPer100: 1, mainCausePer100HardStarts: 0, repair: new, parts: [], repairMinutes: 1, safety: 0, offFirst: [] }',
        'checks:',
        '  - id: look',
        '    title: Look',
        '    when: { pieces: [lid] }',
        '    engine: still',
        '    reads: ladder',
        '    outcomes: [{ id: fine, words: fine }, { id: bad, words: bad }]',
        '    minutes: 1',
        '    instruments: [eye]',
        '    needsOff: []',
        '    falseAlarm: 0.1',
        `    links: [{ outcome: ${outcome}, fault: worn, strength: strong }]`,
      );
    expect(() => loadPart([small, check('bad')])).not.toThrow();
    expect(problemsOf(small, check('awful'))[0]).toMatchObject({
      line: 16,
      path: 'checks[0].links[0].outcomes[0]',
    });
    expect(problemsOf(small, check('fine'))[0]!.reason).toContain('is the healthy outcome');
  });

  test('the message names every problem with its place', () => {
    try {
      loadPart([{ ...small, text: small.text.replace('minutesOff: 2', 'minutesOff: two') }]);
      expect.unreachable();
    } catch (error) {
      expect((error as Error).message).toMatch(/^small\.yaml:\d+ components\[1\]\.minutesOff: /);
    }
  });
});

describe('a shop’s own pack', () => {
  const ours = (...lines: string[]) =>
    pack('defaults: { origin: judgement, architecture: side-valve }', ...lines);

  test('adds what the others do not have', () => {
    const { catalog, replaced } = loadPart([
      small,
      ours('ports:', '  - { id: drain, name: Drain, architectures: [side-valve], plugWith: cork }'),
    ]);
    expect(catalog.ports.map(({ id }) => id)).toEqual(['drain']);
    expect(replaced).toEqual([]);
  });

  test('replaces an entry as a whole when it says so, in its place', () => {
    const { catalog, replaced } = loadPart([
      small,
      ours(
        'torqueClasses:',
        '  - { id: by-hand, replaces: true, name: Finger tight, usedOn: everything, anchors: [] }',
      ),
    ]);
    expect(catalog.torqueClasses.map(({ name }) => name)).toEqual(['Finger tight']);
    expect(replaced).toEqual([
      { section: 'torqueClasses', key: 'by-hand', file: 'shop.yaml', how: 'replaced' },
    ]);
  });

  test('cannot replace what is not there', () => {
    expect(
      problemsOf(
        small,
        ours('torqueClasses:', '  - { id: gorilla, replaces: true, name: G, usedOn: x, anchors: [] }'),
      ),
    ).toMatchObject([
      { line: 4, path: 'torqueClasses[0].replaces', reason: 'there is no "gorilla" to replace' },
    ]);
  });

  test('extends an entry and gives only what differs', () => {
    const { catalog, replaced } = loadPart([
      small,
      ours('components:', '  - { id: jet, extends: jet, minutesOff: 9 }'),
    ]);
    const jet = byId(componentsOf(catalog, 'side-valve')).get('jet')!;
    expect(jet).toMatchObject({ name: 'Jet', minutesOff: 9, before: [{ component: 'lid' }] });
    expect(replaced).toMatchObject([{ key: 'side-valve/jet', how: 'extended' }]);
  });

  test('extends an entry under a new id and leaves the first alone', () => {
    const { catalog } = loadPart([
      small,
      ours('components:', '  - { id: second-jet, extends: jet, name: Second jet }'),
    ]);
    expect(catalog.components.map(({ id, name }) => [id, name])).toEqual([
      ['lid', 'Lid'],
      ['jet', 'Jet'],
      ['second-jet', 'Second jet'],
    ]);
  });

  test('cannot change a figure without saying where it comes from', () => {
    const change = pack(
      'components:',
      '  - { id: jet, architecture: side-valve, extends: jet, minutesOff: 9 }',
    );
    expect(problemsOf(small, change)).toMatchObject([{ line: 3, path: 'components[0].extends' }]);
    expect(problemsOf(small, change)[0]!.reason).toContain('say where the changed figures come from');
  });

  test('a mistake in an inherited field is shown where it was written', () => {
    const broken = { ...small, text: small.text.replace('minutesOff: 2', 'minutesOff: two') };
    const found = problemsOf(broken, ours('components:', '  - { id: jet, extends: jet, name: Our jet }'));
    expect(found).toMatchObject([
      { file: 'small.yaml', line: lineOf(broken.text, 'two'), path: 'components[1].minutesOff' },
    ]);
  });

  test('can change the built-in knowledge: a fault’s frequency in this shop', () => {
    const change = pack(
      'defaults: { origin: our-book }',
      'origins:',
      "  - { id: our-book, from: shop's own, detail: job book of three years }",
      'faults:',
      '  - { id: stale-fuel, extends: stale-fuel, presentPer100: 85 }',
    );
    const { catalog } = loadCatalog([...builtInPacks, change]);
    expect(byId(catalog.faults).get('stale-fuel')).toMatchObject({
      presentPer100: 85,
      safety: 2,
      origin: { from: "shop's own", detail: 'job book of three years' },
    });
    expect(catalog.faults.map(({ id }) => id)).toEqual(builtInCatalog().faults.map(({ id }) => id));
  });
});

describe('what the program needs', () => {
  test.each([
    ['roles', '  - { id: penetrant, agent: penetrating-oil }\n', 'penetrant'],
    [
      'judgements',
      '  - { id: missed-minutes, value: 15, words: minutes that any fault costs which was missed }\n',
      'missed-minutes',
    ],
  ])('a catalog without one of its %s is refused', (section, entry, id) => {
    const without = builtInPacks.map(({ file, text }) => ({ file, text: text.replace(entry, '') }));
    try {
      loadCatalog(without);
      expect.unreachable();
    } catch (error) {
      expect((error as CatalogError).problems).toEqual([
        expect.objectContaining({
          path: section,
          reason: `the program needs "${id}" in ${section}, and no pack gives it`,
        }),
      ]);
    }
  });

  test('a part that is played by an entry of another section is refused', () => {
    const wrong = pack('roles:', '  - { id: penetrant, spec: stroke }');
    expect(problemsOf(small, wrong)).toMatchObject([
      { line: 3, path: 'roles[0]', reason: expect.stringContaining('"penetrant" is played by an agent') },
    ]);
  });
});

describe('a text that no pack can be is refused before it is parsed', () => {
  test.each([
    ['a wall of quotes', '"'.repeat(400_000), 1, /the line has 400000 letters, and 2500 are the most/],
    ['brackets without end', 'faults:\n  [\n'.padEnd(300_000, '['), 3, /letters, and 2500 are the most/],
    ['a quote on every line', '"\n'.repeat(100_000), 20_000, /it has 100001 lines, and 20000 are the most/],
    ['walls of quotes', `${'"'.repeat(2000)}\n`.repeat(200), 1, /more brackets, quotes and other signs/],
  ])('%s', (_, text, line, reason) => {
    expect(problemsOf({ file: 'shop.yaml', text })).toEqual([
      { file: 'shop.yaml', line, path: '', reason: expect.stringMatching(reason) },
    ]);
  });
});
