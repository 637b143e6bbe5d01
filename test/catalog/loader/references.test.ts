import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { builtInCatalog, withPacks } from '../../../src/catalog/index.js';
import { danglingReferences } from '../../../src/catalog/loader/check-references.js';
import { references } from '../../../src/catalog/schema/fields/reference.js';
import { referencesIn } from '../../../src/catalog/schema/find-references.js';
import { keyOf, type SectionName, sectionNames, sections } from '../../../src/catalog/schema/sections.js';

const head = 'pack: { id: shop, title: Our shop }\ndefaults: { origin: judgement }\n';

/** What keeps a shop's pack out. */
function refused(text: string) {
  return withPacks([{ file: 'shop.yaml', text: head + text }]).packs[0]!.problems;
}

const measurement = (more: string) => `measurements:
  - id: our-gap
    name: Our gap
    kind: length
    ${more}
    typicalReject: []
    instruments: []
    decision: none
`;
const check = (more: string) => `checks:
  - id: our-look
    title: Our look
    engine: still
    reads: ladder
    outcomes: [{ id: fine, words: fine }, { id: bad, words: bad }]
    minutes: 1
    instruments: [eye]
    needsOff: []
    falseAlarm: 0.1
    ${more}
`;

describe('a reference to nothing is refused with file, line and reason, wherever it stands', () => {
  test.each([
    [
      'the machines of a complaint',
      'complaints:\n  - { id: coughs, name: Coughs, ownerSays: [coughs], firstChecks: [plug-tip], commonFaults: [stale-fuel],\n      when: { variants: [no-such-thing] } }\n',
      5,
      'complaints[0].when.variants[0]',
    ],
    [
      'the machines of a first look',
      'firstLooks:\n  - { id: soot, title: Soot, asks: "Any soot?", checks: [plug-tip], when: { variants: [no-such-thing] } }\n',
      4,
      'firstLooks[0].when.variants[0]',
    ],
    [
      'the machines that a check is not for',
      check('when: { notVariants: [no-such-thing] }\n    links: []'),
      13,
      'checks[0].when.notVariants[0]',
    ],
    [
      'the machines of a link',
      check(
        'links: [{ outcome: bad, fault: stale-fuel, strength: weak,\n      when: { variants: [no-such-thing] } }]',
      ),
      14,
      'checks[0].links[0].when.variants[0]',
    ],
    [
      'the machines of what a fault brings about',
      'faults:\n  - extends: stale-fuel\n    id: stale-fuel\n    causes:\n      - { fault: coil-dead, strength: weak, when: { notVariants: [no-such-thing] } }\n',
      7,
      'faults[0].causes[0].when.notVariants[0]',
    ],
    [
      'the machines of a measurement',
      measurement('when: { variants: [no-such-thing] }\n    typicalNew: []'),
      7,
      'measurements[0].when.variants[0]',
    ],
    [
      'the machines of one figure',
      measurement('typicalNew: [{ to: 1, unit: mm, when: { variants: [no-such-thing] } }]'),
      7,
      'measurements[0].typicalNew[0].when.variants[0]',
    ],
    [
      'the machines of a line of the maker’s sheet',
      'specs:\n  - extends: stroke\n    id: stroke\n    when: { variants: [no-such-thing] }\n',
      6,
      'specs[0].when.variants[0]',
    ],
    [
      'the machines of a run-up step that has a rule of its own',
      'runUp:\n  - extends: droop\n    id: droop\n    rule: { to: 5, unit: "%", when: { variants: [no-such-thing] } }\n',
      6,
      'runUp[0].rule.when.variants[0]',
    ],
    [
      'the machines of a number of the hand-over',
      'acceptance:\n  - extends: leak-down\n    id: leak-down\n    when: { variants: [no-such-thing] }\n',
      6,
      'acceptance[0].when.variants[0]',
    ],
    [
      'the machines of what is due next',
      'nextDue:\n  - extends: oil\n    id: oil\n    when: { variants: [no-such-thing] }\n',
      6,
      'nextDue[0].when.variants[0]',
    ],
    [
      'the machines of a caution’s figure',
      'cautions:\n  - extends: blade-stop\n    id: blade-stop\n    figures: [{ to: 3, unit: s, when: { variants: [no-such-thing] } }]\n',
      6,
      'cautions[0].figures[0].when.variants[0]',
    ],
  ])('%s', (_, text, line, path) => {
    const problems = refused(text);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ file: 'shop.yaml', line, path });
    expect(problems[0]!.reason).toContain('there is no "no-such-thing" in variants');
  });
});

describe('what else a reference may not do', () => {
  test('an outcome of another check that this one does not have', () => {
    const repeat = (after: string) =>
      check(
        `differentialOf: { check: fuel-flow, after: [${after}], bypass: hose, bypasses: [fuel-filter-blocked], changed: [bad], unchanged: fine }\n    links: []`,
      );
    const problems = refused(repeat('purple'));
    expect(problems).toMatchObject([
      { line: 13, path: 'checks[0].differentialOf.after[0]', reason: expect.stringContaining('"fuel-flow"') },
    ]);
  });

  test('a piece of one architecture that names a way in which only another architecture differs', () => {
    const problems = refused(
      'components:\n  - extends: muffler\n    id: muffler\n    architecture: two-stroke\n    onlyOn: { variants: [tank-on-shroud] }\n',
    );
    expect(problems).toMatchObject([
      {
        line: 7,
        path: 'components[0].onlyOn.variants[0]',
        reason: expect.stringContaining('there is no "tank-on-shroud" in variants of two-stroke'),
      },
    ]);
  });
});

type Fields = Record<string, unknown>;

/** The built-in catalog as the loader has it while it checks. */
function loaded(): Map<SectionName, Map<string, Fields>> {
  const catalog = builtInCatalog();
  return new Map(
    sectionNames.map((name) => [
      name,
      new Map(
        (catalog[name] as readonly Fields[]).map((entry) => [keyOf(name, entry), structuredClone(entry)]),
      ),
    ]),
  );
}

describe('laws of the schema', () => {
  test('every place at which a built-in entry points at something is checked', () => {
    const entries = loaded();
    expect(danglingReferences(entries)).toEqual([]);
    const tried = new Set<string>();
    for (const section of sectionNames) {
      for (const [key, entry] of entries.get(section)!) {
        for (const { path } of referencesIn(sections[section], entry)) {
          const place = `${section}.${path.map((step) => (typeof step === 'number' ? '*' : step)).join('.')}`;
          if (tried.has(place)) continue;
          tried.add(place);
          const broken = structuredClone(entry);
          let holder: Fields = broken;
          for (const step of path.slice(0, -1)) holder = holder[step] as Fields;
          holder[path.at(-1)!] = 'no-such-thing';
          const only = new Map([...entries, [section, new Map([...entries.get(section)!, [key, broken]])]]);
          expect(danglingReferences(only), place).toContainEqual(
            expect.objectContaining({ section, key, path, reason: expect.stringContaining('no-such-thing') }),
          );
        }
      }
    }
    expect(tried.size).toBeGreaterThan(70);
  });

  test('an id that is not the entry’s own is a declared reference', () => {
    const undeclared: string[] = [];
    const visit = (schema: z.core.$ZodTypes, path: string): void => {
      const { def } = schema._zod;
      if (def.type === 'object') {
        for (const [field, each] of Object.entries(def.shape))
          visit(each as z.core.$ZodTypes, `${path}.${field}`);
      } else if (def.type === 'array') visit(def.element as z.core.$ZodTypes, `${path}.*`);
      else if (def.type === 'optional') visit(def.innerType as z.core.$ZodTypes, path);
      else if (def.type === 'pipe') visit(def.out as z.core.$ZodTypes, path);
      else if (def.type === 'string') {
        const patterns = [...((schema._zod.bag.patterns ?? []) as Iterable<RegExp>)].map(String);
        const isId = patterns.some((pattern) => pattern.includes('[a-z][a-z0-9]*(-[a-z0-9]+)*'));
        if (isId && !path.endsWith('.id') && !references.has(schema)) undeclared.push(path);
      }
    };
    for (const name of sectionNames) visit(sections[name] as unknown as z.core.$ZodTypes, name);
    expect(undeclared).toEqual([]);
  });
});
