import { readdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ownAddresses } from '../../src/server/index.js';
import {
  allSaved,
  expectAccessible,
  openPage,
  phone,
  type RunningShop,
  startBrowser,
  startShop,
  wide,
} from './support.js';

/**
 * A phone over a real network address of this computer: there a browser keeps back what it gives safe pages only. Without
 * such an address there is nothing to open, and the tests are skipped; test/server/devices holds the door either way.
 */
const inANetwork = ownAddresses().length > 0;

let shop: RunningShop;
let browser: Browser;
beforeAll(async () => {
  shop = await startShop('--demo', '--lan', '--no-name');
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

test.skipIf(!inANetwork)('a phone is paired by its code, writes, and is shut out again', async () => {
  const bench = (await openPage(await browser.newContext(wide), `${shop.address}/shop`)).page;
  await bench.getByRole('button', { name: 'Pair a phone' }).click();
  const code = bench.getByRole('img', { name: /^Code for http/ });
  await code.waitFor();
  await expectAccessible(bench, 'shop with a code');
  const link = (await code.getAttribute('aria-label'))!.replace('Code for ', '');

  const hand = await browser.newContext(phone);
  const { page, errors } = await openPage(hand, link);
  await expectAccessible(page, 'pairing page');
  await page.getByLabel('What is it called?').fill('Apron phone');
  await page.getByRole('button', { name: 'Pair it' }).click();
  await page.getByRole('link', { name: /^Tag 18/ }).click();
  await page.getByRole('button', { name: 'Log', exact: true }).click();
  await page.getByLabel('Write a note').fill('written over the shop’s network');
  await page.getByRole('button', { name: 'Note', exact: true }).click();
  await allSaved(page);
  expect(await page.evaluate(() => globalThis.isSecureContext)).toBe(false);
  // a browser says of plain HTTP that one header does nothing there
  expect(errors.filter((words) => !words.includes('Cross-Origin-Opener-Policy'))).toEqual([]);

  await bench.getByRole('button', { name: 'Shut out Apron phone' }).waitFor();
  await bench.getByRole('button', { name: 'Shut out Apron phone' }).click();
  await bench.getByRole('button', { name: 'Shut out Apron phone' }).waitFor({ state: 'detached' });
  await page.getByLabel('Write a note').fill('written by one that was shut out');
  await page.getByRole('button', { name: 'Note', exact: true }).click();
  await page.getByText('not paired any more').waitFor();
  await page.reload();
  await page.getByRole('heading', { name: 'Not paired' }).waitFor();
  await page.getByText('1 line is still on this device and not in the shop’s store.').waitFor();
  await bench.context().close();
  await hand.close();
});

test.skipIf(!inANetwork)(
  'a picture is kept from a phone too, where the browser gives no digest',
  async () => {
    const bench = (await openPage(await browser.newContext(wide), `${shop.address}/shop`)).page;
    await bench.getByRole('button', { name: 'Pair a phone' }).click();
    const label = await bench.getByRole('img', { name: /^Code for http/ }).getAttribute('aria-label');
    const { page } = await openPage(await browser.newContext(phone), label!.replace('Code for ', ''));
    await page.getByRole('button', { name: 'Pair it' }).click();
    await page.getByRole('link', { name: /^Tag 18/ }).waitFor();
    const [file] = readdirSync('demo/pictures');
    const origin = new URL(page.url()).origin;
    const tag18 = await page.getByRole('link', { name: /^Tag 18/ }).getAttribute('href');
    await page.goto(`${origin}/job/${/job\/([^/]+)/.exec(tag18!)![1]}/intake`);
    await page.locator('main input[type=file]').first().setInputFiles(`demo/pictures/${file}`);
    await allSaved(page);
    await page.locator('img[src*="/api/pictures/"]').first().waitFor();
  },
);
