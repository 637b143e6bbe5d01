import { describe, expect, test } from 'vitest';
import { builtInCatalog, byId, CatalogError } from '../../../../src/catalog/index.js';
import { catalogOf, foldShop, readShopPack, shopCatalog, shopLog } from '../../../../src/job/index.js';
import { log } from '../../entries.js';

const pumps = `pack: { id: pump-shop, title: What pumps bring }
faults:
  - id: pump-ran-dry
    name: Pump ran dry
    when: { pieces: [pump-end] }
    presentPer100: 6
    mainCausePer100HardStarts: 0
    repair: new seal
    parts: [pump seal]
    repairMinutes: 40
    safety: 0
    offFirst: []
    origin: { from: rule of thumb, detail: counted in an invented shop }
`;
const newer = `${pumps}  - { id: half }\n`;

function shopWith(...texts: readonly string[]) {
  const { add, lines } = log();
  for (const text of texts) add('pack', { pack: 'pump-shop', text });
  return foldShop(lines.map((l) => ({ ...l, job: shopLog })));
}
const problems = (work: () => unknown) => {
  try {
    work();
  } catch (error) {
    if (error instanceof CatalogError) return error.problems;
    throw error;
  }
  throw new Error('it was taken');
};

describe('a shop’s own packs', () => {
  test('a shop without any computes with the program’s catalog itself', () => {
    expect(catalogOf(shopWith())).toBe(builtInCatalog());
  });

  test('what they bring is in the shop’s catalog, made once for the same texts', () => {
    const catalog = catalogOf(shopWith(pumps));
    expect(byId(catalog.faults).get('pump-ran-dry')?.name).toBe('Pump ran dry');
    expect(catalogOf(shopWith(pumps))).toBe(catalog);
  });

  test('a removed one is gone', () => {
    const { add, lines } = log();
    add('pack', { pack: 'pump-shop', text: pumps });
    add('pack', { pack: 'pump-shop', text: pumps, removed: true });
    expect(catalogOf(foldShop(lines))).toBe(builtInCatalog());
  });

  test('one that no longer fits is left out with its reasons, and the shop goes on', () => {
    const { catalog, packs } = shopCatalog(shopWith(newer));
    expect(catalog).toEqual(builtInCatalog());
    expect(packs).toMatchObject([{ pack: 'pump-shop', gives: [], text: newer }]);
    expect(packs[0]!.problems[0]).toMatchObject({ file: 'pump-shop.yaml', line: 14 });
  });
});

describe('a pack is read before it is kept', () => {
  const file = 'from-a-friend.yaml';

  test('a sound one says what it brings', () => {
    expect(readShopPack(shopWith(), { file, text: pumps })).toEqual({
      body: { pack: 'pump-shop', text: pumps },
      title: 'What pumps bring',
      gives: [{ section: 'faults', key: 'pump-ran-dry', how: 'added' }],
      replaces: false,
    });
  });

  test('the same id again takes the place of the one before', () => {
    expect(readShopPack(shopWith(pumps), { file, text: pumps }).replaces).toBe(true);
  });

  test.each([
    ['nothing', '  \n', 1, 'there is nothing in it'],
    ['no YAML', 'pack: { id: x\n', 2, 'not YAML'],
    ['no pack', 'faults: []\n', 1, ''],
    ['an entry its schema refuses', newer, 14, ''],
    [
      'the name of one of the program’s own',
      pumps.replace('pump-shop', 'faults'),
      1,
      'the program’s own packs',
    ],
  ])('%s is refused with file, line and reason', (_, text, line, reason) => {
    const [first] = problems(() => readShopPack(shopWith(), { file, text }));
    expect(first).toMatchObject({ file, line });
    expect(first!.reason).toContain(reason);
    expect(first!.reason).not.toBe('');
  });

  test('so is more text than is kept', () => {
    const long = `${pumps}# ${'x'.repeat(400_000)}`;
    expect(problems(() => readShopPack(shopWith(), { file, text: long }))[0]!.reason).toContain('letters');
  });
});
