import { expect, test } from 'vitest';
import { builtInCatalog, byId } from '../../../src/catalog/index.js';
import { engineNow, questionsAt } from '../../../src/diagnose/index.js';

const catalog = builtInCatalog();
const asks = (check: string, facts: object) =>
  questionsAt(catalog, engineNow(catalog, { facts, seen: [] }), byId(catalog.checks).get(check)!).map(
    (q) => q.id,
  );

test('the compression release is asked where the compression is read, and only while nobody has said', () => {
  const facts = { architecture: 'overhead-valve' };
  expect(asks('compression-dry', facts)).toEqual(['automatic-release']);
  expect(asks('compression-dry', { ...facts, variants: { 'automatic-release': false } })).toEqual([]);
  expect(asks('oil-level', facts)).toEqual([]);
  expect(asks('compression-dry', { architecture: 'two-stroke' })).toEqual([]);
});

test('a piece that only some engines have is asked for at its own check', () => {
  expect(asks('primer-press', { architecture: 'side-valve' })).toEqual(['primer-bulb']);
  expect(asks('coil-gap', { architecture: 'side-valve' })).toEqual([]);
});
