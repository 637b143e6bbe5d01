import { describe, expect, test } from 'vitest';
import { builtInCatalog, withPacks } from '../../../../src/catalog/index.js';
import { findWorksheet } from '../../../../src/desk/index.js';
import { engineNow } from '../../../../src/diagnose/index.js';
import { worksheets as driven } from '../../../../src/driven/worksheets.js';
import { findable, found, grouped } from '../../../../src/web/sheets/measure/choosable.js';
import { workOutOf } from '../../../../src/web/sheets/measure/work-out-of.js';

const job = { architecture: 'two-stroke' as const };
const catalogWith = (entry: string) => {
  const text = `pack: { id: saws, title: Saws }\ndefaults: { origin: judgement }\nmeasurements:\n${entry}`;
  const { catalog, packs } = withPacks([{ file: 'saws.yaml', text }]);
  expect(packs[0]!.problems).toEqual([]);
  return catalog;
};
const sprocket = (group: string) =>
  `  - { id: sprocket-wear, name: Sprocket wear, kind: length, components: [chain-and-bar], ${group} typicalNew: [], typicalReject: [{ from: 0.5, unit: mm }], instruments: [{ name: rule }], decision: replace }\n`;

describe('what can be chosen on the Measure sheet', () => {
  test('every measurement of the catalog, each once', () => {
    const catalog = builtInCatalog();
    const shown = grouped(catalog, findable(catalog, job)).flatMap(({ of }) => of.map((f) => f.measure.id));
    expect(shown.toSorted()).toEqual(catalog.measurements.map(({ id }) => id).toSorted());
  });

  test('a measurement of the shop’s own pack, in the group that it names', () => {
    const catalog = catalogWith(sprocket('group: bolts,'));
    const bolts = grouped(catalog, findable(catalog, job)).find(({ title }) => title === 'Bolts')!;
    expect(bolts.of.map((f) => f.measure.id)).toContain('sprocket-wear');
    expect(found(findable(catalog, job), 'sprocket wear').map((f) => f.measure.id)).toEqual([
      'sprocket-wear',
    ]);
  });

  test('one that names no group, last', () => {
    const catalog = catalogWith(sprocket(''));
    expect(grouped(catalog, findable(catalog, job)).at(-1)).toMatchObject({
      title: 'Others',
      of: [{ measure: { id: 'sprocket-wear' } }],
    });
  });
});

test('each measurement of the built-in packs names its group, and the worksheet it goes on with has the field', () => {
  for (const { id, group, goesOn } of builtInCatalog().measurements) {
    expect(group, id).toBeDefined();
    if (!goesOn) continue;
    const sheet = findWorksheet(goesOn.worksheet);
    expect(
      sheet?.fields.map((field) => field.id),
      id,
    ).toContain(goesOn.field);
  }
});

describe('the worksheets of what an engine drives', () => {
  const { components } = builtInCatalog();

  test('each that a piece names is one of the desk', () => {
    for (const { id, workOut = [] } of components)
      for (const { worksheet } of workOut)
        expect(findWorksheet(worksheet), `${id}: ${worksheet}`).toBeDefined();
  });

  test('each of them is reached from a piece', () => {
    const reached = new Set(components.flatMap(({ workOut = [] }) => workOut.map((w) => w.worksheet)));
    expect(driven.map(({ id }) => id).filter((id) => !reached.has(id))).toEqual([]);
  });

  test('a machine shows those of its own pieces, each once', () => {
    const asked = (use: string) =>
      workOutOf(builtInCatalog(), engineNow(builtInCatalog(), { facts: { ...job, use }, seen: [] })).map(
        ({ worksheet }) => worksheet,
      );
    expect(asked('saw')).toEqual(['saw-chain', 'saw-chain-stretch']);
    expect(asked('splitter')).toEqual(expect.arrayContaining(['ram-force', 'oil-line']));
    expect(asked('chipper')).toEqual(expect.arrayContaining(['knife-gap', 'belt-slip']));
    expect(asked('generator')).not.toContain('knife-gap');
  });

  test('an engine of which nobody has said what it drives shows none', () => {
    const catalog = builtInCatalog();
    expect(workOutOf(catalog, engineNow(catalog, { facts: job, seen: [] }))).toEqual([]);
  });
});
