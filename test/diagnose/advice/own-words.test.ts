import { describe, expect, test } from 'vitest';
import { builtInCatalog, byId } from '../../../src/catalog/index.js';
import { meantBy } from '../../../src/diagnose/index.js';

const catalog = builtInCatalog();
const meant = (typed: string, facts = {}) =>
  meantBy(catalog, facts, typed).map((m) => `${m.check.id}/${m.outcome.id}`);

describe('own words find the outcome that they mean', () => {
  test.each([
    ['cleaner drips with gas', 'air-cleaner-look/wet-with-fuel'],
    ['screen clogged', 'tank-inside-and-outlet/screen-clogged'],
    ['port', 'piston-through-exhaust-port/port-carboned'],
    ['outlet', 'tank-inside-and-outlet/screen-clogged'],
    ['gasket blown', 'head-gasket-look/gasket-burnt'],
    ['mouse nest under the shroud', 'light-into-fins/nest'],
    ['gas in the oil', 'oil-smell-and-feel/thin'],
    ['plug black', 'plug-tip/black-dry'],
    ['no spark', 'spark-across-gap/none'],
    ['won’t stop', 'stop-control/no'],
    ['rope does not come back', 'recoil-engages/slow-return'],
    ['Fuel line CRACKED!', 'fuel-hose-look/perished'],
    ['the muffler is loose', 'walk-round/muffler-loose'],
    ['water in the bowl', 'bowl-sample/water-beads'],
    ['valve stuck open', 'valves-move/exhaust-stuck'],
    ['no dipstick', 'oil-level/no-gauge'],
    ['no level gauge', 'oil-level/no-gauge'],
    ['tank is empty', 'tank-fuel-in-a-jar/empty'],
    ['soot across the head gasket', 'head-gasket-look/gasket-burnt'],
    ['outlet of the tank plugged', 'tank-inside-and-outlet/screen-clogged'],
    ['exhaust port full of carbon', 'piston-through-exhaust-port/port-carboned'],
    ['gas drips from the air filter', 'air-cleaner-look/wet-with-fuel'],
  ])('“%s”', (typed, outcome) => {
    expect(meant(typed)).toContain(outcome);
  });

  test('the best comes first: what is said whole before what shares a word', () => {
    expect(meant('cleaner drips with gas')[0]).toBe('air-cleaner-look/wet-with-fuel');
    expect(meant('the muffler is loose')[0]).toBe('walk-round/muffler-loose');
    expect(meant('the muffler is loose')).not.toContain('walk-round/sound');
  });
});

test('words that mean nothing to the catalog find nothing, and small words alone find nothing', () => {
  for (const typed of ['', 'the', 'hello there', 'it was on the', 'blorft'])
    expect(meant(typed), typed).toEqual([]);
});

test('what this engine cannot have is not offered', () => {
  expect(meant('piston scored', { architecture: 'two-stroke' })).toContain(
    'piston-through-exhaust-port/scored',
  );
  expect(meant('piston scored', { architecture: 'side-valve' })).not.toContain(
    'piston-through-exhaust-port/scored',
  );
});

test('each thing that an outcome is called finds that outcome', () => {
  const checks = byId(catalog.checks);
  for (const { check, outcome, words } of catalog.ownWords)
    for (const typed of words)
      expect(
        meantBy(catalog, {}, typed).map((m) => `${m.check.id}/${m.outcome.id}`),
        `${typed} (${checks.get(check)!.title})`,
      ).toContain(`${check}/${outcome}`);
});
