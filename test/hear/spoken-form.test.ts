import { beforeAll, describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { type OpenEar, openEar } from '../../src/cli/commands/open-ear.js';
import { spokenForms } from '../../src/hear/index.js';

const said = (about: string, ...answers: string[]) => spokenForms({ about, answers });

describe('what is said for an answer', () => {
  test('is its own words, up to the first comma and four at most', () => {
    expect(
      said('Needle', 'stops clean', 'wet at the sump or cover joint', 'smoother on half choke, at last'),
    ).toEqual(['stops clean', 'wet at the sump', 'smoother on half choke']);
    expect(said('At work', 'the engine holds its speed')).toEqual(['the engine holds']);
  });

  test('is said of what the question is about where it is one word', () => {
    expect(said('Spark across open tester gap', 'strong', 'weak', 'none')).toEqual([
      'spark strong',
      'spark weak',
      'no spark',
    ]);
    expect(said('Oil level as received', 'low')).toEqual(['oil level low']);
    expect(said('Light that is long to say', 'dim', 'flickers', 'yes', 'no')).toEqual([
      'it is dim',
      'it flickers',
      'yes it does',
      'no it does not',
    ]);
  });

  test('has its numbers in words', () => {
    expect(said('Compression', '20 % down', '1 to 3 mm', '4 in of water', '115 psi, steady')).toEqual([
      'twenty percent down',
      'one to three millimeters',
      'four inches of water',
      'one hundred fifteen psi',
    ]);
  });

  test('is longer where two would be said alike, and none where they cannot be told apart', () => {
    expect(said('Pressure', 'low with both, steady', 'low with both, it jerks')).toEqual([
      'low with both steady',
      'low with both it jerks',
    ]);
    expect(said('Signs', 'all (left)', 'all (right)')).toEqual([undefined, undefined]);
    expect(said('Signs', 'more than 3 ✕')).toEqual([undefined]);
  });
});

describe('every outcome of every check in the catalog', () => {
  let ear: OpenEar;
  beforeAll(async () => {
    ear = await openEar();
  });
  const checks = builtInCatalog().checks.map(({ id, title, outcomes }) => ({
    id,
    forms: spokenForms({ about: title, answers: outcomes.map(({ words }) => words) }),
  }));

  test('can be said in two words or more, alike no other of its check', () => {
    for (const { id, forms } of checks) {
      for (const form of forms) expect(form, id).toMatch(/^[a-z']+( [a-z']+)+$/);
      expect(new Set(forms).size, id).toBe(forms.length);
    }
  });

  test('is made of words whose sound is known', () => {
    const words = new Set(checks.flatMap(({ forms }) => forms.flatMap((form) => form!.split(' '))));
    expect(words.size).toBeGreaterThan(300);
    expect([...words].filter((word) => !ear.knows(word))).toEqual([]);
  });
});
