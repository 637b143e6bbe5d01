import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { FindingsSheet } from './findings-support.js';
import { allSaved, expectAccessible, hang as hangIn, visitShop } from './support.js';

/** Invented machines whose first fault is not their only one: the advice is followed tap by tap. */
const visit = visitShop();
let page: Page;
let address: string;
let sheet: FindingsSheet;
beforeAll(() => {
  page = visit.page;
  address = visit.shop.address;
  sheet = new FindingsSheet(page);
});

const hang = (tag: number, intake: Record<string, unknown>) => hangIn(visit, tag, intake);
const see = (check: string, outcome: string) => sheet.see(check, outcome);
const likely = (fault: string) => sheet.likely(fault);

describe('an old pump that stood four winters with fuel in', () => {
  test('the first fault found does not stop the looking: a stuck valve shows beside the stale fuel', async () => {
    const job = await hang(31, {
      machine: 'Garden pump',
      use: 'pump',
      architecture: 'overhead-valve',
      ignition: 'solid-state',
      fuelSystem: 'float-bowl',
      storedMonths: 48,
      fuelLeftIn: 'yes',
      complaint: 'cranks and never fires',
      complaints: ['cranks-never-fires'],
    });
    await page.goto(`${address}/job/${job}/findings`);
    await see('Tank fuel into clear jar', 'dark varnish');
    await see('Bowl sample', 'varnish');
    expect(await likely('Stale fuel')).toBeGreaterThan(80);
    await see('Spin the flywheel backward', 'no rebound');
    await see('Watch both valves', 'one not moving');
    await page.getByRole('heading', { level: 1, name: /faults explain what you saw/ }).waitFor();
    expect(await likely('Stale fuel')).toBeGreaterThan(80);
    const valve = Math.max(await likely('Exhaust valve stuck'), await likely('Intake valve stuck'));
    expect(valve).toBeGreaterThan(40);
    await expectAccessible(page, 'findings with evidence');
  });

  test('the best next check is answered by one tap, and the screen says what moved', async () => {
    const before = await page.locator('.line').count();
    await page.locator('.card.first .outcomes button').first().click();
    await page.waitForFunction((n) => document.querySelectorAll('.line').length > n, before);
    await allSaved(page);
    await page.locator('.chip.moved').first().waitFor();
  });

  test('striking the evidence takes its weight away again', async () => {
    const with_ = await likely('Stale fuel');
    await page.getByRole('button', { name: /^Strike: Tank fuel/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Strike' }).click();
    await page.getByRole('button', { name: /^Strike: Bowl sample/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Strike' }).click();
    await expect.poll(() => likely('Stale fuel')).toBeLessThan(with_);
  });
});

test('no spark that returns with the stop wire off clears the coil and leaves the wire', async () => {
  const job = await hang(32, {
    machine: 'Mower',
    use: 'mower',
    architecture: 'side-valve',
    ignition: 'solid-state',
    fuelSystem: 'float-bowl',
  });
  await page.goto(`${address}/job/${job}/findings`);
  await see('Spark across open tester gap', 'none');
  const coil = await likely('Coil dead');
  await see('stop wire off', 'spark returns');
  expect(await likely('Stop wire')).toBeGreaterThan(60);
  const now = await page.locator('.fault', { hasText: 'Coil dead' }).count();
  expect(now === 0 || (await likely('Coil dead')) < coil).toBe(true);
});

test('a fault seen sound counts as ruled out', async () => {
  const job = await hang(33, {
    machine: 'Tiller',
    use: 'tiller',
    architecture: 'side-valve',
    complaints: ['cranks-never-fires'],
  });
  await page.goto(`${address}/job/${job}/findings`);
  const fault = page.locator('.fault').first();
  const name = (await fault.locator('b').first().textContent()) ?? '';
  await fault.getByRole('button', { name: /^Say what it is/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Seen sound' }).click();
  await page
    .locator('.fault', { hasText: name })
    .getByText('ruled out')
    .or(page.locator('.line', { hasText: 'excluded' }))
    .first()
    .waitFor();
  await expect.poll(() => page.locator('.fault b').first().textContent()).not.toBe(name);
});
