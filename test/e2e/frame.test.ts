import { expect, test } from 'vitest';
import { hang, openPage, phone, visitShop } from './support.js';

/** What stands round every sheet. */
const visit = visitShop();

test('a job’s page is as tall as its window: the sheet and the log scroll, the page does not', async () => {
  const job = await hang(visit, 31, { architecture: 'overhead-valve' });
  for (const stage of ['intake', 'findings', 'run-up']) {
    await visit.page.goto(`${visit.shop.address}/job/${job}/${stage}`);
    await visit.page.getByRole('heading', { level: 1 }).waitFor();
    const over = await visit.page.evaluate(() => document.documentElement.scrollHeight - window.innerHeight);
    expect(over, stage).toBeLessThanOrEqual(0);
  }
});

test('what bars the next stage is read inside the gate box', async () => {
  const job = await hang(visit, 32, { architecture: 'overhead-valve' }, [
    [
      'step',
      {
        step: 'off-1',
        stage: 'teardown',
        component: 'rocker-cover',
        title: 'Rocker cover',
        state: 'done',
        fasteners: [{ what: 'bolt', count: 2 }],
      },
    ],
    [
      'step',
      {
        step: 'on-1',
        putsBack: 'off-1',
        stage: 'assembly',
        component: 'rocker-cover',
        title: 'Rocker cover back on',
        state: 'done',
        fasteners: [{ what: 'bolt', count: 1 }],
      },
    ],
  ]);
  await visit.page.goto(`${visit.shop.address}/job/${job}/assembly`);
  const gate = visit.page.locator('.gate');
  const bar = gate.locator('li.block').first();
  await bar.waitFor();
  const [outer, inner] = [await gate.boundingBox(), await bar.boundingBox()];
  expect(inner!.y).toBeGreaterThan(outer!.y);
  expect(inner!.y + inner!.height).toBeLessThan(outer!.y + outer!.height);
});

test('on a phone an open log or list of stages leaves in sight what is saved and the way back to the bench', async () => {
  const job = await hang(visit, 33, { architecture: 'overhead-valve' });
  const context = await visit.browser.newContext(phone);
  const { page } = await openPage(context, `${visit.shop.address}/job/${job}/intake`);
  for (const name of ['Log', 'Stages']) {
    await page.getByRole('button', { name, exact: true }).click();
    await page
      .locator(name === 'Log' ? '.log .entries' : '.stages a')
      .first()
      .waitFor();
    for (const part of ['.top .state', '.top .tag', '.bottom'])
      await expect.poll(() => isOnTop(part), { message: `${name}: ${part}` }).toBe(true);
    await page.getByRole('button', { name, exact: true }).click();
  }
  await context.close();

  function isOnTop(part: string): Promise<boolean> {
    return page
      .locator(part)
      .first()
      .evaluate((element) => {
        const { x, y, width, height } = element.getBoundingClientRect();
        return element.contains(document.elementFromPoint(x + width / 2, y + height / 2));
      });
  }
});
