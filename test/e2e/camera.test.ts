import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type Body, fold, type RawEntry, stages } from '../../src/job/index.js';
import { allSaved, hang, openPage, phone, visitShop } from './support.js';

const visit = visitShop();

test('the camera is one touch away on every sheet of a phone, and the picture stands at that sheet', async () => {
  const job = await hang(visit, 46, { machine: 'Pump', architecture: 'overhead-valve' });
  const context = await visit.browser.newContext(phone);
  const { page } = await openPage(context, `${visit.shop.address}/job/${job}/intake`);
  for (const stage of stages) {
    await page.goto(`${visit.shop.address}/job/${job}/${stage}`);
    const camera = page.locator('nav.bottom input[capture]');
    await camera.waitFor({ state: 'attached' });
    const box = await page.locator('nav.bottom label.camera').boundingBox();
    expect(Math.min(box!.width, box!.height), stage).toBeGreaterThanOrEqual(44);
    await camera.setInputFiles({
      name: `${stage}.png`,
      mimeType: 'image/png',
      buffer: await drawn(page, stage),
    });
    await allSaved(page);
    await expect.poll(() => stagesWithPicture(job), { timeout: 45_000 }).toContain(stage);
  }
  await context.close();
});

/** A picture as a camera gives it. */
async function drawn(page: Page, words: string): Promise<Buffer> {
  const base64 = await page.evaluate((text) => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 320, height: 240 });
    const on = canvas.getContext('2d')!;
    on.fillText(text, 20, 120);
    return canvas.toDataURL('image/png').split(',')[1]!;
  }, words);
  return Buffer.from(base64, 'base64');
}

const photographsOf = async (job: string): Promise<Body<'photograph'>[]> => {
  const answer = await visit.context.request.get(`${visit.shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: RawEntry[] };
  return fold(job, entries).photographs.map((said) => said);
};

test('what is in hand is the caption, and it can be said anew at once and later, from the log and from the sheet', async () => {
  const job = await hang(visit, 47, { machine: 'Pump', architecture: 'overhead-valve' }, [
    ['goal', { component: 'carburetor', title: 'Carburetor', why: 'by hand', state: 'wanted' }],
  ]);
  const context = await visit.browser.newContext(phone);
  const { page } = await openPage(context, `${visit.shop.address}/job/${job}/teardown`);
  const captions = async () => (await photographsOf(job)).map(({ caption }) => caption);
  await page.getByRole('heading', { name: /min to Carburetor/ }).waitFor();
  const camera = page.locator('nav.bottom input[capture]');
  await camera.setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer: await drawn(page, 'a') });
  await expect
    .poll(captions, { timeout: 45_000 })
    .toEqual(['Fuel hose and in-line filter, before it comes off']);

  // at once, in the bar that takes it back
  await page.locator('.undo').getByRole('button', { name: 'Caption' }).click();
  const dialog = page.getByRole('dialog', { name: 'What the picture shows' });
  await dialog.getByLabel('Caption').fill('plug boot, cracked');
  await dialog.getByRole('button', { name: 'Keep' }).click();
  await dialog.waitFor({ state: 'hidden' });
  await expect.poll(captions).toEqual(['plug boot, cracked']);

  // later, in the log of another sheet, and when it was taken with it
  await page.goto(`${visit.shop.address}/job/${job}/parts`);
  await page.getByRole('button', { name: 'Log', exact: true }).click();
  const change = page.locator('.log').getByRole('button', { name: /^Change the caption/ });
  expect(await change.count()).toBe(1);
  expect((await change.boundingBox())!.height).toBeGreaterThanOrEqual(44);
  await change.click();
  await dialog.getByLabel('Caption').fill('old plug boot');
  await dialog.getByLabel('after it').check();
  await dialog.getByRole('button', { name: 'Keep' }).click();
  await expect.poll(captions).toEqual(['old plug boot']);
  expect((await photographsOf(job))[0]).toMatchObject({ when: 'after', stage: 'teardown' });

  // one touch takes the change back, and the picture stays
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(captions).toEqual(['plug boot, cracked']);
  await context.close();
});

test('a side that was missed shifts none of the others, and each side of Intake is asked for again as it leaves: they pair', async () => {
  const job = await hang(visit, 48, { machine: 'Pump', architecture: 'overhead-valve' });
  const { page } = await openPage(visit.context, `${visit.shop.address}/job/${job}/intake`);
  const take = async (side: string) => {
    const input = page.locator('main label.button', { hasText: `Photograph: ${side}` });
    await input.waitFor();
    await page
      .locator('#photograph-intake')
      .setInputFiles({ name: `${side}.png`, mimeType: 'image/png', buffer: await drawn(page, side) });
    await expect.poll(async () => (await photographsOf(job)).at(-1)?.caption, { timeout: 45_000 }).toBe(side);
  };
  await take('front');
  await page.getByLabel('Another side').selectOption('right side');
  await take('right side');
  await page.locator('main label.button', { hasText: 'Photograph: left side' }).waitFor();
  await page.goto(`${visit.shop.address}/job/${job}/hand-over`);
  await page.locator('main label.button', { hasText: 'Photograph as it leaves: front' }).waitFor();
  await page
    .locator('main input[type=file]')
    .first()
    .setInputFiles({ name: 'z.png', mimeType: 'image/png', buffer: await drawn(page, 'z') });
  await page.locator('main label.button', { hasText: 'Photograph as it leaves: right side' }).waitFor();
  await expect
    .poll(async () => (await photographsOf(job)).map((p) => `${p.about} ${p.when}`))
    .toEqual(['machine-front before', 'machine-right-side before', 'machine-front after']);
  await page.close();
});

async function stagesWithPicture(job: string): Promise<string[]> {
  const answer = await visit.context.request.get(`${visit.shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: { kind: string; body: { stage: string } }[] };
  return entries.filter(({ kind }) => kind === 'photograph').map(({ body }) => body.stage);
}
