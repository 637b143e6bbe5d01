import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { wordsOf } from '../../src/catalog/loader/complete.js';
import { sectionNames } from '../../src/catalog/schema/sections.js';

const src = new URL('../../src/', import.meta.url);

/** Rooms above the catalog know nothing of it: what looks like an id there is a word of their own. */
const above = /^(quantity|phrase|worksheet|fasten|gauge|engine|driven|listen|sight|speech|desk)\//;

/** Everyday words that are the id of some entry as well; where they stand in code they mean something else. */
const otherwise = new Set([
  ...[
    'bore',
    'face',
    'stroke',
    'points',
    'running',
    'hunting',
    'droop',
    'oil',
    'fuel',
    'air',
    'spark',
    'squeeze',
  ],
  ...['flow', 'blade', 'belt', 'plug', 'piston', 'cylinder', 'crankshaft', 'carburetor', 'compression'],
  ...['aluminum', 'steel', 'valves', 'float', 'bolts', 'faces', 'parts'],
  // a verdict; a stream of waste; a kind of governor; a phase of the run-up; a piece of the bench plan
  ...['cannot-decide', 'chelator', 'air-vane', 'governed-speed', 'working-test'],
]);

/** Ids that packs are free to choose; those that the schema itself lists are words of the program. */
function chosenIds(): Set<string> {
  const catalog = builtInCatalog();
  const fixed = new Set(sectionNames.flatMap((section) => wordsOf(section) ?? []));
  const ids = sectionNames
    .filter((section) => wordsOf(section) === undefined && section !== 'specWords')
    .flatMap((section) => catalog[section].map(({ id }) => id as string));
  return new Set(ids.filter((id) => !fixed.has(id) && !otherwise.has(id)));
}

function literals(file: string): string[] {
  const code = readFileSync(new URL(file, src), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/[^\n]*/g, '');
  return [...code.matchAll(/(['"`])([a-z][a-z0-9-]*)\1/g)].map((match) => match[2]!);
}

const files = (readdirSync(src, { recursive: true }) as string[])
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.gen.ts') && !above.test(file));

describe('the code names no entry of the packs', () => {
  test('what it must know plays a part (roles.yaml); all else hangs on the entries themselves', () => {
    const ids = chosenIds();
    expect(ids.size).toBeGreaterThan(700);
    expect(files.length).toBeGreaterThan(300);
    const named = files.flatMap((file) =>
      literals(file)
        .filter((word) => ids.has(word))
        .map((word) => `${file}: ${word}`),
    );
    expect(named).toEqual([]);
  });

  test('at most fifteen parts are played', () => {
    expect(wordsOf('roles')!.length).toBeLessThanOrEqual(15);
  });
});
