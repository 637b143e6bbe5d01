import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { RawEntry } from '../../src/job/index.js';
import { jobId, torque } from '../job/entries.js';
import { bench } from '../job/plan-job.js';
import { expectFits } from './screens/showroom.js';
import { expectAccessible, openPage, phone, visitShop, wide } from './support.js';

/** A job that lay a year in pieces: one screen brings back what was forgotten. Invented. */
const visit = visitShop();
const yearMs = 365 * 86_400_000;
const sha256 = '043a89ad90a8323d3a20beb6da937ca2992ccab2b9417553e3b261fc74cdb396';

/** Nine steps off, one of them in no bag, a dip, an order, an old ring for now, and two bolts of the head clicked. */
function halfApart(): RawEntry[] {
  const at = bench('overhead-valve', { starter: 'rope', owner: 'E. Marsh', machine: 'Garden tiller' });
  at.want('cylinder-head');
  for (const step of at.plan().steps.slice(0, 9))
    at.takeOff(step, {
      component: step.id,
      ...(step.bag && step.id !== 'fuel-hose' && { bag: step.bag }),
      fasteners: [{ what: 'bolt', size: 'M6', count: 2 }],
      plugged: step.plugs.map(({ name }) => name),
    });
  at.add('photograph', {
    picture: { sha256, mime: 'image/jpeg', bytes: 1, width: 1200, height: 900 },
    caption: 'link side and bend direction at both ends',
    stage: 'teardown',
    when: 'before',
  });
  at.add('cleaning', {
    cleaning: 'bowl',
    title: 'Carburetor bowl',
    materials: ['zinc-alloy'],
    agent: 'carburetor-dip',
    state: 'soaking',
    soakMinutes: 30,
  });
  at.add('part', { part: 'head-gasket', name: 'Head gasket', count: 1, state: 'ordered', due: '2025-12-20' });
  at.add('joint', {
    joint: 'muffler',
    name: 'Muffler',
    holes: [
      { xMm: 0, yMm: 0 },
      { xMm: 60, yMm: 0 },
    ],
    target: torque('100 in-lb'),
    targetOrigin: { from: "maker's sheet" },
    passes: [0.5, 1],
    finalRound: false,
    order: [1, 2],
    orderOrigin: { from: 'rule of thumb' },
  });
  at.add('torque', { joint: 'muffler', hole: 1, pass: 1, set: torque('50 in-lb'), result: 'clicked' });
  return at.lines;
}

async function hungAYearAgo(): Promise<void> {
  const lines = halfApart();
  const picture = readFileSync(`demo/pictures/${sha256}.jpg`);
  expect(createHash('sha256').update(picture).digest('hex')).toBe(sha256);
  const headers = { origin: visit.shop.address };
  await visit.context.request.put(`${visit.shop.address}/api/pictures/${sha256}`, { data: picture, headers });
  const later = Date.now() - yearMs - Date.parse(lines.at(-1)!.at);
  const entries = lines.map((line) => ({
    ...line,
    at: new Date(Date.parse(line.at) + later).toISOString().replace('Z', '+00:00'),
    by: 'Apron phone',
    body:
      line.kind === 'photograph'
        ? {
            ...(line.body as object),
            picture: { sha256, mime: 'image/jpeg', bytes: picture.length, width: 1200, height: 900 },
          }
        : line.body,
  }));
  const answer = await visit.context.request.post(`${visit.shop.address}/api/entries`, {
    data: { entries },
    headers,
  });
  expect(answer.status(), await answer.text()).toBe(200);
}

const told = (page: Page, what: string) => page.locator('details.told-part', { hasText: what }).first();

test('a job that lay a year is opened at what was forgotten of it, and goes on from there', async () => {
  await hungAYearAgo();
  const { page, errors } = await openPage(visit.context, visit.shop.address);
  await page.getByRole('link', { name: /^Tag 7/ }).click();
  await page.getByRole('heading', { level: 1, name: 'Where was I' }).waitFor();
  const main = page.locator('main');
  await expect.poll(() => main.textContent()).toContain('by Apron phone, 12 months ago.');
  const next = page.getByRole('region', { name: 'Next' }).getByRole('link');
  expect(await next.allTextContents()).toEqual([
    'Tighten muffler: bolt 2 of 2 in pass 1',
    'Take out of the bath: carburetor bowl',
    'Take off: Muffler guard, into bag 9',
  ]);
  await told(page, 'Off').locator('summary').click();
  const row = (title: string) => told(page, 'Off').getByRole('listitem').filter({ hasText: title });
  expect(await row('Throttle link').textContent()).toContain('bag 7');
  expect(await row('Fuel hose').textContent()).toContain('no bag named');
  await told(page, 'Waits').locator('summary').click();
  expect(await told(page, 'Waits').textContent()).toContain('head gasket, was due');
  expect(await told(page, 'Torques').textContent()).toContain('half tight');
  const missing = told(page, 'Not known any more');
  await missing.locator('summary').first().click();
  await missing.locator('details', { hasText: 'Governor spring' }).locator('summary').click();
  expect(await missing.textContent()).toContain('bright spot');
  expect(await page.getByRole('region', { name: 'Last pictures' }).getByRole('img').count()).toBe(1);
  await page.getByRole('button', { name: 'Go on', exact: true }).first().click();
  await page.getByText('bolt 2 of 2').waitFor();
  expect(errors).toEqual([]);
  await page.close();
});

test('every sheet of it leads there with one touch, also on a phone, and says that the job lay', async () => {
  const context = await visit.browser.newContext(phone);
  const { page } = await openPage(context, `${visit.shop.address}/job/${jobId}/parts`);
  await page.getByText('This job lay for 12 months.').waitFor();
  const link = page.getByRole('link', { name: /: where was I$/ });
  expect((await link.boundingBox())!.height).toBeGreaterThanOrEqual(44);
  await link.click();
  await page.getByRole('heading', { level: 1, name: 'Where was I' }).waitFor();
  await context.close();
});

test.each([
  ['wide', wide],
  ['on a phone', phone],
] as const)('%s it stands in one screen, by day and by night, and is accessible', async (name, options) => {
  const context = await visit.browser.newContext(options);
  const { page } = await openPage(context, `${visit.shop.address}/job/${jobId}/where-was-i`);
  await told(page, 'Not known any more').waitFor();
  await page.getByRole('region', { name: 'Last pictures' }).getByRole('img').waitFor();
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await expectAccessible(page, `${name} ${colorScheme}`, ['.log .entries']);
    await expectFits(page, name);
    await page.screenshot({
      path: `test-results/where-was-i-${name.replaceAll(' ', '-')}-${colorScheme}.png`,
    });
  }
  const below = await page.evaluate(() => {
    const last = [...document.querySelectorAll('.told-part > summary')].at(-1)!.getBoundingClientRect();
    const bar = document.querySelector('nav.bottom')?.getBoundingClientRect();
    return last.bottom - (bar && bar.height > 0 ? bar.top : innerHeight);
  });
  expect(below, 'the last line of what is told lies below the screen').toBeLessThanOrEqual(0);
  await context.close();
});
