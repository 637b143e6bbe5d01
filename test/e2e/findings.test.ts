import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  allSaved,
  expectAccessible,
  openPage,
  type RunningShop,
  startBrowser,
  startShop,
  wide,
} from './support.js';

/** Invented machines whose first fault is not their only one: the advice is followed tap by tap. */
let shop: RunningShop;
let browser: Browser;
let context: BrowserContext;
let page: Page;
beforeAll(async () => {
  shop = await startShop();
  browser = await startBrowser();
  context = await browser.newContext(wide);
  ({ page } = await openPage(context, shop.address));
});
afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

/** A machine with its facts, written through the same door as a device uses. */
async function hang(tag: number, intake: Record<string, unknown>): Promise<string> {
  const at = `2026-05-0${tag % 9}T09:00:00.000+00:00`;
  const id = (n: number) =>
    `01900000-0000-7000-8000-${String(tag).padStart(4, '0')}${String(n).padStart(8, '0')}`;
  const job = id(0);
  const line = (n: number, kind: string, body: unknown) => ({
    id: id(n),
    job,
    at,
    by: 'bench',
    kind,
    v: 1,
    body,
  });
  const entries = [line(1, 'open', { tag, title: 'invented' }), line(2, 'intake', intake)];
  const answer = await context.request.post(`${shop.address}/api/entries`, {
    data: { entries },
    headers: { origin: shop.address },
  });
  expect(answer.status(), await answer.text()).toBe(200);
  return job;
}

/** Logs a check with an outcome by its words, from the search field. */
async function see(check: string, outcome: string): Promise<void> {
  await page.getByLabel('Find a check').fill(check);
  await page
    .locator('section:has(> h2:text-is("Other checks")) li', { hasText: check })
    .first()
    .getByRole('button')
    .click();
  const dialog = page.getByRole('dialog');
  await dialog.waitFor();
  const tap = dialog.getByRole('button', { name: outcome, exact: true });
  if ((await tap.count()) > 0) await tap.click();
  else {
    await dialog.getByLabel(outcome, { exact: true }).check();
    await dialog.getByRole('button', { name: 'Log it' }).click();
  }
  await dialog.waitFor({ state: 'hidden' });
}

/** How likely a fault stands, in percent; 0 when it is too unlikely to be listed. */
const likely = async (fault: string): Promise<number> => {
  const more = page.getByRole('button', { name: /^\d+ more$/ });
  if (await more.isVisible()) await more.click();
  const line = page.locator('.fault', { has: page.locator('> b', { hasText: fault }) });
  if ((await line.count()) === 0) return 0;
  return Number(/\d+/.exec((await line.locator('.likely').textContent()) ?? '')?.[0]);
};

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
    await page.goto(`${shop.address}/job/${job}/findings`);
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
    await expect.poll(() => likely('Stale fuel'), { timeout: 10_000 }).toBeLessThan(with_);
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
  await page.goto(`${shop.address}/job/${job}/findings`);
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
  await page.goto(`${shop.address}/job/${job}/findings`);
  const fault = page.locator('.fault').first();
  const name = (await fault.locator('b').first().textContent()) ?? '';
  await fault.getByRole('button', { name: /^Say what it is/ }).click();
  await page.getByRole('dialog').getByLabel('Seen sound').check();
  await page.getByRole('dialog').getByRole('button', { name: 'Write it down' }).click();
  await page
    .locator('.fault', { hasText: name })
    .getByText('ruled out')
    .or(page.locator('.line', { hasText: 'excluded' }))
    .first()
    .waitFor();
  await expect.poll(() => page.locator('.fault b').first().textContent()).not.toBe(name);
});
