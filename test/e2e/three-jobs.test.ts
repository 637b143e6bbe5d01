import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { hasPoppler, pdfText } from '../record/poppler.js';
import { FindingsSheet } from './findings-support.js';
import { expectAccessible, hang, tellShop, visitShop } from './support.js';
import { settled } from './taps.js';
import { generator, halfApart, trimmer } from './three-jobs.js';

/** Three jobs as their person would walk them, from what was seen to what the owner takes home. */
const visit = visitShop();
let page: Page;
let sheet: FindingsSheet;
beforeAll(async () => {
  ({ page } = visit);
  sheet = new FindingsSheet(page);
  await tellShop(visit, [['setting', { key: 'hour-rate', value: '70' }]]);
});
const open = async (job: string, stage: string) => {
  await page.goto(`${visit.shop.address}/job/${job}/${stage}`);
  await settled(page);
};
const headline = () => page.getByRole('heading', { level: 1 }).textContent();
const primary = (name: string | RegExp) => page.locator('.wide-primary', { hasText: name });
const offered = () => page.locator('.findings .card header b').allTextContents();
/** The checks that are barred, with their reasons, as one text. */
async function barred(): Promise<string> {
  const notNow = page.locator('details', { hasText: /^Not now: / });
  await notNow.locator('summary').click();
  return (await notNow.textContent()) ?? '';
}

/** Checks for which the engine is pulled or run. */
const pulledOrRun =
  /Compression|Does it start|Slow pull|Kickback|Spark across|down the throat|Choke response|governed speed|Smoke/;

describe('a trimmer that is not worth it, handed back as it is', () => {
  let job: string;

  test('it says stop, and no check that pulls or runs it is offered', async () => {
    job = await hang(visit, 51, trimmer.intake, trimmer.lines);
    await open(job, 'findings');
    await sheet.settled();
    const stop = page.getByRole('alert').filter({ hasText: 'Stop' });
    expect(await stop.textContent()).toMatch(/stop control does not stop it/i);
    expect(await stop.textContent()).toMatch(/guard or the shroud is off/);
    const checks = await offered();
    expect(checks.length).toBeGreaterThan(2);
    expect(checks.join(' ')).not.toMatch(pulledOrRun);
    expect(await barred()).toMatch(/Does it start/);
  });

  test('own words find their outcome, one touch takes it, by keyboard as well, and they are printed as words', async () => {
    await page.getByLabel('Find a check').fill('the plug is all sooty');
    const meant = page.getByRole('region', { name: 'You may mean' });
    await meant.getByRole('button', { name: /black and dry/ }).focus();
    await page.keyboard.press('Enter');
    await meant.waitFor({ state: 'detached' });
    const line = sheet.evidence('Plug tip').first();
    await line.getByText('black and dry').waitFor();
    expect(await line.textContent()).toContain('the plug is all sooty');
    await expectAccessible(page, 'findings with own words');
  });

  test('a check that could not be made or told nothing has its words too', async () => {
    const card = page.locator('.card.first', { has: page.locator('.outcomes') });
    const title = await card.locator('header b').textContent();
    await card.getByRole('button', { name: 'Cannot tell' }).click();
    await sheet.evidence(title!).getByText('it told nothing').waitFor();
  });

  test('the owner declines; it goes back as it is, with what is unsafe in red, over her name', async () => {
    await open(job, 'worth-it');
    await page.getByRole('button', { name: 'Decide' }).first().click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('The owner declines').check();
    await dialog.getByLabel('Why').fill('more than it is worth to her');
    await dialog.getByRole('button', { name: 'Write the decision down' }).click();
    await dialog.waitFor({ state: 'hidden' });
    await open(job, 'hand-over');
    await page.getByRole('heading', { name: 'To be handed back as it is' }).waitFor();
    await page.getByRole('heading', { name: /It does not run, 1 piece not back on/ }).waitFor();
    const unsafe = page.locator('li', { has: page.locator('.verdict.fail', { hasText: 'unsafe' }) });
    expect((await unsafe.allTextContents()).join(' | ')).toMatch(
      /[Gg]uard.*stop.*Fuel hose|stop.*[Gg]uard.*Fuel hose/s,
    );
    await page.getByRole('button', { name: 'Hand over', exact: true }).first().click();
    expect(await dialog.getByLabel(/^Declined by the owner/).inputValue()).toMatch(/Fuel hose/);
    expect(await dialog.getByLabel(/^Due next/).inputValue()).toBe('');
    await dialog.getByLabel('What they were told').fill('do not run it: it cannot be stopped');
    await dialog.getByRole('button', { name: 'Handed over' }).click();
    await page.getByRole('heading', { name: 'Handed over to Ida Brekke' }).waitFor();
  });

  test('once it is gone its record comes first, and nothing more is proposed', async () => {
    await primary('Open the record').waitFor();
    await open(job, 'findings');
    await primary('Open the record').waitFor();
    expect(await page.getByRole('region', { name: 'Check next' }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Log something seen' }).count()).toBe(1);
  });

  test.skipIf(!hasPoppler)(
    'the record names what is unsafe, who declined, and her words, and repairs nothing',
    async () => {
      const answer = await fetch(`${visit.shop.address}/api/jobs/${job}/record.pdf?detail=full`);
      const text = pdfText(new Uint8Array(await answer.arrayBuffer())).replace(/\s+/g, ' ');
      expect(text).toMatch(/declined/i);
      expect(text).toContain('Fuel hose cracked');
      expect(text).toMatch(/Handed back with these pieces off.*Muffler, bag 1/);
      expect(text).toContain('the plug is all sooty');
      expect(text).not.toMatch(/repair it|nothing chosen|Engine oil|[Vv]alve clearance:/);
    },
  );
});

describe('a tiller that lay a year in pieces', () => {
  let job: string;

  test('what is off bars what needs it, in words; nothing of it is offered', async () => {
    job = await hang(visit, 53, halfApart.intake, halfApart.lines, '2025-11-02T09:00:00.000+00:00');
    await open(job, 'findings');
    await sheet.settled();
    expect(await headline()).toBe('One fault explains what you saw');
    const why = await barred();
    expect(why).toMatch(/cylinder head (is|and .* are) off/i);
    expect(why).not.toMatch(/fuel drained, cap/);
    const checks = (await offered()).join(' ');
    expect(checks).not.toMatch(pulledOrRun);
  });

  test('it says when work stopped, and where each piece lies', async () => {
    await open(job, 'teardown');
    const text = (await page.locator('main').textContent()) ?? '';
    expect(text).toMatch(/Cylinder head/);
    expect(text).toMatch(/bag 4/i);
    expect(text).toMatch(/Last worked on November 2, 2025 \(bench\): Head gasket/);
    await open(job, 'assembly');
    await page.getByText(/bag 4/i).first().waitFor();
    expect(await headline()).toBe('6 pieces to put back');
  });

  test('what is back on has as new only what was fitted', async () => {
    const back = { step: 'head-back', stage: 'assembly', title: 'Cylinder head: back on', state: 'done' };
    const onAgain = { ...back, component: 'cylinder-head', putsBack: 'cylinder-head' };
    job = await hang(visit, 56, halfApart.intake, [...halfApart.lines, ['step', onAgain]]);
    await open(job, 'assembly');
    const done = page.locator('details', { hasText: '1 piece back on' });
    await done.locator('summary').click();
    const text = await done.textContent();
    expect(text).toContain('Cylinder head');
    expect(text).not.toContain('new:');
  });
});

describe('a generator that runs and hunts', () => {
  let job: string;
  const dialog = () => page.getByRole('dialog');

  test('nothing that a running engine has answered is offered, and running is done outdoors', async () => {
    job = await hang(visit, 54, generator.intake, generator.lines);
    await open(job, 'findings');
    await sheet.settled();
    expect(await page.getByRole('alert').filter({ hasText: 'Stop' }).count()).toBe(0);
    const cards = page.locator('.findings .card', { has: page.locator('header b') });
    const texts = await cards.allTextContents();
    expect(texts.join(' ')).not.toMatch(/Does it start|Slow pull|Spark across open/);
    const run = texts.filter((text) => /^(Choke response|Throttle held|No-load governed|Smoke)/.test(text));
    expect(run.length).toBeGreaterThan(0);
    for (const text of run) expect(text).toMatch(/Carbon monoxide/);
    expect(await sheet.likely('Idle passages')).toBeGreaterThan(50);
  });

  test('the release is asked at the compression, its number typed, and the outcome follows', async () => {
    await page.getByLabel('Find a check').fill('Compression, cold');
    await page
      .locator('section:has(> h2:text-is("Other checks")) li', { hasText: 'Compression, cold' })
      .getByRole('button')
      .click();
    const asked = dialog().locator('.asked-now', { hasText: 'automatic compression release' });
    await asked.getByRole('button', { name: 'No', exact: true }).click();
    await asked.waitFor({ state: 'detached' });
    const number = dialog().getByLabel(/^Number read/);
    await number.fill('1000');
    await dialog().locator('.typed-number').getByRole('button', { name: 'Log the number' }).click();
    await dialog()
      .getByText(/here stands 0 to 300 psi/)
      .waitFor();
    await number.fill('62');
    await dialog().getByText('On this engine: 40 % down.').waitFor();
    await number.press('Enter');
    await dialog().waitFor({ state: 'hidden' });
    await sheet.evidence('Compression, cold').getByText('62 psi, 40 % down').waitFor();
    await open(job, 'measure');
    await page.getByText('62 psi').first().waitFor();
    expect(await page.locator('.asked-now').count()).toBe(0);
  });

  test('a figure of what it will take opens into its lines', async () => {
    await open(job, 'worth-it');
    await page
      .getByRole('button', { name: /^\$\d+/ })
      .first()
      .click();
    const origin: Locator = page.getByRole('dialog').filter({ hasText: 'In all' });
    await origin.getByText(/Idle passages/).waitFor();
    await origin.getByText(/nine in ten/).waitFor();
    await origin.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('heading', { name: 'Service, if the owner wants it' }).waitFor();
  });

  test.skipIf(!hasPoppler)('the record says what a generator still owes', async () => {
    await open(job, 'hand-over');
    await page.getByRole('heading', { name: 'Not to be handed over yet' }).waitFor();
    const answer = await fetch(`${visit.shop.address}/api/jobs/${job}/record.pdf?detail=full`);
    const text = pdfText(new Uint8Array(await answer.arrayBuffer())).replace(/\s+/g, ' ');
    expect(text).toContain('62 psi, 40 % down');
    expect(text).toContain('No work is written down.');
    expect(text).not.toMatch(/new .* back on|it is there: repair it/);
  });
});

test('nothing went wrong on the page meanwhile', () => {
  expect(visit.errors).toEqual([]);
});
