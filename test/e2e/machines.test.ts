import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { engineNow } from '../../src/diagnose/index.js';
import { FindingsSheet } from './findings-support.js';
import { expectAccessible, hang, type Line, send, visitShop } from './support.js';

/** Two invented machines from their complaint to proven work; what is the same on every engine is written as lines. */
const visit = visitShop();
const engine = {
  architecture: 'overhead-valve',
  ignition: 'solid-state',
  fuelSystem: 'float-bowl',
  shaft: 'horizontal',
  governor: 'flyweight',
  starter: 'rope',
} as const;
const decided: Line = [
  'decision',
  { about: 'machine', title: 'decided', choice: 'repair', reason: 'with the owner' },
];

/** Every other step of this machine's run-up, in order. */
function otherSteps(facts: Record<string, string>, left: readonly string[]): Line[] {
  const catalog = builtInCatalog();
  const now = engineNow(catalog, { facts, seen: [] });
  return catalog.runUp
    .filter((step) => now.concerns(step) && !left.includes(step.id))
    .map((step) => ['run-up', { item: step.id, title: step.title, result: 'ok', words: 'shown' }]);
}

const stage = (name: string) =>
  visit.page
    .getByRole('navigation', { name: 'Stages' })
    .getByRole('link', { name: new RegExp(`^${name}`) })
    .click();

/** Answers the open step of the run-up. */
async function answer(reading: string | undefined) {
  const { page } = visit;
  await page.getByRole('button', { name: 'Next step', exact: true }).first().click();
  const dialog = page.getByRole('dialog');
  if (reading === undefined) await dialog.getByRole('button', { name: 'In order', exact: true }).click();
  else {
    await dialog.getByLabel('Reading').fill(reading);
    await dialog.getByRole('button', { name: 'Keep the reading' }).click();
  }
  await dialog.waitFor({ state: 'hidden' });
}

const barred = async (title: string) => {
  const { page } = visit;
  await stage('Hand-over');
  await page.getByText(`not shown to be safe: ${title}`).first().waitFor();
};
const ready = async () => {
  const { page } = visit;
  await stage('Hand-over');
  await page
    .locator('main[aria-busy="false"]')
    .getByRole('heading', { level: 1, name: /hand(ed)? (over|back)/ })
    .waitFor();
  await page
    .getByText(/not shown to be safe/i)
    .first()
    .waitFor({ state: 'detached' });
};

describe('a chipper with dull knives, a wide anvil gap and a glazed belt', () => {
  const facts = { ...engine, use: 'chipper' };
  const left = ['load-chipper', 'chute-and-interlock-shown'];

  test('its complaint leads to all three, its own work proves it, and it leaves only with its chute shown', async () => {
    const { page, shop } = visit;
    const lines = [decided, ...otherSteps(facts, left)];
    const job = await hang(visit, 71, { machine: 'Chipper', complaints: ['chipper-stalls'], ...facts });
    await page.goto(`${shop.address}/job/${job}/findings`);
    const sheet = new FindingsSheet(page);
    await sheet.see('At work: does the engine hold', 'the engine holds its speed, the tool slows or stands');
    await sheet.see('Belt, pulleys and idler', 'sides shine, or the span bends far too easily');
    await sheet.see('Knives and anvil by eye', 'edges round or nicked');
    await sheet.see('Gap between each knife', 'too wide');
    for (const fault of ['Drive belt glazed', 'Chipper knives dull', 'Gap between knives'])
      expect(await sheet.likely(fault), fault).toBeGreaterThan(90);
    await expectAccessible(page, 'findings of a chipper');
    for (const fault of ['Drive belt glazed', 'Chipper knives dull', 'Gap between knives'])
      await sheet.decide(fault, 'Repaired');
    await send(visit, job, 1071, lines, '2026-05-20T09:00:00.000+00:00');
    await page.reload();
    await barred('Hopper, chute and flaps in place');
    await stage('Run-up');
    await answer('2.4 s');
    await answer(undefined);
    await ready();
  });
});

describe('a generator at the right speed with the wrong voltage', () => {
  const facts = { ...engine, use: 'generator' };
  const left = ['generator-voltage', 'outlets-shown', 'load-generator'];
  const volts = (n: number) => ({ written: `${n} V`, kind: 'voltage', si: n, unit: 'V' });

  test('the regulator is found, not the governor; the voltage is held against its sheet, and each outlet is shown', async () => {
    const { page, shop } = visit;
    const sheetLine: Line = [
      'spec',
      {
        spec: 'output-voltage',
        label: 'AC output',
        line: 'AC output 114 to 126 V',
        value: volts(114),
        upTo: volts(126),
        origin: { from: "maker's sheet", detail: 'page 4' },
      },
    ];
    const more = [decided, sheetLine, ...otherSteps(facts, left)];
    const job = await hang(visit, 72, {
      machine: 'Generator',
      complaints: ['generator-output-wrong'],
      ...facts,
    });
    await page.goto(`${shop.address}/job/${job}/findings`);
    const sheet = new FindingsSheet(page);
    await sheet.see('Generator: volts and hertz', 'hertz right, volts low, high or swinging');
    await sheet.see('Brushes: length', 'long, free, rings clean');
    expect(await sheet.likely('Voltage regulator')).toBeGreaterThan(60);
    expect(await sheet.likely('Governor spring')).toBeLessThan(20);
    await sheet.decide('Voltage regulator', 'Repaired');
    await send(visit, job, 1072, more, '2026-05-21T09:00:00.000+00:00');
    await page.reload();
    await barred('Each outlet live with its ground');
    await stage('Run-up');
    await answer('121 V');
    await answer('118 V');
    await answer(undefined);
    await ready();
    expect(visit.errors).toEqual([]);
  });
});
