import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { stages } from '../../src/job/index.js';
import {
  allSaved,
  openPage,
  phone,
  type RunningShop,
  startBrowser,
  startProfile,
  startShop,
} from './support.js';
import { taggedJob } from './taps.js';

/** A phone that has been here once and is then out of reach of the shop. */
let shop: RunningShop;
let profile: string;
let browser: Browser;
let context: BrowserContext;
beforeAll(async () => {
  shop = await startShop('--demo');
  browser = await startBrowser();
  profile = mkdtempSync(join(tmpdir(), 'wristpin-profile-'));
  context = await startProfile(profile, phone);
});
afterAll(async () => {
  await context?.close();
  await browser?.close();
  await shop?.stop();
  // a browser that was closed may still be writing there
  rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
});

const isThere = (page: Page) =>
  page.getByRole('heading', { level: 1, name: /^(?!Opening|One moment)/ }).waitFor();
const waitingOf = (page: Page, words: string) =>
  page.getByRole('status').filter({ hasText: words }).first().waitFor();

test('without a network: all nine sheets and step mode, twenty lines and five pictures, a reload, the browser started anew; then all of it is in the store once and in order', async () => {
  const job = await taggedJob(shop.address, 17);
  const at = (path: string) => `${shop.address}/job/${job}/${path}`;
  {
    const { page } = await openPage(context, at('intake'));
    await isThere(page);
    await allSaved(page);
    await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    await context.setOffline(true);
    await page.close();
  }
  const { page, errors } = await openPage(context, at('intake'));
  for (const stage of stages) {
    await page.getByRole('button', { name: 'Stages' }).click();
    await page.locator(`.stages a[href$="/${stage}"]`).click();
    await isThere(page);
    await page.locator(`.stages a[href$="/${stage}"][aria-current="page"]`).waitFor({ state: 'attached' });
    expect(await page.getByText('cannot be shown').count(), stage).toBe(0);
  }
  for (const step of ['tighten/cylinder-head', 'take-apart', 'put-together']) {
    await page.goto(at(step));
    await isThere(page).catch(() => page.locator('.step').waitFor());
    expect(await page.getByText('cannot be shown').count(), step).toBe(0);
  }

  await page.goto(at('intake'));
  const pictures = readdirSync('demo/pictures').slice(0, 5);
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles(pictures.map((name) => `demo/pictures/${name}`));
  await waitingOf(page, '5 waiting to send');
  await page.getByRole('button', { name: 'Log', exact: true }).click();
  for (let n = 1; n <= 20; n += 1) {
    await page.getByLabel('Write a note').fill(`away ${n}`);
    await page.getByRole('button', { name: 'Note', exact: true }).click();
    await waitingOf(page, `${5 + n} waiting to send, no`);
  }
  await page.reload();
  await waitingOf(page, '25 waiting to send');
  await page.goto(`${shop.address}/shop/unsent`);
  await page.getByText('25 lines and 5 pictures wait on this device').waitFor();
  // the network's own words are no fault of the page
  expect(errors.filter((words) => !/ERR_INTERNET_DISCONNECTED/.test(words))).toEqual([]);

  await context.close();
  context = await startProfile(profile, { ...phone, offline: true });
  const again = (await openPage(context, at('intake'))).page;
  await isThere(again);
  await waitingOf(again, '25 waiting to send');
  await context.setOffline(false);
  await allSaved(again);
  const answer = await fetch(`${shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as {
    entries: { kind: string; by: string; body: { words?: string; picture?: { sha256: string } } }[];
  };
  const notes = entries.filter(({ body }) => body.words?.startsWith('away '));
  expect(notes.map(({ body }) => body.words)).toEqual(Array.from({ length: 20 }, (_, i) => `away ${i + 1}`));
  const photographs = entries.filter(({ kind }) => kind === 'photograph').slice(-5);
  expect(new Set(photographs.map(({ body }) => body.picture!.sha256))).toEqual(
    new Set(pictures.map((name) => name.replace('.jpg', ''))),
  );
  for (const { body } of photographs)
    expect((await fetch(`${shop.address}/api/pictures/${body.picture!.sha256}`)).status).toBe(200);
});

test('a device that has never been here says so, and does not look at the bench for ever', async () => {
  const other = await browser.newContext(phone);
  try {
    const { page } = await openPage(other, shop.address);
    await allSaved(page);
    await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    await page.evaluate(() => indexedDB.deleteDatabase('wristpin-seen'));
    await page.close();
    await other.setOffline(true);
    const blank = (await openPage(other, shop.address)).page;
    await blank.getByRole('heading', { name: 'The bench has not been seen from this device yet' }).waitFor();
    await waitingOf(blank, 'no network');
  } finally {
    await other.close();
  }
});

test('a part of the program that does not come costs its sheet only, and comes when the network is back', async () => {
  const other = await browser.newContext({ ...phone, serviceWorkers: 'block' });
  try {
    await other.route(/assets\/(teardown|measure)-/, (route) => route.abort());
    const job = await taggedJob(shop.address, 17);
    const { page } = await openPage(other, `${shop.address}/job/${job}/intake`);
    await isThere(page);
    const open = async (stage: string) => {
      await page.getByRole('button', { name: 'Stages' }).click();
      await page.locator(`.stages a[href$="/${stage}"]`).click();
    };
    await open('teardown');
    await page.getByText('The sheet “Teardown” cannot be shown now.').waitFor();
    await open('findings');
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await page.getByText('cannot be shown').count()).toBe(0);
    await open('teardown');
    await other.unroute(/assets\/(teardown|measure)-/);
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByText('cannot be shown').waitFor({ state: 'detached' });
    await isThere(page);
  } finally {
    await other.close();
  }
});
