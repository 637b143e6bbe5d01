import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { FindingsSheet } from './findings-support.js';
import {
  allSaved,
  expectAccessible,
  hang,
  openPage,
  phone,
  type RunningShop,
  tellShop,
  visitShop,
} from './support.js';

/** Three invented machines, each from its intake to what is done about it. */
const visit = visitShop();
let shop: RunningShop;
let page: Page;
let errors: string[];
let sheet: FindingsSheet;
beforeAll(async () => {
  ({ shop, page, errors } = visit);
  sheet = new FindingsSheet(page);
  await tellShop(visit, [['setting', { key: 'hour-rate', value: '60' }]]);
});
const headline = () => page.getByRole('heading', { level: 1 }).textContent();

describe('a mower with a grounded stop wire, varnished fuel and a weeping hose', () => {
  let job: string;

  test('the stop wire is found, and the other faults stand beside it', async () => {
    job = await hang(visit, 41, {
      machine: 'Mower',
      use: 'mower',
      architecture: 'side-valve',
      ignition: 'solid-state',
      fuelSystem: 'float-bowl',
      storedMonths: 30,
      fuelLeftIn: 'yes',
      complaints: ['cranks-never-fires'],
    });
    await page.goto(`${shop.address}/job/${job}/findings`);
    await sheet.see('Spark across open tester gap', 'none');
    await sheet.see('stop wire off', 'spark returns');
    expect(await sheet.likely('Stop wire')).toBeGreaterThan(50);
    await sheet.changed().getByText('right again without it').waitFor();
    await sheet.see('Tank fuel into clear jar', 'dark varnish');
    await sheet.see('Bowl sample', 'varnish');
    await sheet.see('Outside fuel leak', 'stain or drip at the hose');
    expect(await headline()).toMatch(/(Three|Four|Five|Six) faults explain what you saw/);
    for (const fault of ['Stop wire', 'Stale fuel', 'Fuel hose'])
      expect(await sheet.likely(fault), fault).toBeGreaterThan(50);
  });

  test('after the first repair it does not stop: the others are still named, and the advice goes on', async () => {
    await sheet.decide('Stop wire', 'Repaired');
    await sheet
      .fault('Stop wire')
      .getByText(/✓ repaired/)
      .waitFor();
    expect(await sheet.likely('Stop wire')).toBeLessThan(15);
    expect(await headline()).toMatch(/(Two|Three|Four|Five) faults explain what you saw/);
    for (const fault of ['Stale fuel', 'Fuel hose'])
      expect(await sheet.likely(fault), fault).toBeGreaterThan(50);
    expect(await page.locator('.card.first .outcomes button').count()).toBeGreaterThan(1);
    expect(await page.getByText('Enough is seen').count()).toBe(0);
  });

  test('the check that showed it is offered again, and its first reading is marked as before the repair', async () => {
    await sheet
      .fault('Stop wire')
      .getByRole('button', { name: /^Look again/ })
      .click();
    await sheet.answer('strong');
    await sheet.unfoldEvidence();
    await sheet
      .evidence('Spark across open tester gap')
      .filter({ hasText: 'before the repair of: Stop wire' })
      .first()
      .waitFor();
    expect(await sheet.likely('Stop wire')).toBeLessThan(15);
  });

  test('the hand-over is barred by the hose, by name, until that is repaired too', async () => {
    await page.goto(`${shop.address}/job/${job}/hand-over`);
    const gate = page.getByRole('region', { name: 'Before the next stage' });
    await gate.getByText(/to be repaired or ruled out first: .*[Ff]uel hose/).waitFor();
    expect(await page.getByRole('button', { name: 'Hand over' }).first().isDisabled()).toBe(true);
    await page.goto(`${shop.address}/job/${job}/findings`);
    await sheet.decide('Fuel hose', 'Repaired');
    await sheet.see('Outside fuel leak', 'dry');
    await page.goto(`${shop.address}/job/${job}/hand-over`);
    await gate.waitFor();
    await expect.poll(() => gate.getByText(/ruled out first: .*[Ff]uel hose/).count()).toBe(0);
  });

  test('a repair that failed is said so, and the fault stands there again', async () => {
    await page.goto(`${shop.address}/job/${job}/findings`);
    await sheet.decide('Stop wire', 'The repair failed');
    await sheet.fault('Stop wire').getByText('confirmed').waitFor();
    expect(await sheet.likely('Stop wire')).toBeGreaterThan(95);
  });
});

describe('a tiller whose gauge reads low because its release lifts a valve', () => {
  const tiller = (release: boolean) => ({
    machine: 'Tiller',
    use: 'tiller',
    architecture: 'overhead-valve',
    ignition: 'solid-state',
    fuelSystem: 'float-bowl',
    variants: { 'automatic-release': release },
    complaints: ['cranks-never-fires'],
  });
  const gauge = 'Compression, cold and dry';

  test('the gauge accuses the valves on an engine without a release, and says little on one with it', async () => {
    const plain = await hang(visit, 42, tiller(false));
    await page.goto(`${shop.address}/job/${plain}/findings`);
    const before = await sheet.likely('Valve burnt');
    await sheet.see(gauge, '40 % down');
    const accused = await sheet.likely('Valve burnt');
    expect(accused).toBeGreaterThan(before + 10);

    const released = await hang(visit, 43, tiller(true));
    await page.goto(`${shop.address}/job/${released}/findings`);
    await sheet.see(gauge, '40 % down');
    expect(await sheet.likely('Valve burnt')).toBeLessThan(accused - 10);
    await sheet
      .evidence(gauge)
      .getByText(/Says little here/)
      .waitFor();
  });

  test('no spark accuses coil and wire alike; with the wire off it returns: the coil is cleared, with the reason', async () => {
    await sheet.see('Spark across open tester gap', 'none');
    const [coil, wire] = [await sheet.likely('Coil dead'), await sheet.likely('Stop wire')];
    expect(Math.min(coil, wire)).toBeGreaterThan(10);
    await sheet.see('stop wire off', 'spark returns');
    expect(await sheet.likely('Coil dead')).toBeLessThan(coil / 2);
    expect(await sheet.likely('Stop wire')).toBeGreaterThan(wire);
    const changed = sheet.changed();
    await changed.getByRole('listitem').filter({ hasText: 'Coil dead' }).getByText('fell').waitFor();
    await changed.getByRole('listitem').filter({ hasText: 'Stop wire' }).getByText('rose').waitFor();
    await expectAccessible(page, 'findings after a repeat with the suspect out of the way');
  });
});

describe('a two-stroke trimmer that is past saving', () => {
  test('a doubtful reading weighs less than the same reading made sure', async () => {
    const job = await hang(visit, 44, {
      machine: 'Trimmer',
      use: 'trimmer',
      architecture: 'two-stroke',
      ignition: 'solid-state',
      fuelSystem: 'diaphragm',
      complaints: ['cranks-never-fires'],
      worthRunning: { amount: 60, currency: '$' },
    });
    await page.goto(`${shop.address}/job/${job}/findings`);
    const before = await sheet.likely('Bore scored');
    await sheet.see('Camera through plug hole', 'scoring', { doubtful: true });
    const doubtful = await sheet.likely('Bore scored');
    await sheet.evidence('Camera through plug hole').getByText('doubtful').first().waitFor();
    await sheet
      .evidence('Camera through plug hole')
      .getByRole('button', { name: /^Again/ })
      .click();
    await sheet.answer('scoring');
    const sure = await sheet.likely('Bore scored');
    expect(before).toBeLessThan(doubtful);
    expect(doubtful).toBeLessThan(sure);
  });

  test('a repaired diaphragm is another diaphragm: its old reading no longer speaks', async () => {
    await sheet.see('Diaphragm flexed', 'stiff');
    expect(await sheet.likely('Metering or pump diaphragm')).toBeGreaterThan(50);
    await sheet.decide('Metering or pump diaphragm', 'Repaired');
    expect(await sheet.likely('Metering or pump diaphragm')).toBeLessThan(15);
    await sheet
      .fault('Metering or pump diaphragm')
      .getByRole('button', { name: /^Look again/ })
      .click();
    await sheet.answer('supple');
    await sheet.evidence('Diaphragm flexed').filter({ hasText: 'before the repair of' }).waitFor();
    expect(await sheet.likely('Metering or pump diaphragm')).toBeLessThan(5);
  });

  test('with rod and bore gone, the advice ends: enough is seen, with the risk of acting in the same breath', async () => {
    await sheet.see('Soft rod on the piston', 'lost motion');
    await sheet.decide('Connecting rod', 'It is there');
    await sheet.decide('Bore scored', 'It is there');
    await sheet.followUntilEnough(45);
    const said =
      (await page.getByText('Enough is seen to act').locator('..').locator('..').textContent()) ?? '';
    expect(said).toMatch(
      /of 20 such machines .*not there, and on .*of 20 something else that matters is left in/,
    );
    expect(await sheet.likely('Connecting rod')).toBeGreaterThan(95);
  });

  test('Worth it? says scrap before another part is bought, and the decision stands', async () => {
    await allSaved(page);
    await page.getByRole('link', { name: /^Worth it\?/ }).click();
    await page.getByRole('heading', { level: 1, name: 'Most likely scrap' }).waitFor();
    await page
      .getByText(/end as scrap/)
      .first()
      .waitFor();
    await page.getByRole('heading', { name: 'How it changed with the findings' }).waitFor();
    await page.getByRole('button', { name: 'Decide' }).first().click();
    await page.getByRole('dialog').getByLabel('Scrap').check();
    await page.getByRole('dialog').getByRole('button', { name: 'Write the decision down' }).click();
    await page.getByRole('heading', { level: 1, name: 'It goes to scrap' }).waitFor();
  });
});

test('by keyboard: an outcome is chosen with Enter, and the focus goes on from the next check', async () => {
  const job = await hang(visit, 45, { machine: 'Pump', architecture: 'overhead-valve' });
  await page.goto(`${shop.address}/job/${job}/findings`);
  const first = page.locator('.card.first .outcomes button').first();
  await first.focus();
  const title = await page.locator('.card.first header b').textContent();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.card.first header b').textContent()).not.toBe(title);
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.textContent?.trim()))
    .toBe('Check next');
  await page.keyboard.press('Tab');
  expect(
    await page.evaluate(() => document.activeElement?.closest('section')?.getAttribute('aria-label')),
  ).toBe('Check next');
});

test('by thumb: on a phone the best check stands before the list of faults, and every target is large enough', async () => {
  const small = await visit.browser.newContext(phone);
  const opened = await openPage(small, shop.address);
  const job = await hang(visit, 46, {
    machine: 'Pump',
    architecture: 'overhead-valve',
    complaints: ['cranks-never-fires'],
  });
  await opened.page.goto(`${shop.address}/job/${job}/findings`);
  const best = opened.page.locator('.card.first .outcomes button').first();
  await best.waitFor();
  await new FindingsSheet(opened.page).settled();
  const [check, faults] = [
    await best.boundingBox(),
    await opened.page.locator('.fault').first().boundingBox(),
  ];
  expect(check!.y).toBeLessThan(faults!.y);
  for (const button of await opened.page.locator('.findings button:visible, .findings summary:visible').all())
    expect((await button.boundingBox())!.height, (await button.textContent()) ?? '').toBeGreaterThanOrEqual(
      44,
    );
  await best.tap();
  await opened.page.locator('.evidence > li').first().waitFor();
  const width = await opened.page.evaluate(() => document.documentElement.scrollWidth);
  expect(width).toBeLessThanOrEqual(390);
  expect(opened.errors).toEqual([]);
  await small.close();
});

test('nothing went wrong on the page meanwhile', () => {
  expect(errors).toEqual([]);
});
