import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { allSaved, expectAccessible, visitShop } from './support.js';

/** One engine from an empty intake to its printed record, by hand in the browser. Everything in it is invented. */
const visit = visitShop();
let address: string;
let context: BrowserContext;
let page: Page;
let errors: string[];
let picture: string;

beforeAll(async () => {
  ({ context, page, errors } = visit);
  address = visit.shop.address;
  picture = join(mkdtempSync(join(tmpdir(), 'wristpin-picture-')), 'front.jpg');
  writeFileSync(
    picture,
    await sharp({ create: { width: 640, height: 480, channels: 3, background: '#8a9a7b' } })
      .jpeg()
      .toBuffer(),
  );
});

const button = (name: string | RegExp, exact = true) => page.getByRole('button', { name, exact });
const dialog = () => page.getByRole('dialog');
const stage = async (name: string) => {
  await page
    .getByRole('navigation', { name: 'Stages' })
    .getByRole('link', { name: new RegExp(`^${name.replace('?', '\\?')}`) })
    .click();
};
/** The stage list says in a word where a stage stands. */
const stageIs = (name: string, word: string) =>
  page.getByRole('link', { name: new RegExp(`^${name.replace('?', '\\?')}\\s*, ${word}`) }).waitFor();
/** Keeps what a group of facts says, and waits until it is kept: the sheet closes up under it. */
const writeItDown = async () => {
  await button('Write it down').click();
  await button('Write it down').waitFor({ state: 'hidden' });
};
const heading = (name: string | RegExp) => page.getByRole('heading', { level: 1, name });

describe('one engine from intake to hand-over', () => {
  test('the empty bench says how to begin, and a tag is hung', async () => {
    await heading('The bench is empty').waitFor();
    await expectAccessible(page, 'empty bench');
    await button('Hang a tag on a machine').click();
    await expectAccessible(page, 'hanging a tag');
    await page.getByLabel('What it is').fill('barn blower');
    await button('Hang the tag').click();
    await page.waitForURL('**/intake');
  });

  test('the shop’s wrench and gauge are listed', async () => {
    const job = page.url();
    await page.getByRole('link', { name: 'Shop', exact: true }).click();
    await page.getByText('Add a torque wrench').click();
    await page.getByLabel('Name', { exact: true }).first().fill('inch-pound click wrench');
    await page.getByLabel('Scale begins at').fill('20 in-lb');
    await page.getByLabel('Scale ends at').fill('200 in-lb');
    await button('Add the wrench').click();
    await page.getByText('20 in-lb to 200 in-lb, ± 4 %').waitFor();
    await page.getByText('Add an instrument').click();
    await page.getByLabel('Name', { exact: true }).last().fill('straightedge and feelers');
    await page.getByLabel('Reads to').fill('0.001 in');
    await page.getByLabel('Uncertainty, ±').fill('0.001 in');
    await button('Add the instrument').click();
    await page.getByText('± 0.001 in in practised hands').waitFor();
    await page.goto(job);
  });

  test('intake: machine, owner, complaint, consent, kind, identity, photograph', async () => {
    await page.getByLabel('Machine', { exact: true }).fill('Barn blower');
    await page.getByLabel('Owner', { exact: true }).fill('Ola Brandt');
    await writeItDown();
    await page.getByLabel('In the owner’s words').fill('ran fine when parked');
    await writeItDown();
    await page.getByLabel('Consent given by').fill('Ola Brandt');
    await page.getByLabel(/Call above/).fill('120');
    await writeItDown();
    await page.getByLabel('Side valve', { exact: true }).check();
    await writeItDown();
    await page.getByLabel('Measure it').check();
    await page.getByLabel('Bore', { exact: true }).fill('2-5/16 in');
    await page.getByLabel('Stroke', { exact: true }).fill('44 mm');
    await button('Keep the sizes').click();
    await page.locator('main input[type=file]').first().setInputFiles(picture);
    await page.getByRole('figure').first().waitFor();
    await allSaved(page);
    await stageIs('Intake', 'done');
  });

  test('the maker’s sheet is matched line by line, and a wrong unit is not believed', async () => {
    await page
      .getByLabel('Lines of the sheet, typed or pasted')
      .fill('head bolts 140 in-lb\nspark plug gap .030 in\nflywheel nut 0.030 in');
    await page.getByLabel('Where it stands').fill('service sheet, page 31');
    const row = (text: string) => page.getByRole('listitem').filter({ hasText: text });
    await row('“head bolts 140 in-lb”').getByRole('button', { name: 'Confirm' }).click();
    await row('“head bolts 140 in-lb”').getByText('confirmed').waitFor();
    await row('“spark plug gap .030 in”').getByRole('button', { name: 'Confirm' }).click();
    await row('“flywheel nut 0.030 in”')
      .getByText(/torque/i)
      .first()
      .waitFor();
    expect(await row('“flywheel nut 0.030 in”').getByRole('button', { name: 'Confirm' }).isDisabled()).toBe(
      true,
    );
  });

  test('findings: each first look is taken; a mistaken line is struck and stays readable', async () => {
    await stage('Findings');
    for (const check of [
      'Walk round the machine',
      'Oil level as received',
      'Tank fuel into clear jar',
      'Air cleaner',
      'Slow pull by hand',
      'Spark across',
    ]) {
      await page
        .getByRole('button', { name: new RegExp(`^${check}`) })
        .first()
        .click();
      const outcomes = dialog().locator('h3:has-text("Tap what was seen") + .row button');
      if ((await outcomes.count()) > 0) await outcomes.first().click();
      else {
        await dialog().locator('.choices label').first().click();
        await dialog().getByRole('button', { name: 'Log it' }).click();
      }
      await dialog().waitFor({ state: 'hidden' });
    }
    await stageIs('Findings', 'done');
    await page.getByRole('button', { name: /^Strike: Spark across/ }).click();
    await dialog().getByLabel('Why').fill('tester gap was closed');
    await expectAccessible(page, 'striking a line');
    await dialog().getByRole('button', { name: 'Strike' }).click();
    await page.getByText(/tester gap was closed/).waitFor();
    await stageIs('Findings', 'under way');
    await page.getByRole('button', { name: /^Restore: Spark across/ }).click();
    await dialog().getByRole('button', { name: 'Restore' }).click();
    await stageIs('Findings', 'done');
  });

  test('worth it, parts', async () => {
    await stage('Worth it?');
    await button('Decide').first().click();
    await dialog().getByLabel('Repair', { exact: true }).check();
    await dialog().getByLabel('Quoted').fill('125');
    await dialog().getByText('Above the $120.00 at which the owner wants a call').waitFor();
    await dialog().getByLabel('Quoted').fill('95');
    expect(await dialog().getByText('wants a call').count()).toBe(0);
    await dialog().getByLabel('Why').fill('sound bore');
    await button('Write the decision down').click();
    await heading('It is to be repaired').waitFor();
    await stage('Parts');
    await button('Add a part').first().click();
    await dialog().getByLabel('Part', { exact: true }).fill('head gasket');
    await dialog().getByLabel('Price each').fill('6.5');
    await dialog().getByLabel('here', { exact: true }).check();
    await dialog().getByRole('button', { name: 'Keep' }).click();
    await heading('1 part').waitFor();
  });

  test('teardown: the head comes off with its bolts counted and its port plugged', async () => {
    await stage('Teardown');
    await button('Something comes off').first().click();
    await dialog().getByLabel('Find or name a piece').fill('cylinder head');
    await expectAccessible(page, 'choosing a piece');
    await dialog().getByRole('button', { name: 'Choose' }).first().click();
    await heading('Cylinder head').waitFor();
    await expectAccessible(page, 'taking a piece off');
    for (let i = 0; i < 8; i++) await page.getByRole('button', { name: /bolt more$/ }).click();
    await button('It is off · next').click();
    await dialog().getByRole('button', { name: 'On film elsewhere' }).click();
    await heading('1 piece off').waitFor();
  });

  test('measure: a warped head fails, a close one cannot be decided, and a decision follows', async () => {
    await stage('Measure');
    for (const [reading, place, verdict] of [
      ['0.006 in', 'along', 'fail'],
      ['0.003 in', 'across', 'cannot decide'],
    ] as const) {
      await button('Add a reading').first().click();
      await page.getByLabel('Find a measurement').fill('flat');
      await page
        .getByRole('region', { name: 'What is measured' })
        .getByRole('button', { name: /head/i })
        .first()
        .click();
      await dialog().getByRole('button', { name: 'Only the largest gap' }).click();
      await dialog().getByLabel('Reading').fill(reading);
      await dialog().getByRole('button', { name: place, exact: true }).click();
      await dialog().getByLabel('Instrument').selectOption({ index: 1 });
      await dialog().getByLabel('Not more than').fill('0.003 in');
      await dialog().getByLabel('Where the limit comes from').fill('service sheet, page 9');
      await dialog().getByRole('button', { name: 'Keep the reading' }).click();
      await page.locator('main .verdict', { hasText: verdict }).first().waitFor();
    }
    await button('Decide').first().click();
    await dialog().getByLabel('Recondition it').check();
    await dialog().getByLabel('Why').fill('rubbed flat on plate glass');
    await dialog().getByRole('button', { name: 'Decide' }).click();
    await page
      .getByText(/decided: .*recondition it/)
      .first()
      .waitFor();
  });

  test('assembly: the head goes back, and eight bolts are tightened 70 then 140 from the keyboard', async () => {
    await stage('Assembly');
    await page.getByRole('link', { name: 'Put back', exact: true }).click();
    await button(/^Back on, (all right|plugs out) · next$/).click();
    await heading('Before you go on: head on').waitFor();
    await button('It is so · next').click();
    await heading('Everything is back on').waitFor();
    await page.getByRole('link', { name: 'To Assembly' }).click();
    await button('Lay out a joint to tighten').first().click();
    expect(await dialog().getByLabel('Torque', { exact: true }).inputValue()).toBe('140 in-lb');
    await dialog().getByLabel('Thread').fill('5/16-18');
    await expectAccessible(page, 'laying out a joint');
    await dialog().getByLabel('Torque', { exact: true }).fill('140 ft-lb');
    await dialog()
      .getByText(/140 in-lb would be plausible/)
      .waitFor();
    await dialog().getByLabel('Torque', { exact: true }).fill('140 in-lb');
    await dialog().getByLabel('Torque wrench').selectOption({ index: 1 });
    await dialog().getByRole('button', { name: 'Lay it out' }).click();
    await page.getByRole('link', { name: 'Begin tightening' }).click();
    await page.getByText('70 in-lb').first().waitFor();
    await expectAccessible(page, 'step mode');
    for (let i = 0; i < 16; i++) {
      await page.getByText(`bolt ${(i % 8) + 1} of 8`).waitFor();
      if (i === 8) await page.getByText('140', { exact: true }).first().waitFor();
      await page.keyboard.press(i % 2 === 0 ? 'Space' : 'ArrowRight');
    }
    await page.getByText('tight', { exact: true }).waitFor();
    await button('To Assembly').click();
    await stageIs('Assembly', 'done');
  });

  test('hand-over is barred until the run-up has shown that it is safe', async () => {
    await stage('Run-up');
    await button('Next step').first().click();
    await dialog().getByRole('button', { name: 'Not in order' }).click();
    await stageIs('Hand-over', 'blocked');
    const whatIsNext = page.getByText(/^(Next: .+|All that was asked for is shown\.)$/).first();
    for (let i = 0; i < 120; i++) {
      const said = await whatIsNext.textContent();
      if (said === 'All that was asked for is shown.') break;
      await button('Next step').first().click();
      await dialog().waitFor();
      const reading = dialog().getByLabel('Reading');
      if ((await reading.count()) > 0) await dialog().getByRole('button', { name: 'Does not apply' }).click();
      else await dialog().getByRole('button', { name: 'In order', exact: true }).click();
      await dialog().waitFor({ state: 'hidden' });
      await expect.poll(() => whatIsNext.textContent()).not.toBe(said);
    }
    await page
      .locator('main li', { hasText: 'not in order', has: page.getByRole('button', { name: 'Again' }) })
      .first()
      .getByRole('button', { name: 'Again' })
      .click();
    await dialog()
      .getByRole('button', { name: /^(In order|Does not apply)$/ })
      .last()
      .click();
    await dialog().waitFor({ state: 'hidden' });
    await stageIs('Run-up', 'done');
  });

  test('it is handed over and its record is a PDF', async () => {
    await stage('Hand-over');
    await button('Hand over').first().click();
    await dialog().getByLabel('What they were told').fill('fresh fuel only, run it outdoors');
    await dialog().getByRole('button', { name: 'Handed over' }).click();
    await heading('Handed over to Ola Brandt').waitFor();
    await allSaved(page);
    const href = await page.getByRole('link', { name: 'The record in brief (PDF)' }).getAttribute('href');
    const response = await context.request.get(`${address}${href}`);
    expect(response.status()).toBe(200);
    const pdf = await response.body();
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.length).toBeGreaterThan(20_000);
    for (const name of [
      'Intake',
      'Findings',
      'Worth it?',
      'Parts',
      'Teardown',
      'Measure',
      'Assembly',
      'Run-up',
      'Hand-over',
    ]) {
      await stageIs(name, 'done');
    }
    await page.getByRole('link', { name: 'Bench', exact: true }).click();
    await page.getByText('Handed over (1)').waitFor();
  });

  test('nothing went wrong unseen', () => {
    expect(errors.filter((e) => !/status of 404/.test(e))).toEqual([]);
  });
});
