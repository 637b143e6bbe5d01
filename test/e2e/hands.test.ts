import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { hang, openPage, phone, visitShop } from './support.js';

/** A finger bounces, a pedal bounces, a key is held down: on 0.1.0 each of them logged bolts that nobody had tightened. */
const visit = visitShop();

const joint = {
  joint: 'head',
  name: 'Cylinder head',
  holes: [
    [-40, 30],
    [40, 30],
    [40, -30],
    [-40, -30],
  ].map(([xMm, yMm]) => ({ xMm, yMm })),
  thread: 'M8x1.25',
  target: { written: '190 in-lb', kind: 'torque', si: 21.46711751524717, unit: 'in-lb' },
  targetOrigin: { from: "maker's sheet" },
  passes: [0.5, 1],
  finalRound: true,
  order: [1, 3, 2, 4],
  orderOrigin: { from: 'rule of thumb' },
  condition: 'clean and dry',
};

const linesOf = async (job: string) => {
  const answer = await fetch(`${visit.shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: { id: string; kind: string; body: object }[] };
  return entries;
};
const kinds = async (job: string) => (await linesOf(job)).slice(3).map(({ kind }) => kind);
const calm = (page: Page) => page.waitForTimeout(450);

async function tightening(tag: number, context = visit.context): Promise<{ page: Page; job: string }> {
  const job = await hang(visit, tag, { architecture: 'overhead-valve' }, [['joint', joint]]);
  const { page } = await openPage(context, `${visit.shop.address}/job/${job}/tighten/head`, 'a person’s');
  await page.getByRole('button', { name: 'Clicked · next bolt' }).waitFor();
  await calm(page);
  return { page, job };
}

test('a held key or pedal logs one bolt, a bouncing one too', async () => {
  const { page, job } = await tightening(41);
  await page.keyboard.down('ArrowRight');
  for (let held = 0; held < 11; held += 1) {
    await page.waitForTimeout(50);
    await page.keyboard.down('ArrowRight');
  }
  await page.keyboard.up('ArrowRight');
  await expect.poll(() => kinds(job)).toEqual(['torque']);
  await calm(page);
  for (const bounce of [0, 60, 120]) {
    await page.waitForTimeout(bounce);
    await page.keyboard.press('PageDown');
  }
  await expect.poll(() => kinds(job)).toEqual(['torque', 'torque']);
  await calm(page);
  expect(await kinds(job)).toEqual(['torque', 'torque']);
  await page.close();
});

test('a double tap logs one bolt; Back takes the click back, and clicking again counts it once', async () => {
  const { page, job } = await tightening(42);
  const clicked = page.getByRole('button', { name: 'Clicked · next bolt' });
  const at = (await clicked.boundingBox())!;
  for (const wait of [0, 80, 150]) {
    await page.waitForTimeout(wait);
    await page.mouse.click(at.x + 20, at.y + 20);
  }
  await expect.poll(() => kinds(job)).toEqual(['torque']);
  await page.getByText('bolt 2 of 4').waitFor();
  await calm(page);
  await page.getByRole('button', { name: 'Take back bolt 1' }).click();
  await page.getByText('bolt 1 of 4').waitFor();
  await expect.poll(() => kinds(job)).toEqual(['torque', 'strike']);
  await calm(page);
  await clicked.click();
  await page.getByText('bolt 2 of 4').waitFor();
  const lines = (await linesOf(job)).slice(3);
  expect(lines.map(({ kind }) => kind)).toEqual(['torque', 'strike', 'torque']);
  expect((lines[1]!.body as { entry: string }).entry).toBe(lines[0]!.id);
  await page.close();
});

test('at Findings a double tap answers the check that it was meant for, and one touch takes the answer back', async () => {
  const job = await hang(visit, 43, { architecture: 'overhead-valve', complaint: 'does not start' });
  const { page } = await openPage(visit.context, `${visit.shop.address}/job/${job}/findings`, 'a person’s');
  const answer = page.locator('.card.first .outcomes button').first();
  await answer.waitFor();
  await calm(page);
  await answer.scrollIntoViewIfNeeded();
  const at = (await answer.boundingBox())!;
  for (const wait of [0, 100, 140]) {
    await page.waitForTimeout(wait);
    await page.mouse.click(at.x + 10, at.y + 10);
  }
  await page.getByRole('button', { name: 'Undo' }).waitFor();
  await calm(page);
  const said = async () => (await linesOf(job)).slice(2).map(({ kind }) => kind);
  expect(await said()).toEqual(['observation']);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(said).toEqual(['observation', 'strike']);
  await page.getByRole('button', { name: 'Undo' }).waitFor({ state: 'detached' });
  await page.close();
});

test.each([
  ['a phone', { width: 390, height: 844 }, 100],
  ['a phone on its side', { width: 844, height: 390 }, 100],
  ['a phone with text twice as large', { width: 390, height: 844 }, 200],
  ['a phone on its side with text twice as large', { width: 844, height: 390 }, 200],
] as const)('on %s the torque is in sight while “Clicked” can be pressed', async (_, viewport, percent) => {
  const context = await visit.browser.newContext({ ...phone, viewport });
  const { page } = await tightening(50 + visit.browser.contexts().length + viewport.width + percent, context);
  await page.evaluate((size) => {
    document.documentElement.style.fontSize = `${size}%`;
  }, percent);
  const inSight = (part: string) =>
    page.locator(part).evaluate((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      const on = document.elementFromPoint(x + Math.min(width, 60) / 2, y + height / 2);
      const isWhole = x >= 0 && y >= 0 && x + width <= innerWidth + 1 && y + height <= innerHeight + 1;
      return { isWhole, isOnTop: element === on || element.contains(on), height };
    });
  expect(await inSight('.step .big')).toMatchObject({ isWhole: true, isOnTop: true });
  expect(await inSight('.step > footer .go')).toMatchObject({ isWhole: true, isOnTop: true });
  expect((await inSight('.step .also')).isWhole).toBe(true);
  if (percent === 100 && viewport.width === 390)
    expect((await inSight('.step .big')).height).toBeGreaterThan(100);
  await context.close();
});
