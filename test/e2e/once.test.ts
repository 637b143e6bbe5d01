import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openPage, type RunningShop, startBrowser, startShop, wide } from './support.js';
import { settled, sheetTaps, taggedJob } from './taps.js';

/** Each answer is worked out at most once between two changes of the log, on whatever sheet it is shown. */
let shop: RunningShop;
let browser: Browser;
let job: string;
let page: Page;
let errors: string[];

beforeAll(async () => {
  shop = await startShop('--demo');
  browser = await startBrowser();
  job = await taggedJob(shop.address, 17);
  const context = await browser.newContext(wide);
  await context.addInitScript(() => {
    const told: string[] = [];
    Object.assign(globalThis, { told, answerWorkedOut: (member: string) => told.push(member) });
  });
  ({ page, errors } = await openPage(context, shop.address));
});
afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

/** What was told since the last call, or since the page was opened. */
const told = () => page.evaluate(() => (globalThis as unknown as { told: string[] }).told.splice(0));
const twice = (members: readonly string[]) => members.filter((member, i) => members.indexOf(member) < i);

async function logLength(): Promise<number> {
  const answer = await fetch(`${shop.address}/api/jobs/${job}/entries`);
  return ((await answer.json()) as { entries: unknown[] }).entries.length;
}

/** Until the server’s word of the change has come back and been read. */
async function quietAgain(): Promise<void> {
  await page.waitForTimeout(1000);
  await settled(page);
}

test('a job opened anew at any sheet works each answer out once, of all that is known', async () => {
  for (const { stage } of sheetTaps) {
    await page.goto(`${shop.address}/job/${job}/${stage}`);
    await settled(page);
    await quietAgain();
    const members = await told();
    expect(members, stage).toContain('gates');
    expect(twice(members), stage).toEqual([]);
  }
});

test('going from sheet to sheet works out what is new on each, and nothing again', async () => {
  await page.goto(`${shop.address}/job/${job}/intake`);
  await settled(page);
  for (const { stage } of sheetTaps) {
    await page.locator(`nav.stages a[href$="/${stage}"]`).click();
    await settled(page);
  }
  await quietAgain();
  const members = await told();
  expect(members).toEqual(expect.arrayContaining(['gates', 'findings', 'bill', 'assembly', 'acceptance']));
  expect(twice(members)).toEqual([]);
});

test.each(sheetTaps)(
  'a tap on $stage that writes a line works each answer out once',
  async ({ stage, ready }) => {
    await page.goto(`${shop.address}/job/${job}/${stage}`);
    await settled(page);
    const tap = await ready(page);
    await quietAgain();
    const before = await logLength();
    await told();
    await tap.click();
    await expect.poll(logLength).toBe(before + 1);
    await quietAgain();
    const members = await told();
    expect(members).toContain('gates');
    expect(twice(members)).toEqual([]);
  },
);

test('nothing went wrong unseen', () => expect(errors).toEqual([]));
