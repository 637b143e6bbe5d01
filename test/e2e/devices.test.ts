import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { allSaved, openPage, phone, type RunningShop, startBrowser, startShop, wide } from './support.js';

/** The bench computer and the phone on one store; the network comes and goes. */
let shop: RunningShop;
let browser: Browser;
beforeAll(async () => {
  shop = await startShop('--demo');
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

test('a line written on one page appears on the other without a reload', async () => {
  const bench = (await openPage(await browser.newContext(wide), shop.address)).page;
  const hand = (await openPage(await browser.newContext(phone), shop.address)).page;
  for (const page of [bench, hand]) await page.getByRole('link', { name: /^Tag 18/ }).click();
  await hand.getByRole('button', { name: 'Log', exact: true }).click();
  await hand.getByLabel('Write a note').fill('written on the phone');
  await hand.getByRole('button', { name: 'Note', exact: true }).click();
  await bench.getByText('written on the phone').first().waitFor();
  await bench.context().close();
  await hand.context().close();
});

test('without a network the line waits on the device, says so, and is sent when the network is back', async () => {
  const context = await browser.newContext(wide);
  const { page } = await openPage(context, shop.address);
  await page.getByRole('link', { name: /^Tag 18/ }).click();
  await page.getByLabel('Write a note').waitFor(); // the bench has a heading too, and is shown until the job has come
  await context.setOffline(true);
  await page.getByLabel('Write a note').fill('written without a network');
  await page.getByRole('button', { name: 'Note', exact: true }).click();
  await page.getByText('1 waiting to send').waitFor();
  await page.getByText('written without a network').first().waitFor();
  await context.setOffline(false);
  await allSaved(page);
  const job = /job\/([^/]+)/.exec(page.url())![1];
  const kept = (await (await fetch(`${shop.address}/api/jobs/${job}/entries`)).json()) as {
    entries: { body: { words?: string } }[];
  };
  expect(kept.entries.filter((e) => e.body.words === 'written without a network')).toHaveLength(1);
  await context.close();
});

test('what waited survives the page being closed', async () => {
  const context = await browser.newContext(wide);
  const { page } = await openPage(context, shop.address);
  await page.getByRole('link', { name: /^Tag 18/ }).click();
  await page.getByLabel('Write a note').waitFor();
  await context.route('**/api/entries', (route) => route.abort());
  await page.getByLabel('Write a note').fill('closed before it was sent');
  await page.getByRole('button', { name: 'Note', exact: true }).click();
  await page.getByText('1 waiting to send').waitFor();
  const job = /job\/([^/]+)/.exec(page.url())![1];
  await page.close();
  await context.unroute('**/api/entries');
  const { page: again } = await openPage(context, shop.address);
  await allSaved(again);
  const kept = (await (await fetch(`${shop.address}/api/jobs/${job}/entries`)).json()) as {
    entries: { body: { words?: string } }[];
  };
  expect(kept.entries.filter((e) => e.body.words === 'closed before it was sent')).toHaveLength(1);
  await context.close();
});

test('the invented machines are removed in one act', async () => {
  const context = await browser.newContext(wide);
  const { page } = await openPage(context, `${shop.address}/shop`);
  await page.getByRole('button', { name: 'Remove the invented machine' }).click();
  await page.getByRole('button', { name: 'Open the invented machine' }).waitFor();
  await page.getByRole('link', { name: 'Bench', exact: true }).click();
  await page.getByRole('heading', { name: 'The bench is empty' }).waitFor();
  await context.close();
});
