import type { BrowserContext, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import {
  allSaved,
  expectAccessible,
  hang,
  type Line,
  openPage,
  phone,
  tellShop,
  visitShop,
} from './support.js';

/** An invented side-valve engine on the bench: a worn bore, a warped head and a tight valve, from reading to record. */
let job: string;
const visit = visitShop();
let address: string;
let context: BrowserContext;
let page: Page;
let errors: string[];
beforeAll(async () => {
  ({ context, page, errors } = visit);
  address = visit.shop.address;
  job = await hangEngine();
});

const length = (n: number, unit = 'in') => ({
  written: `${n} ${unit}`,
  kind: 'length',
  si: n * (unit === 'in' ? 0.0254 : 0.001),
  unit,
});
const sheet = (page: number) => ({ from: "maker's sheet", detail: `invented sheet, page ${page}` });

/** The tagged engine and the shop's tools. */
async function hangEngine(): Promise<string> {
  const tool = (tool: string, name: string, resolution: number, uncertainty: number): Line => [
    'instrument',
    { tool, name, resolution: length(resolution), uncertainty: length(uncertainty) },
  ];
  await tellShop(visit, [
    tool('telescoping', 'telescoping gauge and micrometer', 0.0001, 0.0007),
    tool('dial-bore', 'dial bore gauge', 0.0001, 0.0003),
    tool('feelers', 'straightedge and feelers', 0.001, 0.001),
  ]);
  const identity = { how: 'measured', bore: length(2.5625), stroke: length(1.75), leavesOpen: '' };
  const ratio = {
    spec: 'compression-ratio',
    label: 'Compression ratio',
    line: 'compression ratio 6.2',
    value: { written: '6.2', kind: 'ratio', si: 6.2, unit: '1' },
    origin: sheet(4),
  };
  const intake = { machine: 'Cement mixer', architecture: 'side-valve', ignition: 'points' };
  return hang(visit, 41, intake, [
    ['identity', identity],
    ['spec', ratio],
  ]);
}

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const dialog = () => page.getByRole('dialog');
const section = (title: RegExp) =>
  page.locator('main section.section', { has: page.getByRole('heading', { level: 2, name: title }) });
const line = (title: RegExp, words: string) => section(title).locator('li.reading', { hasText: words });

async function choose(typed: string, name: string | RegExp): Promise<void> {
  await button('Add a reading').first().click();
  await page.getByLabel('Find a measurement').fill(typed);
  await page.getByRole('region', { name: 'What is measured' }).getByRole('button', { name }).first().click();
  await dialog().waitFor();
}

/** The bore typed through from the first cell with Enter alone. */
async function typeBore(figures: readonly string[]): Promise<void> {
  await choose('bore', /^Bore, at heights/);
  await dialog().locator('.grid-entry input').first().focus();
  for (const figure of figures) {
    await page.keyboard.type(figure);
    await page.keyboard.press('Enter');
  }
}

describe('a worn bore', () => {
  test('six readings typed with Enter; with the telescoping gauge the wear cannot be decided', async () => {
    await page.goto(`${address}/job/${job}/measure`);
    await typeBore(['2.5652', '2.5656', '2.5636', '2.5638', '2.5628', '2.5627']);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Keep the readings');
    await expectAccessible(page, 'the bore form');
    await dialog().getByLabel('Standard bore').fill('2.5625');
    await dialog().getByLabel('Reject above').fill('2.5655');
    await dialog().getByLabel('Taper, most').fill('0.0015');
    await dialog().getByLabel('Where these come from').fill('invented sheet, page 12');
    await dialog().getByLabel('Instrument').selectOption('telescoping');
    await dialog().getByLabel('Piston skirt').fill('2.5590');
    await button('Keep the readings').click();
    await dialog().waitFor({ state: 'hidden' });
    const wear = line(/^Bore, 6 readings/, 'Largest bore');
    await wear.locator('.verdict.cannot-decide').waitFor();
    await wear.getByText(/it takes ± |would settle it/).waitFor();
    await line(/^Bore, 6/, 'Taper')
      .locator('.verdict.cannot-decide')
      .waitFor();
    await line(/^Bore, 6/, 'Out of round')
      .getByText('figure of the class, not of this engine')
      .waitFor();
    const picture = page.getByRole('img', { name: /^Bore, largest 2\.5656 in at top of ring travel/ });
    expect(await picture.locator('.figure').allTextContents()).toContain('▲ 2.5656');
    await page.getByText('If it is bored: the next size').click();
    await page.getByText('surely cleans up').waitFor();
    await expectAccessible(page, 'the bore with its picture');
  });

  test('read again with the dial bore gauge, the bore fails and its boring is decided', async () => {
    await typeBore(['2.5652', '2.5660', '2.5636', '2.5638', '2.5628', '2.5627']);
    await dialog().getByLabel('Instrument').selectOption('dial-bore');
    await button('Keep the readings').click();
    await dialog().waitFor({ state: 'hidden' });
    const wear = line(/^Bore, 6 readings/, 'Largest bore');
    await wear.locator('.verdict.fail').waitFor();
    await line(/^Bore, 6/, 'Taper')
      .locator('.verdict.fail')
      .waitFor();
    await wear.getByRole('button', { name: /^Decide/ }).click();
    await dialog().getByLabel('Recondition it').check();
    await dialog()
      .getByRole('button', { name: /^Bore to 2\.5725 in/ })
      .click();
    await expectAccessible(page, 'deciding about the bore');
    await dialog().getByRole('button', { name: 'Decide' }).click();
    await wear.getByText(/decided: Bore, largest bore 2\.566.* in: recondition it/).waitFor();
  });
});

describe('a warped head', () => {
  test('gaps under a straightedge along, across and on the diagonals give its shape and what must come off', async () => {
    await choose('warp head', /Head and block face/);
    await dialog().getByLabel('straightedge and feelers').check();
    await dialog().getByLabel('Face, left to right').fill('3.9');
    await dialog().getByLabel('Face, near to far').fill('3.1');
    await dialog().getByLabel('diagonal, left far to right near · middle').fill('0.012');
    await dialog().getByLabel('diagonal, left near to right far · middle').fill('0.012');
    await dialog().getByLabel('along, middle · middle').fill('0.012');
    await dialog().getByLabel('across, middle · middle').fill('0.012');
    await button('0 in every empty place').click();
    await dialog().getByLabel('Instrument').selectOption('feelers');
    await dialog().getByLabel('Most allowed by the maker').fill('0.003');
    await dialog().getByLabel('Where that comes from').fill('invented sheet, page 9');
    await expectAccessible(page, 'the face form');
    await button('Keep the readings').click();
    await dialog().waitFor({ state: 'hidden' });
    const flat = line(/^Head or block face, 9 places/, 'Flatness');
    await flat.locator('.verdict.fail').waitFor();
    await page.getByText(/Compression ratio 6\.2 to 6\.\d+/).waitFor();
    await page.getByRole('img', { name: /The face from above/ }).waitFor();
    await expectAccessible(page, 'the face with its picture');
    await flat.getByRole('button', { name: /^Decide/ }).click();
    await dialog().getByLabel('Recondition it').check();
    await dialog()
      .getByRole('button', { name: /^Rub flat/ })
      .click();
    await dialog().getByRole('button', { name: 'Decide' }).click();
    await flat.getByText(/decided: Head or block face, flatness .*recondition it/).waitFor();
  });
});

describe('a tight valve', () => {
  const reading = async (figure: string, phase = 'as found') => {
    await choose('valve clearance', /Valve clearance, side-valve/);
    await dialog().getByLabel('Reading').fill(figure);
    await dialog().getByLabel('intake', { exact: true }).check();
    await dialog().getByLabel('Instrument').selectOption('feelers');
    await dialog().getByLabel(phase, { exact: true }).check();
    await dialog().getByLabel('Not less than').fill('0.005 in');
    await dialog().getByLabel('Not more than').fill('0.009 in');
    await dialog().getByLabel('Where the limit comes from').fill('invented sheet, page 7');
    await dialog().getByRole('button', { name: 'Keep the reading' }).click();
    await dialog().waitFor({ state: 'hidden' });
  };

  test('it is ground in steps, half first, and never past the range', async () => {
    await reading('0.002 in');
    const valve = line(/^Valve clearance, cold/, 'intake');
    await valve.locator('.verdict.fail').waitFor();
    await page.getByText('What is ground off a stem does not grow back').waitFor();
    await valve.getByText(/Take 0\.005 in off in all, 0\.0025 in first/).waitFor();
    await valve.getByRole('button', { name: /^Ground 0\.0025 in off/ }).click();
    await valve.getByText(/decided: Intake valve clearance 0\.002 in: 0\.0025 in off the stem/).waitFor();
    await reading('0.0035 in', 'after the work');
    await valve.getByText('read 0.0020 in before').waitFor();
    await valve.getByRole('button', { name: /^Ground 0\.001\d+ in off/ }).click();
    await reading('0.007 in', 'after the work');
    await valve.locator('.verdict.pass').waitFor();
  });

  test('a wide one is never ground', async () => {
    await choose('valve clearance', /Valve clearance, side-valve/);
    await dialog().getByLabel('Reading').fill('0.016 in');
    await dialog().getByLabel('exhaust', { exact: true }).check();
    await dialog().getByRole('button', { name: 'Keep the reading' }).click();
    await dialog().waitFor({ state: 'hidden' });
    const valve = line(/^Valve clearance, cold/, 'exhaust');
    await valve.getByText('never grind the stem').waitFor();
    await valve.getByText('The range is of the class, not of this engine.').waitFor();
    await expectAccessible(page, 'valves');
  });
});

test('every measure of the catalog is on the sheet and is found by typing', async () => {
  await button('Add a reading').first().click();
  const region = page.getByRole('region', { name: 'What is measured' });
  await region.locator('details > summary').click();
  const all = builtInCatalog().measurements.length;
  await expect.poll(() => region.locator('.measures button').count()).toBe(all);
  for (const typed of ['tappet', 'endplay', 'oversize stamp', 'blade bolt', 'condenser', 'feelers ring']) {
    await page.getByLabel('Find a measurement').fill(typed);
    await expect
      .poll(() => region.locator('.measures button').count(), { message: typed })
      .toBeGreaterThan(0);
  }
  await region.getByRole('button', { name: 'Close' }).click();
});

test('on a phone the bore is read one place at a time, and nothing is wider than the screen', async () => {
  const hand = await visit.browser.newContext(phone);
  const { page: small, errors: wrong } = await openPage(hand, `${address}/job/${job}/measure`);
  await small.getByRole('button', { name: 'Add a reading' }).click();
  await small.getByRole('button', { name: /^Bore, at heights/ }).click();
  await small.getByText('1 of 6, inches').waitFor();
  await small.locator('input.large').fill('2.5650');
  await small.keyboard.press('Enter');
  await small.getByText('2 of 6').waitFor();
  expect(await small.locator('.cells-so-far button').first().textContent()).toBe('2.5650');
  await expectAccessible(small, 'the bore form on a phone');
  await small.keyboard.press('Escape');
  const over = await small.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(over).toBeLessThanOrEqual(0);
  const narrow = await small.evaluate(() =>
    [...document.querySelectorAll('li.reading')].map((e) => {
      const words = e.querySelector(':scope > div.soft')?.getBoundingClientRect().width ?? 0;
      return words / e.getBoundingClientRect().width;
    }),
  );
  expect(Math.min(...narrow)).toBeGreaterThan(0.9);
  expect(wrong).toEqual([]);
  await hand.close();
});

test('the record holds the figures, the verdicts and what was decided', async () => {
  await allSaved(page);
  const { entries } = (await (await context.request.get(`${address}/api/jobs/${job}/entries`)).json()) as {
    entries: { kind: string; body: { title?: string } }[];
  };
  const decided = entries.filter((e) => e.kind === 'decision').map((e) => e.body.title);
  expect(decided).toEqual([
    expect.stringMatching(/^Bore, largest bore 2\.566/),
    expect.stringMatching(/^Head or block face, flatness/),
    expect.stringMatching(/off the stem$/),
    expect.stringMatching(/off the stem$/),
  ]);
  const record = await context.request.get(`${address}/api/jobs/${job}/record.pdf`);
  expect(record.status()).toBe(200);
  expect((await record.body()).subarray(0, 5).toString()).toBe('%PDF-');
  expect(errors).toEqual([]);
});
